// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/limit_rows.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// One published set of limits. Sets are never blended within a quantity.
struct LimitSet {
    std::string id; ///< "HB2004", as printed beside every verdict.
    std::string title;
    std::string engines;              ///< What it was published for, in words.
    std::string fuel;                 ///< "petrol", "diesel"; empty: both, or not stated.
    std::optional<int> watch_percent; ///< From this share of a single upper limit: watch (DESIGN, ours).
    std::string evidence;
    std::string caveat; ///< Printed whenever the set is used.
    std::string source;
    std::vector<LimitRule> rules; ///< None for GRADE, whose rule is no table: see viscosity_rule.h.

    /// False for figures from memory: shown, never judged by.
    [[nodiscard]] bool can_be_chosen() const;
    [[nodiscard]] bool has(std::string_view quantity) const;
};

/// Our own rule for viscosity, by grade and change.
inline constexpr std::string_view grade_set = "GRADE";

/// Every set compiled in, in the order of limit_sets.csv.
[[nodiscard]] const std::vector<LimitSet>& limit_sets();
/// By its id, whatever the case; null if there is none.
[[nodiscard]] const LimitSet* find_limit_set(std::string_view id);

/// True where a rule speaks of the quantity; "kv" speaks of viscosity at 100 C and at 40 C.
[[nodiscard]] bool speaks_of(const LimitRule& rule, std::string_view quantity);

} // namespace sumpbook::oil
