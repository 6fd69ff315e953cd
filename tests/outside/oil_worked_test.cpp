// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include "model/oil/mass_balance.h"
#include "model/oil/precision.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;
using namespace sumpbook::outside;

namespace {

const CheckRow& worked(const std::string& id) { return check_row("oil-worked-checks.csv", id); }

RatedValue by_handbook(OilGarage garage, const SampleValue& used) {
    garage.draw("2024-06-01", {used});
    return rated(garage.assess(profile_of_set(*find_limit_set("HB2004"))), used.quantity);
}

OilGarage filled_garage(const std::vector<SampleValue>& fresh = {}) {
    OilGarage garage;
    garage.new_oil("2024-01-01", fresh);
    garage.fill("2024-01-02");
    return garage;
}

/// The example of C13: 3.5 L, 0.4 L lost and replaced and 10 mg worn in each 1 000 km.
SteadySump example_sump() { return {3.5, 0.4, 10, 0.87}; }

} // namespace

TEST_CASE("Oil used is litres over thousand kilometres, whatever the units", "[outside][oil]") {
    const CheckRow& row = worked("C12");
    TESTING_ROW(row);
    const auto expected = numbers_in(row["expected"]);
    const auto per_1000km = [](const WrittenVolume& volume, const WrittenDistance& distance) {
        return volume_of(volume)->litres() / distance_of(distance)->km() * 1000;
    };
    CHECK(per_1000km({number("0.9"), VolumeUnit::l}, {Decimal{3200}, DistanceUnit::km}) ==
          Approx(expected.at(0)).margin(5e-6));
    CHECK(per_1000km({Decimal{1}, VolumeUnit::us_qt}, {Decimal{1000}, DistanceUnit::mi}) ==
          Approx(expected.at(1)).margin(5e-6));
    CHECK(per_1000km({Decimal{1}, VolumeUnit::l}, {Decimal{1000}, DistanceUnit::mi}) ==
          Approx(expected.at(2)).margin(5e-6));
}

TEST_CASE("The handbook's greater-than is strict", "[outside][oil]") {
    TESTING_ROW(worked("C07"));
    const OilGarage garage = filled_garage({value("Si", "5")});
    CHECK_FALSE(by_handbook(garage, value("Fe", "100.0")).level.has_value());
    CHECK(by_handbook(garage, value("Fe", "100.1")).level == std::optional<std::string>("warning"));
    CHECK_FALSE(by_handbook(garage, value("Si", "20")).level.has_value());
    CHECK(by_handbook(garage, value("Si", "20.1")).level == std::optional<std::string>("warning"));
}

TEST_CASE("The handbook's limit for aluminium follows the block", "[outside][oil]") {
    TESTING_ROW(worked("C08"));
    OilGarage garage = filled_garage();
    garage.details().block = BlockMaterial::iron;
    CHECK(by_handbook(garage, value("Al", "50")).ladder == Ladder::act);
    garage.details().block = BlockMaterial::aluminium;
    CHECK(by_handbook(garage, value("Al", "50")).ladder == Ladder::within);
    garage.details().block.reset();
    const RatedValue both = by_handbook(garage, value("Al", "50"));
    CHECK(both.verdicts.size() == 2);
    CHECK(both.ladder == Ladder::act);
}

TEST_CASE("The handbook's viscosity rule holds in both directions", "[outside][oil]") {
    TESTING_ROW(worked("C09"));
    const OilGarage garage = filled_garage({value("kv100", "14.0")});
    CHECK_FALSE(by_handbook(garage, value("kv100", "12.0")).level.has_value());
    CHECK(by_handbook(garage, value("kv100", "11.8")).level == std::optional<std::string>("warning"));
    CHECK(by_handbook(garage, value("kv100", "16.2")).level == std::optional<std::string>("warning"));
}

TEST_CASE("A change-now limit that is just reached counts", "[outside][oil]") {
    TESTING_ROW(worked("C10"));
    const auto by_maker = [](const char* used) {
        OilGarage garage = filled_garage({value("tbn", "10.0", {}, "ASTM D2896")});
        garage.draw("2024-06-01", {value("tbn", used, {}, "ASTM D2896-21")});
        return rated(garage.assess(profile_of_set(*find_limit_set("MTU"))), "tbn");
    };
    CHECK(by_maker("5.0").level == std::optional<std::string>("condemn"));
    CHECK(by_maker("5.0").ladder == Ladder::act);
    CHECK_FALSE(by_maker("5.1").level.has_value());
    CHECK(by_maker("5.1").ladder == Ladder::within);
}

