// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/typed.h"
#include "model/garage/plan_item.h"

#include <CLI/CLI.hpp>

#include <map>
#include <string>

namespace sumpbook::cli {

/// What was typed for a plan item, by option; only what was typed.
using TypedPlanFields = std::map<std::string, std::string>;

/// The options of `plan set`.
void add_plan_options(CLI::App& command, TypedPlanFields& typed);

/// Puts what was typed into the item; "none" takes a limit, window or lead away. The first thing that
/// cannot be read is refused by its option.
[[nodiscard]] Result<void> set_plan_fields(PlanItem& item, const TypedPlanFields& typed, const TypedAs& as);

/// "6000 km or 12 months or 100 h"; "none" for no limit.
[[nodiscard]] Result<Limits> typed_limits(const std::string& field, const std::string& text,
                                          const TypedAs& as);
/// "500 km or 14 days or 5 h"; "none" for the usual one.
[[nodiscard]] Result<std::optional<Margin>> typed_margin(const std::string& field, const std::string& text,
                                                         const TypedAs& as);

} // namespace sumpbook::cli
