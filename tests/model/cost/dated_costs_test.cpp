// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/dated_costs.h"

#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

struct Found {
    std::vector<DatedCost> costs;
    std::vector<NotPriced> gaps;
};
Found found(const BikeLog& log, const GarageSettings& settings) {
    Found all;
    all.costs = dated_costs(log.bike, settings, day("2026-01-10"), day("2027-01-10"), all.gaps);
    return all;
}

} // namespace

TEST_CASE("A series goes on until its last day, from the day its payment covers") {
    BikeLog log;
    Cost storage{.category = "storage", .covers_from = day("2025-11-01"), .every_months = 1};
    storage.until = day("2026-03-31");
    log.add("2025-10-20", storage).value.paid = money("30");
    const auto all = found(log, ForecastGarage().settings()).costs;
    std::vector<std::string> days;
    for (const auto& cost : all)
        days.push_back(iso_text(cost.date));
    CHECK(days == std::vector<std::string>{"2026-02-01", "2026-03-01"});
}

TEST_CASE("A payment recorded ahead is that payment, and the series goes on after it") {
    BikeLog log;
    log.add("2025-03-01", Cost{.category = "tax", .every_months = 6}).value.paid = money("60");
    log.add("2025-09-01", Cost{.category = "tax"}).value.paid = money("60");
    log.add("2026-03-01", Cost{.category = "tax"}).value.paid = money("66");
    const auto all = found(log, ForecastGarage().settings()).costs;
    REQUIRE(all.size() == 2);
    CHECK(iso_text(all[0].date) == "2026-03-01");
    CHECK(all[0].minor == 6600);
    CHECK_FALSE(all[0].comes_again);
    CHECK(iso_text(all[1].date) == "2026-09-01");
    CHECK(all[1].minor == 6600);
    CHECK(all[1].comes_again);
}

TEST_CASE("What was paid in another currency is converted by its rate, else listed apart") {
    BikeLog log;
    log.add("2025-03-01", Cost{.category = "insurance", .every_months = 12}).value.paid = money("100", "GBP");
    log.add("2025-05-01", Cost{.category = "tax", .every_months = 12});
    ForecastGarage made;
    auto all = found(log, made.settings());
    CHECK(all.costs.empty());
    REQUIRE(all.gaps.size() == 2);
    CHECK(all.gaps[0] == NotPriced{"Tourer", "insurance", NotPricedBecause::no_rate, "100.00 GBP"});
    CHECK(all.gaps[1] == NotPriced{"Tourer", "tax", NotPricedBecause::no_cost, {}});
    made.settings().exchange_rates = {{day("2025-01-01"), Currency::from_code("GBP").value(),
                                       Currency::from_code("EUR").value(), number("1.17")}};
    all = found(log, made.settings());
    REQUIRE(all.costs.size() == 1);
    CHECK(all.costs[0].minor == 11'700);
}

TEST_CASE("One payment that was missed counts today, perhaps paid; of several the owner writes none down") {
    BikeLog log;
    log.add("2025-11-20", Cost{.category = "storage", .every_months = 1}).value.paid = money("30");
    auto all = found(log, ForecastGarage().settings()).costs;
    REQUIRE(all.size() == 13);
    CHECK(iso_text(all[0].date) == "2026-01-10"); // of 20 December
    CHECK(all[0].missed);
    CHECK(iso_text(all[1].date) == "2026-01-20");
    CHECK_FALSE(all[1].missed);
    log.bike.log[0].value.date = day("2025-10-20"); // 20 November and 20 December
    all = found(log, ForecastGarage().settings()).costs;
    REQUIRE(all.size() == 12);
    CHECK(iso_text(all[0].date) == "2026-01-20");
}

TEST_CASE("A series whose last day is over costs nothing more, whether or not it was all paid") {
    BikeLog log;
    Cost storage{.category = "storage", .every_months = 1};
    storage.until = day("2024-06-30");
    log.add("2022-01-15", storage).value.paid = money("30");
    CHECK(found(log, ForecastGarage().settings()).costs.empty());
}
