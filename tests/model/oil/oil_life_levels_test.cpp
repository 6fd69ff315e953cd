// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_life_levels.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

/// New oil of SAE 10W-40 with these values, judged by a profile.
RatingBasis basis_of(std::vector<SampleValue> fresh, const Profile& profile = default_profile()) {
    RatingBasis basis;
    basis.profile = profile;
    basis.reference.sample = "N1";
    basis.reference.values = std::move(fresh);
    basis.reference.grade = read_sae_grade("10W-40").value();
    basis.engine.fuel = FuelType::petrol;
    basis.engine.grade = basis.reference.grade;
    return basis;
}

std::vector<double> levels(const std::vector<LifeMark>& marks) {
    std::vector<double> numbers;
    for (const LifeMark& mark : marks)
        numbers.push_back(mark.level);
    return numbers;
}

} // namespace

TEST_CASE("Base numbers end at half of new and at the first level that says act", "[oil][life]") {
    const auto base = [](const char* text) { return value("tbn", text, {}, "ASTM D2896"); };
    const auto marks = life_levels(base("5"), basis_of({base("10")}));
    REQUIRE(marks.size() == 2);
    CHECK(marks[0].kind == LifeMarkKind::half_base_number);
    CHECK(marks[0].level == 5);
    CHECK(marks[1].level == Approx(3.5)); // alarm of BAD4: 65 % lost
    CHECK(marks[1].falling);
    CHECK(marks[1].set == "BAD4");
    for (const LifeMark& mark : life_levels(base("5"), basis_of({})))
        CHECK(mark.unknown);
}

TEST_CASE("Oxidation and acid rise to a level of their own", "[oil][life]") {
    const auto oxidation = life_levels(value("oxidation", "5"), basis_of({}));
    CHECK(levels(oxidation) == std::vector<double>{20}); // elevated at 15 is watch, alarm at 20 act
    CHECK_FALSE(oxidation.front().falling);
    CHECK(levels(life_levels(value("tan", "2"), basis_of({}))) == std::vector<double>{5});
    CHECK(life_levels(value("soot", "1"), basis_of({})).empty()); // for diesels alone
}

TEST_CASE("The grade rule says act at 20 % thinner, or 10 % once out of grade", "[oil][life]") {
    const auto viscosity = [](const char* fresh) {
        return levels(life_levels(value("kv100", "13"), basis_of({value("kv100", fresh)})));
    };
    // leaves the grade at 12.5; thinned; thickened by 20 %
    const auto thick = viscosity("16.0");
    REQUIRE(thick.size() == 3);
    CHECK(thick[0] == 12.5);
    CHECK(thick[1] == Approx(12.8)); // -20 % comes before the grade is left
    CHECK(thick[2] == Approx(19.2));
    CHECK(viscosity("14.0")[1] == Approx(12.5)); // -10 % is 12.6: then the grade's end decides
    CHECK(viscosity("13.0")[1] == Approx(11.7)); // out of grade at 12.5, but -10 % only here
    const auto at_40 = life_levels(value("kv40", "80"), basis_of({value("kv40", "100")}));
    CHECK(levels(at_40) == std::vector<double>{80, 120});
}
