// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_life.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

/// New oil with these values at 10 000 km, then samples of one fill, each after so many kilometres.
OilGarage garage_with(const std::vector<SampleValue>& fresh,
                      const std::vector<std::pair<int, std::vector<SampleValue>>>& samples) {
    OilGarage garage;
    if (!fresh.empty()) garage.new_oil("2023-12-01", fresh);
    garage.fill("2024-01-01", "10W-40", "Marsh 4T", 10000);
    int month = 2;
    for (const auto& [km, values] : samples) {
        const std::string day = (month < 10 ? "-0" : "-") + std::to_string(month) + "-01";
        garage.draw("2024" + day, values, 10000 + km);
        ++month;
    }
    return garage;
}

void plan_every(OilGarage& garage, int km) {
    PlanItem item;
    item.slug = "engine-oil";
    item.repeat.distance = WrittenDistance{Decimal{km}, DistanceUnit::km};
    garage.bike().plan.push_back({});
    garage.bike().plan.back().value = item;
}

SampleValue base(const char* number) { return value("tbn", number, {}, "ASTM D2896"); }

OilLife life_in(OilGarage& garage) {
    return oil_life(OilRecord::of(garage.garage, garage.bike()), "Marsh 4T", default_profile());
}

const LifeMark& mark(const OilLife& life, LifeMarkKind kind, const std::string& quantity = "tbn") {
    for (const LifeMark& each : life.marks) {
        if (each.kind == kind && each.quantity == quantity) return each;
    }
    throw std::logic_error("no such mark");
}

} // namespace

TEST_CASE("The base number reaches half of new on a straight line", "[oil][life]") {
    auto garage = garage_with({base("8")}, {{2000, {base("7")}}, {4000, {base("6")}}});
    const OilLife life = life_in(garage);
    const LifeMark& half = mark(life, LifeMarkKind::half_base_number);
    CHECK(half.level == 4);
    CHECK(half.points.size() == 3);
    CHECK(half.range == LifeRange::bounds);
    CHECK(half.middle_km.value() == Approx(8000));
    CHECK(half.earliest_km.value() == Approx(8000)); // no scatter at all
    CHECK(half.latest_km.value() == Approx(8000));
    // The guide's 65 % lost comes later: 8 x 0.35 = 2.8.
    CHECK(mark(life, LifeMarkKind::set_limit).level == Approx(2.8));
    CHECK(life.first() == &half);
    CHECK(life.longest_run_km == Approx(4000));
    CHECK(life.run_so_far_km.value() == Approx(4000));
    CHECK_FALSE(life.passed);
}

TEST_CASE("Two points have a range only by a published reproducibility", "[oil][life]") {
    auto perchloric = garage_with({base("8")}, {{4000, {base("6")}}});
    const LifeMark plain = mark(life_in(perchloric), LifeMarkKind::half_base_number);
    CHECK(plain.range == LifeRange::none);
    CHECK(plain.middle_km.value() == Approx(8000));
    CHECK_FALSE(plain.earliest_km);
    CHECK(plain.notes.size() == 1);

    const auto kit = [](const char* number) { return value("tbn", number, {}, "ASTM D5984"); };
    auto by_kit = garage_with({kit("10")}, {{4000, {kit("4")}}});
    const LifeMark ranged = mark(life_in(by_kit), LifeMarkKind::half_base_number);
    CHECK(ranged.range == LifeRange::reproducibility); // R 1.91
    CHECK(ranged.middle_km.value() == Approx(4000.0 * 5 / 6));
    CHECK(ranged.earliest_km.value() == Approx(4000 * (10 + 1.91 - 5) / (10 + 1.91 - (4 - 1.91))));
    CHECK(ranged.latest_km.value() == Approx(4000 * (10 - 1.91 - 5) / (10 - 1.91 - (4 + 1.91))));
}

TEST_CASE("Base numbers of two methods are never followed together", "[oil][life]") {
    auto garage = garage_with({base("8")}, {{2000, {value("tbn", "7", {}, "ASTM D4739")}}});
    const LifeMark half = mark(life_in(garage), LifeMarkKind::half_base_number);
    REQUIRE(half.unknown);
    CHECK_FALSE(half.middle_km);
    auto unsaid = garage_with({value("tbn", "8")}, {{2000, {value("tbn", "7")}}});
    CHECK(mark(life_in(unsaid), LifeMarkKind::half_base_number).unknown);
}

