// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/usage/odometer.h"
#include "model/usage/rate_belief.h"
#include "model/usage/riding_days.h"

#include <optional>
#include <vector>

namespace sumpbook::usage {

/// A stretch of the record that is foretold and then learnt from: the days after `after` up to and
/// including `last`, at least a month of them.
struct Step {
    Date after;
    Date last;
    double distance_km = 0;
    [[nodiscard]] int days() const { return days_between(after, last); }
};

/// Steps of a record (numbers.md 3.1): none where it is under 7 days long. `day_ends`: the last accepted
/// reading of each day, by date.
[[nodiscard]] std::vector<Step> steps_of(const std::vector<DayEnd>& day_ends);

/// One kind of rider after the record was seen: distance over operating time S is Gamma(kappa S / 365.25)
/// at a rate of which `belief` is held.
struct Rider {
    std::size_t clock = 0; ///< Which of the 25 seasons.
    double kappa = 0;      ///< How regularly: pieces of riding a year.
    double level = 1;      ///< 1/8: the seldom-ridden bike.
    double forgetting = 1; ///< Of its certainty what is left after a year.
    RateBelief belief;
    double weight = 0; ///< The weights of all riders kept sum to 1.
    [[nodiscard]] double mean_km_a_year() const { return kappa * belief.b_km / (belief.a - 1); }
};

/// 600 kinds of rider, each trusted as far as it would have foretold every step before it was made
/// (numbers.md 3.3 to 3.5).
struct Riders {
    std::vector<Rider> kept;
    /// Per clock: how fast operating time runs in each calendar month, p_m / s_m.
    std::vector<ByMonth> pace;
    double largest_ln_weight = 0;
    std::size_t steps = 0;
};

/// What a bike is taken to do where nothing is known. DESIGN (numbers.md 3.3).
inline constexpr double default_km_a_year = 2500;

/// `expected_km_a_year`: the owner's guess; absent: 2 500.
[[nodiscard]] Riders learn_riders(const std::vector<Step>& steps, const RidingDays& riding,
                                  std::optional<double> expected_km_a_year);

} // namespace sumpbook::usage
