// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_trend.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

/// Fills of 4 000 km, a year each, with nothing carried over and no iron in the new oil; each ends at these
/// values.
OilGarage fills_of(const std::vector<std::vector<SampleValue>>& ends) {
    OilGarage garage;
    garage.details().oil_carry_over = Decimal{0};
    int km = 10000;
    int year = 2000;
    for (const auto& values : ends) {
        garage.fill(std::to_string(year) + "-03-01", "10W-40", "Marsh 4T", km);
        km += 4000;
        garage.draw(std::to_string(year) + "-11-01", values, km);
        ++year;
    }
    return garage;
}

OilGarage fills_of(const std::string& quantity, const std::vector<std::string>& ends) {
    std::vector<std::vector<SampleValue>> values;
    for (const std::string& end : ends)
        values.push_back({value(quantity, end)});
    return fills_of(values);
}

QuantityTrend trend_in(OilGarage garage, const std::string& quantity) {
    for (QuantityTrend& trend : oil_trends(OilRecord::of(garage.garage, garage.bike()), default_profile())) {
        if (trend.quantity == quantity) return trend;
    }
    throw std::logic_error("no trend of " + quantity);
}

} // namespace

TEST_CASE("Fewer than four fills are too few to say; a line needs three", "[oil][trend]") {
    const auto two = trend_in(fills_of("Fe", {"8", "12"}), "Fe");
    CHECK(two.word == TrendWord::too_few);
    CHECK_FALSE(two.line);
    CHECK_FALSE(two.test);
    const auto three = trend_in(fills_of("Fe", {"8", "12", "16"}), "Fe");
    CHECK(three.word == TrendWord::too_few);
    REQUIRE(three.line);
    CHECK(three.line->slope == Approx(1.0 / 4)); // 1 mg/kg in 1 000 km more with each 4 000 km
    CHECK_FALSE(three.median_line);
}

TEST_CASE("Iron that rises with each fill is rising", "[oil][trend]") {
    const auto trend = trend_in(fills_of("Fe", {"8", "12", "16", "21"}), "Fe");
    CHECK(trend.of == TrendOf::wear_rate);
    CHECK(trend.along_distance);
    REQUIRE(trend.series.size() == 4);
    CHECK(trend.series.front().number == Approx(2));
    CHECK(trend.word == TrendWord::rising);
    REQUIRE(trend.test);
    CHECK(trend.test->p_two_sided == Approx(1.0 / 12)); // the least that four can reach
    CHECK_FALSE(trend.limits);
    CHECK(trend_in(fills_of("Fe", {"21", "16", "12", "8"}), "Fe").word == TrendWord::falling);
    CHECK(trend_in(fills_of("Fe", {"8", "16", "12", "21"}), "Fe").word == TrendWord::steady);
}

TEST_CASE("Wear below detection ranks at the bottom and gives no slope", "[oil][trend]") {
    const auto trend = trend_in(fills_of("Cr", {"<1", "<1", "2", "3", "4"}), "Cr");
    CHECK(trend.below == 2);
    REQUIRE(trend.points.front().wear);
    CHECK(trend.points.front().wear->per_1000km() == Approx(0.25)); // what the limit itself would give
    REQUIRE(trend.test);
    CHECK(trend.test->s == 9); // one pair of ten is tied
    CHECK_FALSE(trend.median_line);
    CHECK_FALSE(trend.line);
    REQUIRE(trend.summary); // three detected, 40 % below
    CHECK(trend.summary->below == 2);
    CHECK_FALSE(trend_in(fills_of("Cr", {"<1", "<1", "<1", "3", "4"}), "Cr").summary);
}

TEST_CASE("Eight fills have a usual scatter, and the ninth may leave it", "[oil][trend]") {
    const std::vector<std::string> usual{"20", "21", "20", "22", "20", "21", "22", "21"};
    const auto eight = trend_in(fills_of("Fe", usual), "Fe");
    REQUIRE(eight.limits);
    CHECK_FALSE(eight.latest_is_unusual());
    auto ends = usual;
    ends.emplace_back("60");
    CHECK(trend_in(fills_of("Fe", ends), "Fe").latest_is_unusual());
}

TEST_CASE("Twelve fills show where the level changed", "[oil][trend]") {
    const auto trend = trend_in(
        fills_of("Fe", {"20", "21", "19", "22", "20", "21", "40", "42", "41", "43", "40", "44"}), "Fe");
    REQUIRE(trend.change);
    CHECK(trend.change->last_before == 6);
}

TEST_CASE("Two samples of one fill have a rate, and only the last speaks for the fill", "[oil][trend]") {
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-04-01", {value("Fe", "20")}, 12000);
    garage.draw("2024-06-01", {value("Fe", "40")}, 13000);
    garage.draw("2024-06-03", {value("Fe", "45")}, 13100);
    const auto trend = trend_in(garage, "Fe");
    REQUIRE(trend.points.size() == 3);
    CHECK_FALSE(trend.points[0].since_last);
    REQUIRE(trend.points[1].since_last);
    CHECK(trend.points[1].since_last->low_ppm_per_10h == Approx(10)); // 20 in 20 h at 50 km/h
    CHECK(trend.points[1].since_last->ppm_per_1000km->first == Approx(20));
    CHECK(trend.points[1].since_last->standing == RateStanding::rated);
    CHECK(trend.points[2].since_last->standing == RateStanding::unreliable); // 2 h
    CHECK_FALSE(trend.points[1].wear);
    CHECK(trend.points[2].wear);
    CHECK(trend.series.size() == 1);
    CHECK(trend.points[2].fill == 1);
}

TEST_CASE("Base numbers by another method are left out", "[oil][trend]") {
    std::vector<std::vector<SampleValue>> ends;
    for (const char* base : {"5.0", "5.1", "5.2", "5.3"})
        ends.push_back({value("tbn", base, {}, "ASTM D2896")});
    ends.front() = {value("tbn", "9.0", {}, "ASTM D4739")};
    const auto trend = trend_in(fills_of(ends), "tbn");
    CHECK(trend.of == TrendOf::value);
    CHECK(trend.series.size() == 3);
    CHECK_FALSE(trend.notes.empty());
}

TEST_CASE("The levels of the set and the new oil stand beside the values", "[oil][trend]") {
    OilGarage garage;
    garage.details().block = BlockMaterial::aluminium;
    garage.new_oil("2023-12-01", {value("kv100", "14.2")});
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-06-01", {value("Al", "10"), value("oxidation", "9"), value("kv100", "13.0")}, 14000);
    const auto aluminium = trend_in(garage, "Al");
    CHECK(aluminium.set == "HB2004");
    REQUIRE(aluminium.levels.size() == 1);
    CHECK(aluminium.levels.front().value == Decimal{80});
    CHECK(trend_in(garage, "oxidation").levels.size() == 3);
    const auto viscosity = trend_in(garage, "kv100");
    CHECK(viscosity.new_oil.value() == Approx(14.2));
    CHECK(text_of(viscosity.grade.value()) == "10W-40");
}

TEST_CASE("Lead of leaded petrol says nothing of wear", "[oil][trend]") {
    OilGarage garage = fills_of("Pb", {"8", "12"});
    garage.details().fuel = FuelType::leaded_petrol;
    CHECK(trend_in(garage, "Pb").of == TrendOf::value);
}
