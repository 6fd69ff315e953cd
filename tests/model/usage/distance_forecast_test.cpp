// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/distance_forecast.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <rapidcheck.h>

#include <cmath>

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::usage;

namespace {

/// Readings a month apart of so many km; a lay-up every December to February where asked for.
DistanceForecast forecast_of(const std::vector<int>& km_a_month, bool laid_up = false) {
    BikeLog log;
    std::vector<DayEnd> ends{{day("2022-01-01"), {}}};
    for (const int km : km_a_month)
        ends.push_back({plus_months(ends.front().date, static_cast<int>(ends.size())),
                        ends.back().distance + Distance::from_whole_km(km)});
    for (int year = 2021; laid_up && year < 2026; ++year)
        log.add(std::to_string(year) + "-12-01",
                Layup{plus_months(day("2022-03-01"), 12 * (year - 2021)), false});
    const RidingDays riding(log.bike, ends.front().date, ends.back().date);
    return {learn_riders(steps_of(ends), riding, {}), riding, ends.back().date};
}

DistanceForecast two_even_years() { return forecast_of(std::vector<int>(24, 250)); }

} // namespace

TEST_CASE("The whole day is the first whose chance is enough") {
    const auto forecast = two_even_years();
    for (const double km : {1.0, 80.0, 500.0, 3000.0, 25'000.0}) {
        for (const double p : {0.1, 0.5, 0.9}) {
            INFO(km << " km, " << p);
            const auto reached = forecast.day_to_reach(km, p);
            REQUIRE(reached);
            CHECK(forecast.chance_reached(km, *reached) >= p);
            if (*reached > 0) CHECK(forecast.chance_reached(km, *reached - 1) < p);
            const double days = forecast.days_to_reach(km, p).value();
            CHECK(std::ceil(days) == *reached);
            CHECK(forecast.chance_reached(km, days) == Approx(p).margin(1e-6));
            CHECK_FALSE(forecast.day_to_reach(km, p, *reached - 1));
            CHECK(forecast.day_to_reach(km, p, *reached) == reached);
        }
    }
}

TEST_CASE("What is reached already, and what never is") {
    const auto forecast = two_even_years();
    CHECK(forecast.day_to_reach(0, 0.5) == 0);
    CHECK(forecast.days_to_reach(-3, 0.9) == Approx(0));
    CHECK(forecast.chance_reached(-3, 0) == 1);
    CHECK_FALSE(forecast.day_to_reach(10'000'000, 0.1));
    CHECK_FALSE(forecast.days_to_reach(10'000'000, 0.1));
    CHECK_FALSE(forecast.day_to_reach(100, 0.5, -4));
}

TEST_CASE("The quantile of a distance is where its chance is") {
    const auto forecast = two_even_years();
    for (const double p : {0.1, 0.5, 0.9}) {
        const double km = forecast.distance_quantile_km(10, 100, p);
        CHECK(forecast.chance_at_most(10, 100, km) == Approx(p).margin(1e-9));
    }
    CHECK(forecast.distance_quantile_km(10, 10, 0.9) == 0);
    CHECK(forecast.mean_distance_km(0, 90) + forecast.mean_distance_km(90, 365) ==
          Approx(forecast.mean_distance_km(0, 365)));
}

TEST_CASE("While the bike is laid up nothing is ridden") {
    const auto forecast = forecast_of(std::vector<int>(36, 250), true); // to 1 January 2025
    CHECK(forecast.mean_distance_km(0, 58) == 0);
    CHECK(forecast.distance_quantile_km(0, 58, 0.99) == 0);
    CHECK(forecast.day_to_reach(10, 0.1).value() > 58);
    CHECK(forecast.mean_distance_km(58, 100) > 0);
}

TEST_CASE("Any record: the quantiles are in order and rise with the distance") {
    CHECK(rc::check([] {
        const auto months = *rc::gen::container<std::vector<int>>(*rc::gen::inRange<std::size_t>(0, 40),
                                                                  rc::gen::inRange(0, 2000));
        const auto forecast = forecast_of(months, *rc::gen::arbitrary<bool>());
        const double km = *rc::gen::inRange(1, 20'000);
        const auto order = [](const std::optional<int>& day) { return day.value_or(horizon_days + 1); };
        constexpr double precision = 1e-6; // km; what quantiles are found to
        int before = 0;
        for (const double p : {0.1, 0.5, 0.9}) {
            const int reached = order(forecast.day_to_reach(km, p));
            RC_ASSERT(reached >= before);
            RC_ASSERT(order(forecast.day_to_reach(km + 500, p)) >= reached);
            before = reached;
            const double ridden = forecast.distance_quantile_km(0, 180, p);
            RC_ASSERT(forecast.distance_quantile_km(0, 365, p) >= ridden - precision);
            RC_ASSERT(ridden >= 0);
        }
        const auto in_90_days = [&](double p) { return forecast.distance_quantile_km(0, 90, p); };
        RC_ASSERT(in_90_days(0.1) <= in_90_days(0.5) + precision);
        RC_ASSERT(in_90_days(0.5) <= in_90_days(0.9) + precision);
    }));
}
