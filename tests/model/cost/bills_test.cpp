// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/bills.h"

#include "model/cost/planned_jobs.h"
#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

#include <algorithm>
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
    auto bills = job_bills(log.bike, made.settings(), day(today)).by_job;
    CHECK(bills.at("engine-oil").at(0).minor == Approx(6000));
    CHECK(bills.at("brake-fluid").at(0).minor == Approx(6000));
    log.bike.plan[0].value.estimate = money("90");
    log.bike.plan[1].value.estimate = money("30");
    bills = job_bills(log.bike, made.settings(), day(today)).by_job;
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
    const auto bills = job_bills(log.bike, made.settings(), day(today)).by_job;
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
    auto bills = job_bills(log.bike, made.settings(), day(today)).by_job;
    REQUIRE(bills.at("coolant").size() == 1); // no rate: apart
    CHECK(bills.at("coolant")[0].minor_today == Approx(10'000 * std::pow(1.04, 731 / 365.25)));
    made.settings().exchange_rates = {{day("2024-06-01"), Currency::from_code("GBP").value(),
                                       Currency::from_code("EUR").value(), number("1.2")}};
    bills = job_bills(log.bike, made.settings(), day(today)).by_job;
    REQUIRE(bills.at("coolant").size() == 2);
    CHECK(bills.at("coolant")[1].minor == Approx(6000));
}

TEST_CASE("Work that does an item or was planned is no repair") {
    BikeLog log;
    log.add("2025-05-01", Work{.text = "relay"}).value.paid = money("40");
    log.add("2025-05-02", Work{.text = "bars turned", .planned = true}).value.paid = money("50");
    log.work("2025-05-03", "", {"coolant"}).value.paid = money("60");
    log.plan("coolant").repeat.months = 24;
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

TEST_CASE("Work that names only a job the plan lacks is a repair, for nothing it is no event") {
    BikeLog log = ridden_bike();
    log.work("2025-05-03", "", {"coolant"}).value.paid = money("60");
    for (const auto* date : {"2025-06-01", "2025-07-01", "2025-08-01"})
        log.work(date, "", {"chain-clean"});
    ForecastGarage made;
    CHECK(repair_bills(log.bike, made.settings(), day(today)).size() == 1);
    made.add(log.bike);
    const auto run = made.run(today, {.paths = 10});
    CHECK(run.bikes[0].repairs.events == 1);
    made.garage.bikes[0].plan.emplace_back().value.slug = "coolant";
    CHECK(made.run(today, {.paths = 10}).bikes[0].repairs.events == 0);
}

TEST_CASE("What the owner also does for nothing has no share where another item can carry the money") {
    BikeLog log;
    log.plan("first-service").first.months = 1;
    log.plan("chain-clean").repeat.months = 1;
    log.plan("chain-adjust").repeat.months = 1;
    log.work("2025-06-13", "", {"first-service", "chain-clean", "chain-adjust"}).value.paid = money("150");
    const ForecastGarage made;
    const auto settings = settings_of(made.garage);
    CHECK(job_bills(log.bike, settings, day(today)).of("chain-clean").at(0).minor == Approx(5'000));
    log.work("2025-07-18", "", {"chain-clean"});
    log.work("2025-08-18", "", {"chain-adjust"}).value.evidence = Evidence::invoice; // money not entered
    auto bills = job_bills(log.bike, settings, day(today));
    CHECK(bills.of("chain-clean").empty());
    CHECK(bills.of("first-service").at(0).minor == Approx(7'500));
    CHECK(bills.of("chain-adjust").at(0).minor == Approx(7'500));
    // Alone it carries its own money.
    log.work("2025-09-18", "", {"chain-clean"}).value.paid = money("12");
    bills = job_bills(log.bike, settings, day(today));
    CHECK(bills.of("chain-clean").at(0).minor == Approx(1'200));
}

TEST_CASE("An oil change costs its own money and the oil from the can, whichever way oil is counted") {
    BikeLog log;
    log.plan("engine-oil").repeat.months = 12;
    log.add("2025-05-01", Cost{.category = "oil", .text = "4 L can"}).value.paid = money("40");
    log.add("2025-05-02", OilChange{.volume_in = litres("3"), .filter_changed = true}).value.paid =
        money("14");
    ForecastGarage made;
    for (const auto way : {OilBoughtCounts::when_bought, OilBoughtCounts::per_litre_used}) {
        made.settings().oil_bought_counts = way;
        const auto bills = job_bills(log.bike, made.settings(), day(today)).of("engine-oil");
        REQUIRE(bills.size() == 1);
        CHECK(bills[0].minor == 4'400);
    }
}

TEST_CASE("A job that was only paid in another currency is told with its amount, not as never paid") {
    BikeLog log;
    log.plan("coolant").repeat.months = 6;
    log.work("2025-05-10", "", {"coolant"}).value.paid = money("50", "GBP");
    log.add("2025-06-01", Work{.text = "relay"}).value.paid = money("20", "GBP");
    log.add("2025-06-01", Fuel{.volume = litres("14")}, "19450").value.paid = money("25", "GBP");
    log.add("2025-06-20", Fuel{.volume = litres("15")}, "19750").value.paid = money("27", "GBP");
    ForecastGarage made;
    made.add(log.bike);
    const auto gaps = not_priced(made.run(today, {.paths = 10}), 0);
    const auto told = [&](const NotPriced& gap) { return std::ranges::find(gaps, gap) != gaps.end(); };
    CHECK(told({"Tourer", "coolant", NotPricedBecause::no_rate, "50.00 GBP"}));
    CHECK(told({"Tourer", "repairs", NotPricedBecause::no_rate, "20.00 GBP"}));
    CHECK(told({"Tourer", "fuel", NotPricedBecause::no_rate, "27.00 GBP"}));
    // Bills that can be converted price a job whose estimate cannot.
    made.garage.bikes[0].plan[0].value.estimate = money("60", "GBP");
    made.garage.bikes[0].log[0].value.paid = money("60");
    const auto fewer = not_priced(made.run(today, {.paths = 10}), 0);
    CHECK(std::ranges::none_of(fewer, [](const NotPriced& gap) { return gap.what == "coolant"; }));
}

TEST_CASE("A job by distance without a reading says that the odometer was not read") {
    BikeLog log;
    log.plan("valve-clearance").repeat.distance = km("6000");
    log.work("2025-05-10", "", {"valve-clearance"});
    const upkeep::BikeToday bike(log.bike, day(today));
    std::vector<NotPriced> gaps;
    (void)planned_jobs(bike, ForecastGarage().settings(), gaps);
    REQUIRE(gaps.size() == 1);
    CHECK(gaps[0].because == NotPricedBecause::no_reading);
}
