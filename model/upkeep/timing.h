// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/upkeep/limits.h"

#include <string_view>

namespace sumpbook::upkeep {

/// How a job lay to the limits that stood when it was done. The window is ours unless the owner gives the
/// maker's; it does not protect a warranty.
enum class Timing {
    early,     ///< Before limit - window in every kind.
    in_window, ///< Neither.
    late,      ///< Past limit + window in any kind.
};
/// "early", "in window", "late".
[[nodiscard]] std::string_view words(Timing timing);

/// A job against its limits. Amounts are past the limit itself, not the window; negative: before it.
struct TimedJob {
    Timing timing = Timing::in_window;
    std::optional<Distance> past_distance;
    std::optional<int> past_days;
    std::optional<double> past_hours;
    bool operator==(const TimedJob&) const = default;
};

/// Absent where no kind can be compared (numbers.md 4.3). A limit of 1 000 km: 1 090 is in window, 1 110
/// late by 110 km.
[[nodiscard]] std::optional<TimedJob> timed(const NextLimits& limits, const Moment& job);

} // namespace sumpbook::upkeep
