// SPDX-License-Identifier: GPL-3.0-or-later
// When an oil is used up, by the rules of the trade; sources stand in std-oil-life-rules.csv.
#include "model/oil/oil_life.h"

#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;
using namespace sumpbook::outside;

namespace {

std::string text(double number) { return decimal_from_double(number, 2).text(); }

SampleValue base(double number, const std::string& method = "ASTM D2896") {
    return value("tbn", text(number), {}, method);
}

LifeMark followed(const std::vector<SampleValue>& fresh, const std::vector<SampleValue>& used,
                  LifeMarkKind kind) {
    OilGarage garage;
    garage.new_oil("2023-12-01", fresh);
    garage.fill("2024-01-01", "15W-40", "Marsh 4T", 10000);
    garage.draw("2024-06-01", used, 15000);
    const OilLife life = oil_life(OilRecord::of(garage.garage, garage.bike()), "Marsh 4T", default_profile());
    for (const LifeMark& mark : life.marks) {
        if (mark.kind == kind) return mark;
    }
    throw std::logic_error("no such mark");
}

} // namespace

TEST_CASE("An oil is used up where base and acid number meet", "[outside][oil]") {
    const CheckRow& row = check_row("std-oil-life-rules.csv", "BN/AN crossing");
    TESTING_ROW(row);
    const auto figures = numbers_in(row["worked_check"]); // start BN 10 AN 2, both reach 4
    REQUIRE(figures.size() == 3);
    const auto met =
        followed({base(figures[0]), value("tan", text(figures[1]))},
                 {base(figures[2]), value("tan", text(figures[2]))}, LifeMarkKind::base_meets_acid);
    CHECK(met.middle_km.value() == Approx(5000));
    CHECK(met.passed);
    const auto short_of_it =
        followed({base(figures[0]), value("tan", text(figures[1]))},
                 {base(figures[2] + 1), value("tan", text(figures[2]))}, LifeMarkKind::base_meets_acid);
    CHECK_FALSE(short_of_it.passed);
    CHECK(short_of_it.middle_km.value() > 5000);
}

TEST_CASE("An oil calls for attention at half of its base number", "[outside][oil]") {
    const CheckRow& row = check_row("std-oil-life-rules.csv", "BN half-life");
    TESTING_ROW(row);
    const auto figures = numbers_in(row["worked_check"]); // new 9.0, attention at 4.5
    REQUIRE(figures.size() == 2);
    const auto half = followed({base(figures[0])}, {base(figures[1])}, LifeMarkKind::half_base_number);
    CHECK(half.level == Approx(figures[1]));
    CHECK(half.passed);
    CHECK(half.middle_km.value() == Approx(5000));
}

TEST_CASE("Base numbers of unlike methods are never subtracted", "[outside][oil]") {
    TESTING_ROW(check_row("std-oil-life-rules.csv", "BN method mismatch"));
    const auto half = followed({base(9)}, {base(5, "ASTM D4739")}, LifeMarkKind::half_base_number);
    CHECK(half.unknown.has_value());
    CHECK_FALSE(half.middle_km.has_value());
}
