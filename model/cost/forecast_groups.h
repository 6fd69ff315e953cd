// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/pieces.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cost {

/// Amounts that are summed in each path: those of some pieces, of one bike or all, of one category or all.
struct ForecastGroup {
    enum class Kind { next_12_months, month, year, category, bike, up_to_month, rest_of_year };
    Kind kind = Kind::next_12_months;
    std::string key;                     ///< "2026-05", "2026", "fuel", a bike's name; else empty.
    std::optional<std::size_t> bike;     ///< Only of this one.
    std::optional<std::size_t> category; ///< Only of this one.
    std::size_t first_piece = 0;
    std::size_t last_piece = 0; ///< Itself included.
};

/// Every group that is printed: the months and calendar years from today on, the sums from today up to each
/// month's end, and of the next 12 months and of what is left of this calendar year: all, each bike, each
/// category. Pieces as from pieces_of.
[[nodiscard]] std::vector<ForecastGroup> forecast_groups(const std::vector<Piece>& pieces,
                                                         const std::vector<std::string>& bikes,
                                                         const std::vector<std::string>& categories);

} // namespace sumpbook::cost
