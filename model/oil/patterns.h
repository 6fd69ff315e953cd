// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/decimal.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

namespace sumpbook::oil {

/// What the patterns are looked for in.
struct PatternFacts {
    std::set<std::string> high; ///< Quantities at watch or above, and sodium and potassium named for coolant.
    std::set<std::string> rising;           ///< With a rated rate above 0, or a rising trend over fills.
    std::map<std::string, Decimal> amounts; ///< Measured elements, mg/kg.
    /// The new oil's viscosity and the used one's, where the change is known.
    std::optional<std::pair<Decimal, Decimal>> viscosity_mm2_s;
    bool glycol_detected = false;
    bool without_coolant = false; ///< An air- or oil-cooled bike.
    /// Conditions by the words of patterns.csv that hold: "flash-below-new", "silicon-falls-each-fill",
    /// "wear-metals-fell", "new-engine", "chrome-bore-under-150-h".
    std::set<std::string> conditions;
};

enum class PatternKind {
    cause,  ///< A possible cause.
    run_in, ///< Explains a high value of a new engine; changes neither word nor advice.
    remark, ///< Worth saying; changes neither word nor advice. Also a cause seen in rising values alone.
};

/// A pattern that holds.
struct PatternFound {
    std::string id;
    PatternKind kind = PatternKind::cause;
    std::vector<std::string> by; ///< The quantities it was seen in.
    std::string cause;
    std::string look_at; ///< What to inspect.
    std::string numbers; ///< Published figures beside it; empty: none.
    std::string evidence;
    std::string source;
};

/// The patterns of patterns.csv that hold, in its order (numbers.md 6.8). On a bike without coolant the
/// coolant pattern shows for detected glycol only. A pattern that another one explains is left out.
[[nodiscard]] std::vector<PatternFound> find_patterns(const PatternFacts& facts);

} // namespace sumpbook::oil
