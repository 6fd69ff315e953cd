// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"

namespace sumpbook::cli {

/// `costs budget`: yearly budgets, and `costs drift`: how fast prices rise.
void add_costs_budget(CommandLine& line, CLI::App& group);

} // namespace sumpbook::cli
