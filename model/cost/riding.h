// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/pieces.h"
#include "model/upkeep/bike_today.h"
#include "model/usage/distance_forecast.h"

#include <vector>

namespace sumpbook::cost {

/// How a bike will be ridden, for drawing paths (numbers.md 3.6).
class Riding {
public:
    explicit Riding(const upkeep::BikeToday& bike);

    [[nodiscard]] const usage::Riders& riders() const { return forecast_.riders(); }
    /// The day of the last accepted reading; without one: today.
    [[nodiscard]] const Date& last_reading() const { return last_reading_; }
    /// Where the bike stood then; 0 and unknown without a reading.
    [[nodiscard]] double last_km() const { return last_km_; }
    [[nodiscard]] bool known() const { return known_; }

    /// kappa S / 365.25 of a piece, for each rider kept. No piece begins before the last reading.
    [[nodiscard]] std::vector<double> shapes(const Piece& piece) const;
    /// Of the distance ridden between two days counted from today; neither before the last reading.
    [[nodiscard]] double distance_quantile_km(double from_day, double to_day, double p) const;
    [[nodiscard]] double mean_distance_km(double from_day, double to_day) const;

private:
    Date today_;
    Date last_reading_;
    double last_km_ = 0;
    bool known_ = false;
    usage::DistanceForecast forecast_;
};

} // namespace sumpbook::cost
