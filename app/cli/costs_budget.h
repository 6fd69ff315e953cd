// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/command_line.h"
#include "model/cost/budget.h"

#include <vector>

namespace sumpbook::cli {

/// `costs budget`: yearly budgets, and `costs drift`: how fast prices rise.
void add_costs_budget(CommandLine& line, CLI::App& group);

/// The yearly budgets and how they stand; with a bike chosen, that bike's alone.
[[nodiscard]] Result<std::vector<cost::BudgetLine>> budgets_of(Session& session);

} // namespace sumpbook::cli
