// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/forecast.h"
#include "tests/model/bike_log.h"

#include <vector>

namespace sumpbook::testing {

/// A garage in euros whose prices stand still unless a test lets them rise.
class ForecastGarage {
public:
    ForecastGarage() {
        garage.settings.emplace();
        garage.settings->value.currency = Currency::from_code("EUR").value();
        for (const auto& category : default_categories())
            garage.settings->value.price_drift_percent_a_year[category] = Decimal{0};
    }
    GarageSettings& settings() { return garage.settings->value; }

    void add(Bike bike) {
        bike.id.bytes[0] = static_cast<std::uint8_t>(garage.bikes.size() + 1);
        garage.bikes.push_back(std::move(bike));
    }
    [[nodiscard]] cost::ForecastRun run(std::string_view today, const cost::ForecastWish& wish = {}) const {
        std::vector<const Bike*> bikes;
        for (const auto& bike : garage.bikes)
            bikes.push_back(&bike);
        return cost::run_forecast(garage, bikes, day(today), wish);
    }

    Garage garage;
};

/// A bike ridden about 500 km a month through 2024 and 2025, a little more in summer.
inline BikeLog ridden_bike(std::string name = "Tourer") {
    BikeLog log(std::move(name));
    int km = 10'000;
    for (int month = 0; month < 24; ++month) {
        const Date date = plus_months(day("2024-01-15"), month);
        log.reading(iso_text(date), std::to_string(km));
        km += 420 + 45 * (6 - std::abs(month % 12 - 6)) + (month % 5) * 17;
    }
    return log;
}

} // namespace sumpbook::testing
