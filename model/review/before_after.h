// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/stats/two_groups.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::review {

/// Where a history is cut in two.
struct Cut {
    Date at;                             ///< What is of this day and later comes after.
    std::optional<std::string> entry_id; ///< A modification: entries of its day are cut by their order.
};

enum class ComparedKind {
    measure, ///< One measured quantity at one place, as written.
    fuel,    ///< Fuel used between full fills, L/100 km.
    oil_use, ///< Oil used in a fill, L in 1 000 km.
    wear,    ///< Wear of a metal in a fill, mg/kg in 1 000 km.
};
[[nodiscard]] std::string_view slug(ComparedKind kind);

/// What can be said of the two sides.
enum class Shift {
    one_sided, ///< A side has no value.
    too_few,   ///< However far apart, so few values could not be told from chance.
    not_seen,  ///< Chance alone explains the difference.
    lower,     ///< Lower after, by more than chance explains (5 %).
    higher,
};
[[nodiscard]] std::string_view slug(Shift shift);

/// Values of one kind before and after a cut.
struct Compared {
    ComparedKind kind = ComparedKind::measure;
    std::string what;              ///< Quantity of a measure, metal of a wear rate; else empty.
    std::optional<std::string> at; ///< Place of a measure.
    std::string unit;              ///< As written; of fuel and oil see the kind.
    int digits = 0;                ///< Worth printing, after the point.
    bool wears = false;            ///< Falls or grows with distance anyway: a pad, a tread, a chain.
    std::vector<double> before;    ///< In the series' own unit.
    std::vector<double> after;
    /// Stretches or fills that the cut goes through; of a metal also fills in which it was below detection,
    /// while the engine ran in, or of an engine that was replaced since.
    std::size_t left_out = 0;
    std::optional<double> median_before;
    std::optional<double> median_after;
    std::optional<stats::TwoGroups> test; ///< Absent where a side is empty.
    Shift shift = Shift::one_sided;
};

/// Everything of a bike that can be held against itself: its measures, fuel from one full fill to the next,
/// oil used by the engine in each fill, and the wear of Fe Cr Al Cu Pb Sn Ni Ag (lead not on leaded petrol)
/// in the last engine sample of each fill. Stretches and fills that the cut goes through are on neither side.
/// Series without any value are left out. Compared with the tests of two oils (numbers.md 6.10), 5 %
/// two-sided.
[[nodiscard]] std::vector<Compared> before_and_after(const Garage& garage, const Bike& bike, const Cut& cut);

/// Modifications whose id is `typed`, else those that name it (any case), in log order.
[[nodiscard]] std::vector<const LogEntry*> modifications_like(const Bike& bike, std::string_view typed);

} // namespace sumpbook::review
