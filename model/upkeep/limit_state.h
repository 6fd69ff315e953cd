// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/limits.h"

#include <optional>
#include <string_view>
#include <vector>

namespace sumpbook::upkeep {

/// In the order of the list.
enum class DueState {
    overdue, ///< Past the end of the window.
    due,     ///< The limit is reached, the window not past.
    unknown, ///< Nothing can be computed.
    soon,    ///< Within the lead before the limit.
    later,
};
/// "overdue", "due", "unknown", "soon", "later".
[[nodiscard]] std::string_view slug(DueState state);

enum class LimitKind { distance, date, hours };

/// Where one limit stands today.
struct LimitState {
    LimitKind kind = LimitKind::distance;
    DueState state = DueState::unknown;
};

/// An even chance of reaching a distance within these days counts as `soon`. DESIGN (numbers.md 4.4).
inline constexpr int soon_days = 30;

/// The state of each limit that can be compared (numbers.md 4.4). `expected` is the day the distance limit
/// is reached with a chance of one half, absent if not known: within 30 days of today it is `soon`.
[[nodiscard]] std::vector<LimitState> limit_states(const NextLimits& limits, const Moment& now,
                                                   const std::optional<Date>& expected);

/// The worst of them; absent for none. Of equals the first.
[[nodiscard]] std::optional<LimitState> worst(const std::vector<LimitState>& states);

} // namespace sumpbook::upkeep
