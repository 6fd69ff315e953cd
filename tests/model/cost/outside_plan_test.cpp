// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/outside_plan.h"

#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

constexpr auto today = "2026-01-10";

std::vector<NotPriced> told(const BikeLog& log) {
    const upkeep::BikeToday bike(log.bike, day(today));
    ForecastGarage made;
    std::vector<NotPriced> ignored;
    std::vector<NotPriced> gaps;
    tell_outside_plan(bike, made.settings(), planned_jobs(bike, made.settings(), ignored), gaps);
    return gaps;
}

} // namespace

TEST_CASE("A bike without a plan says so, and what was spent that nothing foretells") {
    BikeLog log = ridden_bike();
    log.add("2025-05-01", OilChange{}).value.paid = money("80");
    log.add("2025-06-01", Fit{.slot = "rear-tyre"}).value.paid = money("160.50");
    log.add("2025-07-01", Cost{.category = "gear"}).value.paid = money("20", "GBP");
    log.add("2025-01-10", Cost{.category = "storage"}).value.paid = money("999"); // a year ago to the day
    const auto gaps = told(log);
    REQUIRE(gaps.size() == 2);
    CHECK(gaps[0].because == NotPricedBecause::no_plan);
    CHECK(gaps[1] ==
          NotPriced{"Tourer", "gear, oil, tyres", NotPricedBecause::outside_plan, "240.50 EUR + 20.00 GBP"});
}

TEST_CASE("What the forecast stands for is not told again") {
    BikeLog log = ridden_bike();
    log.plan("engine-oil").repeat.months = 12;
    log.add("2025-04-01", Cost{.category = "oil", .text = "4 L can"}).value.paid = money("40");
    log.add("2025-05-01", OilChange{.volume_in = litres("3")}).value.paid = money("14");
    log.add("2025-05-02", TopUp{.volume = litres("0.3")});
    log.add("2025-06-01", Fuel{.volume = litres("14")}, "19450").value.paid = money("25");
    log.add("2025-07-01", Work{.text = "relay"}).value.paid = money("60");
    log.add("2025-08-01", Cost{.category = "insurance", .every_months = 12}).value.paid = money("180");
    log.add("2025-09-01", Cost{.category = "purchase"}).value.paid = money("3000");
    CHECK(told(log).empty());
    // Planned work that no item names is no repair, and comes in no forecast.
    log.add("2025-10-01", Work{.text = "frame painted", .planned = true}).value.paid = money("3000");
    REQUIRE(told(log).size() == 1);
    CHECK(told(log)[0].amount == "3000.00 EUR");
}