TEST_CASE("The acid number rises to its limit, and a limit reached in the fill in use is said",
          "[oil][life]") {
    auto garage =
        garage_with({value("tan", "1")}, {{3000, {value("tan", "3")}}, {6000, {value("tan", "5")}}});
    const OilLife life = life_in(garage);
    const LifeMark& acid = mark(life, LifeMarkKind::set_limit, "tan");
    CHECK_FALSE(acid.falling);
    CHECK(acid.level == 5);
    CHECK(acid.middle_km.value() == Approx(6000));
    CHECK(acid.passed);
    CHECK(life.passed);
}

TEST_CASE("Viscosity ends by the grade rule; leaving the grade is only listed", "[oil][life]") {
    auto garage = garage_with({value("kv100", "14.0")}, {{3000, {value("kv100", "13.4")}}});
    const OilLife life = life_in(garage);
    const LifeMark& leaves = mark(life, LifeMarkKind::leaves_grade, "kv100");
    CHECK(leaves.level == Approx(12.5)); // SAE 40
    CHECK_FALSE(leaves.decides);
    const LifeMark& act = mark(life, LifeMarkKind::viscosity, "kv100");
    CHECK(act.level == Approx(12.5)); // out of grade and 10 % thinner: 12.6 and 12.5, whichever is lower
    CHECK(act.middle_km.value() == Approx(3000 * 1.5 / 0.6));
}

TEST_CASE("Fills of one oil are followed together", "[oil][life]") {
    auto garage = garage_with({base("8")}, {{4000, {base("6")}}});
    garage.fill("2024-06-01", "10W-40", "Marsh 4T", 15000);
    garage.draw("2024-09-01", {base("5.2")}, 20000);
    const OilLife life = life_in(garage);
    CHECK(life.samples == 2);
    CHECK(mark(life, LifeMarkKind::half_base_number).points.size() == 3);
    CHECK(life.longest_run_km == Approx(5000));
}

TEST_CASE("A base number that hardly falls never gets there", "[oil][life]") {
    auto garage = garage_with({base("8")}, {{4000, {base("7.9999999")}}});
    const LifeMark half = mark(life_in(garage), LifeMarkKind::half_base_number);
    CHECK_FALSE(half.unknown);
    CHECK_FALSE(half.middle_km); // 1.6e11 km on the line
}

TEST_CASE("The planned interval is held against the range", "[oil][life]") {
    const auto word_for = [](int km) {
        auto garage =
            garage_with({base("8")}, {{2000, {base("6.9")}}, {4000, {base("6.2")}}, {5000, {base("5.5")}}});
        plan_every(garage, km);
        return life_in(garage).interval;
    };
    CHECK(word_for(6000) == IntervalWord::inside);
    CHECK(word_for(8000) == IntervalWord::doubtful);
    CHECK(word_for(12000) == IntervalWord::too_long);
    auto unplanned = garage_with({base("8")}, {{2000, {base("7")}}});
    CHECK(life_in(unplanned).interval == IntervalWord::no_plan);
    auto nothing = garage_with({}, {{2000, {base("7")}}});
    plan_every(nothing, 6000);
    CHECK(life_in(nothing).interval == IntervalWord::no_evidence);
}

TEST_CASE("The oil in use is judged, or the one last sampled", "[oil][life]") {
    auto garage = garage_with({}, {{2000, {base("7")}}});
    const auto judged = [&] { return oil_to_judge(OilRecord::of(garage.garage, garage.bike())); };
    CHECK(judged() == "Marsh 4T");
    garage.fill("2024-08-01", "10W-40", "Fenland", 13000);
    CHECK(judged() == "Marsh 4T");
    garage.draw("2024-09-01", {base("6")}, 14000);
    CHECK(judged() == "Fenland");
    OilGarage empty;
    CHECK_FALSE(oil_to_judge(OilRecord::of(empty.garage, empty.bike())));
}
