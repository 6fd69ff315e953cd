// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/ladder.h"
#include "model/quantity/decimal.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// What is held against a limit: the used oil's value u, or u compared with the new oil's value n.
enum class Basis {
    absolute,       ///< u
    change,         ///< 100 (u - n)/n, per cent; below 0 is a fall
    size_of_change, ///< the same without its sign
    loss,           ///< 100 (n - u)/n, per cent
    share,          ///< 100 u/n, per cent
    rise,           ///< 100 (u - n)/n, per cent
    rise_amount,    ///< u - n
    drop,           ///< n - u
    detection,      ///< any amount at all
    trend,          ///< change within one fill of oil, mg/kg per 10 h
};
enum class Operator { above, at_least, below, at_most };

[[nodiscard]] std::string_view symbol(Operator op); ///< ">", ">=", "<", "<="
/// True where a comparison of left with right satisfies the operator.
[[nodiscard]] bool satisfies(Operator op, std::strong_ordering left_to_right);

/// One published limit, with where it was published.
struct LimitRow {
    Basis basis = Basis::absolute;
    Operator op = Operator::above; ///< Without meaning for a detection.
    Decimal value;                 ///< Without meaning for a detection.
    std::string unit;
    std::string level; ///< The set's own name: "warning", "marginal"; "normal-upto" ends the normal band.
    Ladder ladder = Ladder::act;
    std::string evidence; ///< READ, READ in part, FROM MEMORY.
    std::string note;
    std::string source;
    [[nodiscard]] bool ends_normal() const { return level == "normal-upto"; }
    [[nodiscard]] bool is_upper() const { return op == Operator::above || op == Operator::at_least; }
};

/// The limits of one quantity that belong together: its levels, for the same engines and oils.
/// Empty texts and lists: for all.
struct LimitRule {
    std::string quantity;            ///< Slug; "kv": viscosity, the temperature not stated.
    std::string fuel;                ///< "petrol", "diesel", "gas".
    std::vector<std::string> grades; ///< SAE grades, "15W-40".
    std::string block;               ///< "aluminium": replaces the general rule for such engines.
    std::string series;              ///< A qualifier no record of a bike can answer; such rules all count.
    std::string method;              ///< "perchloric", "open-cup": the method the figures hold for.
    Basis basis = Basis::absolute;
    std::vector<LimitRow> rows; ///< From mild to severe.

    /// Both ends bounded, so that neither end warns of the other.
    [[nodiscard]] bool is_range() const;
    /// Only a high value can offend: its least possible value is also the best one.
    [[nodiscard]] bool offends_upwards_only() const;
};

/// The rules of one data file of limits, in its order.
[[nodiscard]] std::vector<LimitRule> read_limit_rules(std::string_view csv);

} // namespace sumpbook::oil
