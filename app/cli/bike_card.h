// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// `bike card`: print the data card, look a line up, put one on or take one off.
void add_card(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
