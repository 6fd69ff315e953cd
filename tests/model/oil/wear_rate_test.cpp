// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/element_sources.h"
#include "model/oil/mass_balance.h"
#include "model/oil/wear_rate.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

/// A bike whose new oil holds 2 mg/kg of iron; 3.5 L go in at 10 000 km.
OilGarage filled_garage() {
    OilGarage garage;
    garage.new_oil("2023-12-01", {value("Fe", "2")});
    std::get<OilChange>(garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000).value.body).volume_in =
        WrittenVolume{number("3.5"), VolumeUnit::l};
    return garage;
}

TopUp top_up(const char* litres) {
    TopUp added;
    added.volume = WrittenVolume{number(litres), VolumeUnit::l};
    return added;
}

WearHistory wear_of(OilGarage& garage, const char* element = "Fe") {
    const OilRecord record = OilRecord::of(garage.garage, garage.bike());
    const FilledSample latest = fill_of(record, *used_samples(garage.bike(), "engine").back());
    return wear_history(record, latest, history_of(record, latest), element);
}

/// Fills of 3 000 km that end at these amounts of copper, each followed by a change.
OilGarage fills_ending_at(const std::vector<std::string>& copper, int last_distance_km = 3000) {
    OilGarage garage;
    garage.details().oil_carry_over = Decimal{0};
    int km = 10000;
    for (std::size_t i = 0; i < copper.size(); ++i) {
        const std::string year = std::to_string(2010 + static_cast<int>(i));
        garage.fill(year + "-01-01", "10W-40", "Marsh 4T", km);
        km += i + 1 == copper.size() ? last_distance_km : 3000;
        garage.draw(year + "-12-01", clean_values_but({value("Cu", copper[i])}), km);
    }
    return garage;
}

} // namespace

TEST_CASE("Wear is the gain over the new oil, per distance", "[oil]") {
    OilGarage garage = filled_garage();
    garage.draw("2024-06-01", {value("Fe", "32")}, 16000);
    const auto rate = wear_of(garage).now;
    REQUIRE(rate);
    CHECK(rate->start_mg_kg == 2);
    CHECK(rate->gain_mg_kg() == Approx(30));
    CHECK(rate->per_1000km() == Approx(5));
    CHECK(rate->notes.empty());
}

TEST_CASE("Fuel, the top-up before the sample and make-up oil are corrected for in that order", "[oil]") {
    OilGarage garage = filled_garage();
    garage.add("2024-03-01", top_up("0.5"), 13000);
    garage.add("2024-06-01", top_up("0.4"), 16000);
    auto& entry = garage.draw("2024-06-01", {value("Fe", "32"), value("fuel", "4")}, 16000);
    std::get<Sample>(entry.value.body).drawn = TopUpSide::after;
    const auto after = wear_of(garage).now;
    const double before_top_up = 32 / 0.96 * 3.5 / 3.1;
    CHECK(after->corrected_mg_kg == Approx(without_make_up_mg_kg(before_top_up, 2, 0.9 / 3.5)));
    CHECK(after->measured_per_1000km() == Approx(5));
    CHECK(after->notes.size() == 2);

    std::get<Sample>(entry.value.body).drawn = TopUpSide::before;
    CHECK(wear_of(garage).now->corrected_mg_kg == Approx(without_make_up_mg_kg(32 / 0.96, 2, 0.5 / 3.5)));
}

TEST_CASE("Fuel below detection and top-ups of an unknown sump are left alone and said", "[oil]") {
    OilGarage garage = filled_garage();
    std::get<OilChange>(garage.bike().log[1].value.body).volume_in.reset();
    garage.add("2024-03-01", top_up("0.5"), 13000);
    garage.draw("2024-06-01", {value("Fe", "32"), value("fuel", "<1")}, 16000);
    CHECK(wear_of(garage).now->corrected_mg_kg == 32);
    CHECK(wear_of(garage).now->notes.size() == 1);
    garage.details().compartments.push_back({"engine", {number("3.5"), VolumeUnit::l}, std::nullopt});
    CHECK(wear_of(garage).now->corrected_mg_kg > 32);
}

TEST_CASE("Old oil left in carries the end of the fill before over", "[oil]") {
    OilGarage garage = filled_garage();
    garage.draw("2024-06-01", {value("Fe", "42")}, 16000);
    garage.fill("2024-06-01", "10W-40", "Marsh 4T", 16000);
    garage.draw("2024-09-01", {value("Fe", "36")}, 21000);
    CHECK(wear_of(garage).now->start_mg_kg == Approx(0.1 * 42 + 0.9 * 2));
    CHECK(wear_of(garage).now->per_1000km() == Approx(6));
    garage.details().oil_carry_over = number("0.25");
    CHECK(wear_of(garage).now->start_mg_kg == Approx(0.25 * 42 + 0.75 * 2));
    CHECK(wear_of(garage).now->notes.empty());
}

