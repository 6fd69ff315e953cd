// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_compare.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

/// One fill of an oil and the iron it ends with, after 4 000 km.
struct End {
    std::string oil;
    std::string iron;
};

/// The fills in turn, a year each from 2000 on; nothing is carried over.
OilGarage fills_of(const std::vector<End>& ends) {
    OilGarage garage;
    garage.details().oil_carry_over = Decimal{0};
    int km = 10000;
    int year = 2000;
    for (const End& end : ends) {
        garage.fill(std::to_string(year) + "-03-01", "10W-40", end.oil, km);
        km += 4000;
        garage.draw(std::to_string(year) + "-11-01", {value("Fe", end.iron)}, km);
        ++year;
    }
    return garage;
}

OilComparison compared(OilGarage& garage) {
    return compare_oils(OilRecord::of(garage.garage, garage.bike()), "Marsh", "Fenland");
}

} // namespace

TEST_CASE("Four clear fills of each tell two oils apart", "[oil][compare]") {
    auto garage = fills_of({{"Marsh", "8"},
                            {"Fenland", "16"},
                            {"Marsh", "9"},
                            {"Fenland", "18"},
                            {"Marsh", "10"},
                            {"Fenland", "17"},
                            {"Marsh", "8.5"},
                            {"Fenland", "19"}});
    const auto comparison = compared(garage);
    REQUIRE(comparison.metals.size() == 1);
    const ComparedMetal& iron = comparison.metals.front();
    CHECK(iron.first_per_1000km.size() == 4);
    CHECK(iron.test->p_two_sided() == Approx(2.0 / 70));
    CHECK(iron.shift->shift == Approx(8.75 / 4)); // the middle of the sixteen differences
    CHECK(iron.word == ComparedWord::first_wears_less);
    CHECK(comparison.word == ComparedWord::first_wears_less);
    CHECK(comparison.first.fills == 4);
}

TEST_CASE("Three fills of each can never tell, and it is said how many would", "[oil][compare]") {
    auto garage = fills_of({{"Marsh", "8"},
                            {"Fenland", "16"},
                            {"Marsh", "9"},
                            {"Fenland", "18"},
                            {"Marsh", "10"},
                            {"Fenland", "17"}});
    const auto comparison = compared(garage);
    CHECK(comparison.word == ComparedWord::cannot_tell);
    CHECK(comparison.fewest_for_an_answer == 4); // 2/C(6,3) is 0.1, 2/C(8,4) is 0.029
    CHECK(comparison.fewest_fills_needed == 4);
    CHECK(comparison.metals.front().smallest_p.value() == Approx(0.1));
}

TEST_CASE("A difference that chance would make is none, and asks for more fills", "[oil][compare]") {
    auto garage = fills_of({{"Marsh", "8"},
                            {"Fenland", "9"},
                            {"Marsh", "12"},
                            {"Fenland", "13"},
                            {"Marsh", "10"},
                            {"Fenland", "10.5"},
                            {"Marsh", "9"},
                            {"Fenland", "11"}});
    const auto comparison = compared(garage);
    CHECK(comparison.word == ComparedWord::cannot_tell);
    CHECK(comparison.fewest_fills_needed > 4);
}

TEST_CASE("A metal below detection in a fill is not compared", "[oil][compare]") {
    auto garage = fills_of({{"Marsh", "<2"}, {"Fenland", "9"}});
    const auto comparison = compared(garage);
    CHECK(comparison.metals.front().word == ComparedWord::not_compared);
    CHECK(comparison.metals.front().below() == 1);
    CHECK(comparison.metals.front().first_per_1000km.empty()); // a limit is never a number
    CHECK(comparison.first.fills == 1);
    CHECK(comparison.word == ComparedWord::not_compared);
}

TEST_CASE("A day parts the fills, and an engine before the one fitted is left out", "[oil][compare]") {
    auto garage = fills_of({{"Marsh", "8"}, {"Marsh", "9"}, {"Marsh", "10"}, {"Marsh", "11"}});
    const auto before_2002 = [&] {
        return compare_before_after(OilRecord::of(garage.garage, garage.bike()), day("2002-01-01"));
    };
    const auto parted = before_2002();
    CHECK(parted.first.fills == 2);
    CHECK(parted.second.fills == 2);
    CHECK(parted.notes.empty());
    Fit engine;
    engine.slot = "engine";
    garage.add("2001-01-15", engine);
    const auto later = before_2002();
    CHECK(later.first.fills == 1);
    CHECK(later.notes.size() == 1);
}

TEST_CASE("The oils of the engine are listed once each", "[oil][compare]") {
    auto garage = fills_of({{"Marsh", "8"}, {"Fenland", "9"}, {"marsh", "10"}});
    CHECK(sampled_oils(OilRecord::of(garage.garage, garage.bike())) ==
          std::vector<std::string>{"Marsh", "Fenland"});
}
