// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// `costs rate` and `costs oil-counts`: what the sums of the whole garage are reckoned by.
void add_costs_settings(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
