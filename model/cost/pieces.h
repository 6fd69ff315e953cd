// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"

#include <vector>

namespace sumpbook::cost {

/// A stretch of days that a forecast is made of: the days after `after`, up to and including `last`.
struct Piece {
    Date after;
    Date last;
    double from_day = 0; ///< Days from today to the end of `after`.
    double to_day = 0;   ///< Days from today to the end of `last`.
    [[nodiscard]] double middle_day() const { return (from_day + to_day) / 2; }
    bool operator==(const Piece&) const = default;
};

/// From the last reading to today (piece 0, may be of no days), then up to `months` from today, cut at the
/// end of every calendar month and every 12 months from today (numbers.md 5). `last_reading` not after today.
[[nodiscard]] std::vector<Piece> pieces_of(const Date& last_reading, const Date& today, int months);

} // namespace sumpbook::cost
