// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/per_distance.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using cost::cost_of_distance;

namespace {

GarageSettings euro() {
    GarageSettings settings;
    settings.currency = Currency::from_code("EUR").value();
    return settings;
}

Cost of_category(std::string category) {
    Cost cost;
    cost.category = std::move(category);
    return cost;
}

std::optional<cost::CostOfDistance> over(const BikeLog& log, std::string_view from, std::string_view to) {
    return cost_of_distance(cost::spending_of(log.bike, euro()), usage::OdometerSeries::of(log.bike),
                            day(from), day(to));
}

} // namespace

TEST_CASE("Money and distance of the same days give the cost of a kilometre") {
    BikeLog log;
    log.add("2023-06-01", of_category("insurance")).value.paid = money("500.00"); // before the record
    log.reading("2024-01-01", "1000");
    log.add("2024-02-01", of_category("gear")).value.paid = money("100.00");
    log.add("2024-03-01", of_category("purchase")).value.paid = money("5000.00"); // not running it
    log.reading("2024-12-31", "3000");
    const auto cost = over(log, "2023-01-01", "2025-12-31");
    REQUIRE(cost);
    CHECK(cost->running == money("100.00"));
    CHECK(cost->distance == Distance::from_whole_km(2000));
    CHECK(cost->minor_per_km == Approx(5));
    CHECK(cost->from == day("2024-01-01"));
    CHECK(cost->to == day("2024-12-31"));
}

TEST_CASE("Without distance, and with money in two currencies, there is none") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    log.add("2024-02-01", of_category("gear")).value.paid = money("100.00");
    CHECK_FALSE(over(log, "2023-01-01", "2025-12-31"));
    log.reading("2024-12-31", "3000");
    CHECK(over(log, "2023-01-01", "2025-12-31"));
    log.add("2024-02-02", of_category("gear")).value.paid = money("100.00", "USD");
    CHECK_FALSE(over(log, "2023-01-01", "2025-12-31"));
}