TEST_CASE("Make-up oil hides wear by the mass balance", "[outside][oil]") {
    const SteadySump sump = example_sump();
    const CheckRow& clean = worked("C13");
    TESTING_ROW(clean);
    const auto expected = numbers_in(clean["expected"]);
    const double k = sump.turnovers(6);
    CHECK(sump.mg_kg_after(6, 0) == Approx(expected.at(0)).epsilon(1e-6));
    CHECK(sump.settles_at_mg_kg() == Approx(expected.at(1)).epsilon(1e-6));
    CHECK(without_make_up_mg_kg(sump.mg_kg_after(6, 0), 0, k) == Approx(expected.at(2)).epsilon(1e-6));
    CHECK((SteadySump{3.5, 0, 10, 0.87}.mg_kg_after(6, 0)) == Approx(expected.at(2)).epsilon(1e-6));
    CHECK(make_up_factor(k) == Approx(expected.at(3)).epsilon(1e-6));

    const CheckRow& carried = worked("C14");
    TESTING_ROW(carried);
    const auto with_start = numbers_in(carried["expected"]);
    CHECK(sump.mg_kg_after(6, 4) == Approx(with_start.at(0)).epsilon(1e-6));
    CHECK(without_make_up_mg_kg(sump.mg_kg_after(6, 4), 4, k) == Approx(with_start.at(1)).epsilon(1e-6));

    const CheckRow& factors = worked("C16");
    TESTING_ROW(factors);
    const auto turnovers = split_words("0.1;0.25;0.5;1.0");
    const auto factor = numbers_in(factors["expected"]);
    for (std::size_t i = 0; i < turnovers.size(); ++i)
        CHECK(make_up_factor(number(turnovers[i]).to_double()) == Approx(factor.at(i)).margin(1e-7));
    CHECK(make_up_factor(0) == 1);
}

TEST_CASE("Top-ups in lumps by the mass balance", "[outside][oil]") {
    TESTING_ROW(worked("C15"));
    const LumpTopUp lump{3.5, 0.4, 10 / 0.4, 0.87};
    double after = 0;
    std::vector<std::pair<double, double>> points;
    for (int i = 0; i < 6; ++i) {
        const double before = lump.before_mg_kg(after);
        after = lump.after_mg_kg(before);
        points.emplace_back(before, after);
    }
    CHECK(points.front().first == Approx(3.487392).margin(1e-4));
    CHECK(points.front().second == Approx(3.088833).margin(1e-4));
    CHECK(points.back().first == Approx(15.782372).margin(1e-4));
    CHECK(points.back().second == Approx(13.978673).margin(1e-4));
    CHECK(before_top_up_mg_kg(points.back().second, 3.5, 0.4).value() == Approx(points.back().first));
    CHECK_FALSE(before_top_up_mg_kg(10, 3.5, 3.5).has_value());
}

TEST_CASE("Oil left behind carries its metal over", "[outside][oil]") {
    const CheckRow& row = worked("C17");
    TESTING_ROW(row);
    double end = 0;
    for (const double expected : {20.0, 22.4, 22.688, 22.72256, 22.7267072}) {
        end = carried_over_mg_kg(0.12, end, 0) + 20;
        CHECK(end == Approx(expected).margin(1e-6));
    }
    CHECK(settled_carry_over_mg_kg(20, 0.12) == Approx(22.7272727).margin(1e-6));
}

TEST_CASE("Fuel thins metals as well", "[outside][oil]") {
    TESTING_ROW(worked("C18"));
    CHECK(without_fuel_mg_kg(38, 0.05).value() == Approx(40.0).margin(1e-9));
    CHECK_FALSE(without_fuel_mg_kg(38, 1).has_value());
    CHECK_FALSE(without_fuel_mg_kg(38, -0.1).has_value());
}

TEST_CASE("Precision of the acid number of used oil", "[outside][oil]") {
    const CheckRow& row = worked("C21");
    TESTING_ROW(row);
    CHECK(acid_number_precision(2.0).repeatability == Approx(0.234).margin(1e-9));
    CHECK(acid_number_precision(2.0).reproducibility == Approx(0.88).margin(1e-9));
    CHECK(acid_number_precision(5.0).repeatability == Approx(0.585).margin(1e-9));
    CHECK(acid_number_precision(5.0).reproducibility == Approx(2.20).margin(1e-9));
}
