// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

// What a run of samples shows: commands of the group "oil".
void add_oil_trend(CommandLine& line, CLI::App& group);
void add_oil_life(CommandLine& line, CLI::App& group);
void add_oil_compare(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