TEST_CASE("A fill between without a sample breaks the carry-over", "[oil]") {
    OilGarage garage = filled_garage();
    garage.draw("2024-06-01", {value("Fe", "42")}, 16000);
    garage.fill("2024-06-01", "10W-40", "Marsh 4T", 16000);
    garage.fill("2024-07-01", "10W-40", "Marsh 4T", 19000);
    garage.draw("2024-09-01", {value("Fe", "36")}, 21000);
    CHECK(wear_of(garage).now->start_mg_kg == 2);
}

TEST_CASE("Below detection or without a distance there is no rate", "[oil]") {
    OilGarage garage = filled_garage();
    garage.draw("2024-06-01", {value("Fe", "<5"), value("Cu", "9")}, 16000);
    CHECK_FALSE(wear_of(garage).now.has_value());
    CHECK(wear_of(garage, "Cu").now->notes.size() == 1); // copper of the new oil is not known
    OilGarage unknown;
    unknown.draw("2024-06-01", {value("Fe", "5")});
    CHECK_FALSE(wear_of(unknown).now.has_value());
}

TEST_CASE("Twice the usual wear of earlier fills lifts the sample", "[oil]") {
    OilGarage garage = fills_ending_at({"5", "6", "16"});
    CHECK(wears_twice_as_fast(wear_of(garage, "Cu")));
    const SampleAssessment found = garage.assess();
    CHECK(rated(found, "Cu").ladder == Ladder::watch); // 16 is 80 % of 20 as well
    OilGarage quiet = fills_ending_at({"4", "5", "12"});
    CHECK(rated(quiet.assess(), "Cu").ladder == Ladder::within);
    CHECK(quiet.assess().whole.word == Word::watch);
    CHECK(quiet.assess().advice.because == std::vector<std::string>{"Cu"});
    REQUIRE(quiet.assess().whole.lifts.size() == 1);
    CHECK(quiet.assess().whole.lifts[0].because.find("copper") != std::string::npos);
}

TEST_CASE("Too few fills, too little metal or too short a fill lift nothing", "[oil]") {
    OilGarage two = fills_ending_at({"5", "14"});
    CHECK_FALSE(wears_twice_as_fast(wear_of(two, "Cu")));
    OilGarage little = fills_ending_at({"1", "1", "2"}); // 1 beyond a reproducibility of 0.48
    CHECK(wears_twice_as_fast(wear_of(little, "Cu")));
    OilGarage noise = fills_ending_at({"0.3", "0.3", "0.7"});
    CHECK_FALSE(wears_twice_as_fast(wear_of(noise, "Cu")));
    OilGarage not_twice = fills_ending_at({"5", "6", "10.9"});
    CHECK_FALSE(wears_twice_as_fast(wear_of(not_twice, "Cu")));
    OilGarage shorter = fills_ending_at({"5", "6", "14"}, 1499);
    CHECK_FALSE(wears_twice_as_fast(wear_of(shorter, "Cu")));
    OilGarage half = fills_ending_at({"5", "6", "14"}, 1500);
    CHECK(wears_twice_as_fast(wear_of(half, "Cu")));
}

TEST_CASE("Wear that rises with every fill counts as rising from four fills on", "[oil]") {
    OilGarage four = fills_ending_at({"1", "2", "3", "4"});
    CHECK(wear_keeps_rising(wear_of(four, "Cu"))); // p = 1/12
    OilGarage three = fills_ending_at({"1", "2", "3"});
    CHECK_FALSE(wear_keeps_rising(wear_of(three, "Cu")));
    OilGarage falling = fills_ending_at({"4", "3", "2", "1"});
    CHECK_FALSE(wear_keeps_rising(wear_of(falling, "Cu")));
}

TEST_CASE("Elements name where they can come from", "[oil]") {
    CHECK(element_sources("Cu").front().in_engine.find("bushings") != std::string::npos);
    CHECK(element_sources("Fe").size() == 3);
    CHECK(element_sources("Zn").size() == 1);
    CHECK(element_sources("V").empty());
}

TEST_CASE("A metal below detection in the new oil is said to be, and counts 0", "[oil]") {
    const auto notes_with = [](const std::vector<SampleValue>& new_oil) {
        OilGarage garage;
        garage.new_oil("2023-12-01", new_oil);
        garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
        garage.draw("2024-06-01", {value("Cr", "4")}, 14000);
        const auto rate = wear_of(garage, "Cr").now;
        CHECK(rate->per_1000km() == Approx(1));
        return rate->notes;
    };
    using Notes = std::vector<std::string>;
    CHECK(notes_with({value("Cr", "<1")}) ==
          Notes{"The amount of chromium is below 1 mg/kg in the new oil: 0 is taken."});
    CHECK(notes_with({value("Cr", "not detected")}) ==
          Notes{"No chromium was detected in the new oil: 0 is taken."});
    CHECK(notes_with({value("Fe", "2")}) ==
          Notes{"How much chromium the new oil holds is not known: 0 is taken."});
}
