// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/oil/limit_rows.h"
#include "model/oil/unrated.h"

#include <optional>

namespace sumpbook::oil {

/// What was measured, in the unit of the limit it is held against.
struct Amount {
    ValueState state = ValueState::measured;
    Decimal number; ///< The value, or the detection limit for `below`.
};

/// The used oil's value held against one limit, exactly and unrounded, as the limit's basis asks
/// (100 (u - n) against limit x n, never a rounded per cent). `fresh` is the new oil's value; absent where a
/// basis needs it and has none above 0, and where the numbers leave 18 digits. Not for detections or trends.
[[nodiscard]] std::optional<std::strong_ordering> held_against(const LimitRow& limit, const Decimal& used,
                                                               const std::optional<Decimal>& fresh);
/// True where the value reaches the limit by the limit's own operator.
[[nodiscard]] std::optional<bool> reaches(const LimitRow& limit, const Decimal& used,
                                          const std::optional<Decimal>& fresh = std::nullopt);

/// Where a value stands by one rule, and by which of its limits.
struct RuleVerdict {
    const LimitRule* rule = nullptr;
    const LimitRow* row = nullptr; ///< The worst limit reached; where none is, the first one ahead.
    bool reached = false;
    bool our_watch_line = false;     ///< From 80 % of a single upper limit (DESIGN): ours, not the set's.
    bool between_levels = false;     ///< Past the normal band, short of the first level.
    bool no_detection_limit = false; ///< "Not detected" without saying how low was looked.
    Ladder ladder = Ladder::unrated;
    std::optional<Unrated> unrated;
};

/// The level of a value by one rule (numbers.md 6.1 and 6.4): the worst limit reached; past the normal band
/// but short of the first level: watch; from `watch_percent` of a single upper limit: watch; else within.
/// Below detection: within where its upper end does not pass the first published level; for rules that a low
/// value can offend both ends must give one word; for a detection it is not detected.
[[nodiscard]] RuleVerdict judge(const LimitRule& rule, const std::optional<int>& watch_percent,
                                const Amount& amount, const std::optional<Decimal>& fresh);

} // namespace sumpbook::oil
