// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/consumption_plot.h"

#include "reports/plot/faults.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

void fill(BikeLog& log, std::string_view date, std::string_view odometer, std::string_view volume,
          bool missed = false) {
    Fuel fuel;
    fuel.volume = litres(volume);
    fuel.missed_before = missed;
    log.add(date, fuel, odometer);
}

void top_up(BikeLog& log, std::string_view date, std::string_view odometer, std::string_view volume,
            std::optional<Decimal> level) {
    TopUp made;
    made.volume = litres(volume);
    made.level_after = level;
    log.add(date, made, odometer);
}

plot::Plot fuel_of(const BikeLog& log, const GarageSettings& settings = {}) {
    return compose::fuel_consumption_plot(
        "Tourer", usage::fuel_use(log.bike, usage::OdometerSeries::of(log.bike)), settings);
}

plot::Plot oil_of(const BikeLog& log) {
    return compose::oil_consumption_plot("Tourer",
                                         usage::oil_use(log.bike, usage::OdometerSeries::of(log.bike)));
}

} // namespace

TEST_CASE("a void stretch breaks the line of fuel used") {
    BikeLog log;
    fill(log, "2024-05-01", "1000", "10");
    fill(log, "2024-05-02", "1200", "10");       // 5 L/100 km
    fill(log, "2024-05-03", "1400", "10", true); // one before it is missing
    fill(log, "2024-05-04", "1600", "8");        // 4 L/100 km
    const auto picture = fuel_of(log);
    REQUIRE(picture.series.size() == 1);
    const auto& runs = picture.series[0].runs;
    REQUIRE(runs.size() == 2);
    CHECK(runs[0][0].x == plot::day_position(day("2024-05-02")));
    CHECK(runs[0][0].y == Approx(5));
    CHECK(runs[1][0].y == Approx(4));
    REQUIRE(picture.rules.size() == 1);
    CHECK(picture.rules[0].at == Approx(4.5)); // 18 L over 400 km
    CHECK(picture.rules[0].label == "overall 4.50");
    CHECK(picture.description.find("1 left out") != std::string::npos);
}

TEST_CASE("fuel is drawn in the owner's unit") {
    BikeLog log;
    fill(log, "2024-05-01", "1000", "10");
    fill(log, "2024-05-02", "1200", "10");
    GarageSettings settings;
    settings.consumption_unit = ConsumptionUnit::km_per_l;
    const auto picture = fuel_of(log, settings);
    CHECK(picture.series[0].runs[0][0].y == Approx(20));
    CHECK(picture.y.title == "Fuel used, km/L");
}

TEST_CASE("without a figure there is nothing to see, and words say so") {
    BikeLog log;
    fill(log, "2024-05-01", "1000", "10");
    CHECK(plot::empty(fuel_of(log)));
    CHECK(plot::empty(oil_of(log)));
    CHECK(oil_of(log).description == "No fill of oil has a figure.");
}

TEST_CASE("oil: known levels are filled, lower bounds hollow, the published range a band") {
    BikeLog log;
    log.reading("2024-01-01", "9000");
    log.add("2024-02-01", OilChange{}, "10000");
    top_up(log, "2024-03-01", "12000", "0.6", number("1"));
    log.add("2024-04-01", OilChange{}, "13000");
    top_up(log, "2024-05-01", "14000", "0.2", {});
    log.add("2024-06-01", OilChange{}, "15000");
    const auto picture = oil_of(log);
    REQUIRE(picture.series.size() == 1);
    REQUIRE(picture.series[0].runs.size() == 1);
    const auto& points = picture.series[0].runs[0];
    REQUIRE(points.size() == 2);
    CHECK(points[0].y == Approx(0.3)); // 0.6 L over 2 000 km
    CHECK_FALSE(points[0].hollow);
    CHECK(points[1].y == Approx(0.2));
    CHECK(points[1].hollow);
    CHECK(picture.hollow_label == "at least so much");
    REQUIRE(picture.bands.size() == 1);
    CHECK(picture.bands[0].from == Approx(0.28125)); // 0.9 L in 3 200 km, oil_consumption.csv
    CHECK(picture.bands[0].to == Approx(1.0));
    CHECK(picture.rules.empty());
}

TEST_CASE("oil: the manual's figure takes the place of the published range, running in stands apart") {
    BikeLog log;
    log.bike.details.value.handbook_oil_use_l_per_1000km = number("0.5");
    log.add("2024-01-01", OilChange{}, "0");
    top_up(log, "2024-02-01", "500", "0.2", number("1"));
    log.add("2024-03-01", OilChange{}, "1000");
    top_up(log, "2024-04-01", "3000", "0.2", number("1"));
    const auto picture = oil_of(log);
    REQUIRE(picture.series.size() == 2);
    CHECK(picture.series[0].runs[0][0].y == Approx(0.1));
    CHECK(picture.series[1].label == "Running in");
    CHECK(picture.series[1].runs[0][0].y == Approx(0.4));
    CHECK(picture.bands.empty());
    REQUIRE(picture.rules.size() == 1);
    CHECK(picture.rules[0].at == Approx(0.5));
    CHECK(picture.rules[0].label == "your manual's figure 0.50");
    CHECK(plot::faults(picture) == std::vector<std::string>{});
}
