// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/bills.h"

#include "model/cost/planned_jobs.h"
#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

#include <cmath>

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

constexpr auto today = "2026-01-10";

} // namespace

TEST_CASE("An entry that does several items is shared out by their estimates, without them evenly") {
    BikeLog log;
    auto& oil = log.plan("engine-oil");
    oil.repeat.months = 12;
    log.plan("brake-fluid").repeat.months = 24;
    log.work("2026-01-10", "", {"engine-oil", "brake-fluid"}).value.paid = money("120");
    ForecastGarage made;
    auto bills = job_bills(log.bike, made.settings(), day(today));
    CHECK(bills.at("engine-oil").at(0).minor == Approx(6000));
    CHECK(bills.at("brake-fluid").at(0).minor == Approx(6000));
    log.bike.plan[0].value.estimate = money("90");
    log.bike.plan[1].value.estimate = money("30");
    bills = job_bills(log.bike, made.settings(), day(today));
    CHECK(bills.at("engine-oil").at(0).minor == Approx(9000));
    CHECK(bills.at("brake-fluid").at(0).minor == Approx(3000));
}

TEST_CASE("What another item includes has no share of the bill") {
    BikeLog log;
    log.plan("oil-filter").repeat.months = 12;
    auto& oil = log.plan("engine-oil");
    oil.repeat.months = 12;
    oil.includes = {"oil-filter"};
    log.add("2026-01-10", OilChange{.filter_changed = true}).value.paid = money("80");
    ForecastGarage made;
    const auto bills = job_bills(log.bike, made.settings(), day(today));
    CHECK(bills.at("engine-oil").at(0).minor == 8000);
    CHECK_FALSE(bills.contains("oil-filter"));
}

TEST_CASE("Past costs are brought forward by the drift of their category; other currencies by their rate") {
    BikeLog log;
    log.plan("coolant").repeat.months = 24;
    log.work("2024-01-10", "", {"coolant"}).value.paid = money("100");
    log.work("2025-01-10", "", {"coolant"}).value.paid = money("50", "GBP");
    ForecastGarage made;
    made.settings().price_drift_percent_a_year["upkeep"] = Decimal{4};
    auto bills = job_bills(log.bike, made.settings(), day(today));
    REQUIRE(bills.at("coolant").size() == 1); // no rate: apart
    CHECK(bills.at("coolant")[0].minor_today == Approx(10'000 * std::pow(1.04, 731 / 365.25)));
    made.settings().exchange_rates = {{day("2024-06-01"), Currency::from_code("GBP").value(),
                                       Currency::from_code("EUR").value(), number("1.2")}};
    bills = job_bills(log.bike, made.settings(), day(today));
    REQUIRE(bills.at("coolant").size() == 2);
    CHECK(bills.at("coolant")[1].minor == Approx(6000));
}

TEST_CASE("Work that does an item or was planned is no repair") {
    BikeLog log;
    log.add("2025-05-01", Work{.text = "relay"}).value.paid = money("40");
    log.add("2025-05-02", Work{.text = "bars turned", .planned = true}).value.paid = money("50");
    log.work("2025-05-03", "", {"coolant"}).value.paid = money("60");
    ForecastGarage made;
    const auto bills = repair_bills(log.bike, made.settings(), day(today));
    REQUIRE(bills.size() == 1);
    CHECK(bills[0].minor == 4000);
}

TEST_CASE("A job falls due from its standing limit, and again from the day and distance it is done") {
    BikeLog log = ridden_bike();
    auto& item = log.plan("engine-oil");
    item.repeat = {.distance = km("5000"), .months = 6, .hours = {}};
    log.work("2025-12-15", "", {"engine-oil"});
    const upkeep::BikeToday bike(log.bike, day(today));
    std::vector<NotPriced> gaps;
    const auto jobs = planned_jobs(bike, ForecastGarage().settings(), gaps);
    REQUIRE(jobs.size() == 1);
    const double last_km = bike.odometer().span()->at_last.km();
    CHECK(jobs[0].first.km == Approx(last_km + 5000));
    CHECK(jobs[0].first.day == Approx(156)); // 15 June
    const auto next = due_after(jobs[0], bike, last_km + 3000, 100);
    CHECK(next.km == Approx(last_km + 8000));
    CHECK(next.day == Approx(100 + 183)); // 20 April + 6 months
}
