// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <optional>
#include <vector>

namespace sumpbook::review {

/// A stretch in which nothing at all was recorded of a bike.
struct RecordGap {
    Date from; ///< The last day with an entry before it.
    Date to;   ///< The first day with an entry after it.
    /// Distance between the accepted readings around it; absent where there is none on both sides.
    std::optional<Distance> ridden;
    bool laid_up = false; ///< A lay-up entered on or before its first day covers it up to its last month.
    bool operator==(const RecordGap&) const = default;
};

/// Days without an entry from which on it is a gap. DESIGN: longer than a winter's rest.
inline constexpr int gap_days = 180;

/// Every gap between two entries, oldest first. The time before the first entry and since the last one are
/// none: nobody knows what should stand there.
[[nodiscard]] std::vector<RecordGap> record_gaps(const Bike& bike);

} // namespace sumpbook::review
