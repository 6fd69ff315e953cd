// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/assess.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

OilGarage filled_garage() {
    OilGarage garage;
    garage.details().cooling = Cooling::liquid;
    garage.new_oil("2023-12-01", {value("kv100", "14.4"), value("Fe", "1")});
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    return garage;
}

SampleAssessment one(const std::vector<SampleValue>& values) {
    OilGarage garage = filled_garage();
    garage.draw("2024-06-01", values, 13000);
    return garage.assess();
}

} // namespace

TEST_CASE("A complete clean sample is within, and says carry on", "[oil]") {
    const SampleAssessment found = one(clean_values());
    CHECK(found.whole.word == Word::within);
    CHECK(found.whole.missing.empty());
    CHECK(found.advice.kind == AdviceKind::carry_on);
    CHECK_FALSE(found.cautions.empty());
    CHECK(found.sample == "S3");
    CHECK(found.bike == "Heron");
}

TEST_CASE("A clean sample with something missing is not called clean", "[oil]") {
    auto values = clean_values();
    std::erase_if(values,
                  [](const SampleValue& each) { return each.quantity == "fuel" || each.quantity == "Cr"; });
    const SampleAssessment found = one(values);
    CHECK(found.whole.word == Word::not_enough_to_say);
    CHECK(found.whole.missing == std::vector<std::string>{"chromium", "fuel"});
    CHECK(found.advice.kind == AdviceKind::sample_now);
}

TEST_CASE("Lead is not missed on leaded petrol", "[oil]") {
    OilGarage garage = filled_garage();
    garage.details().fuel = FuelType::leaded_petrol;
    garage.draw("2024-06-01", clean_values_but({value("Pb", "600")}), 13000);
    const SampleAssessment found = garage.assess();
    CHECK(found.whole.word == Word::within);
    CHECK(rated(found, "Pb").unrated == Unrated::leaded_petrol);
}

TEST_CASE("Glycol says stop before anything else", "[oil]") {
    const SampleAssessment found = one(clean_values_but({value("glycol", "detected"), value("fuel", "8")}));
    CHECK(found.advice.kind == AdviceKind::stop);
    CHECK(found.whole.word == Word::act);
    REQUIRE_FALSE(found.patterns.empty());
    CHECK(found.patterns[0].id == "P8");
    CHECK_FALSE(found.advice.look_at.empty());
}

TEST_CASE("Spent oil is changed without a confirming sample", "[oil]") {
    for (const auto& [quantity, amount] :
         std::vector<std::pair<std::string, std::string>>{{"fuel", "3.5"},
                                                          {"water", "0.4"},
                                                          {"kv100", "11.5"},
                                                          {"oxidation", "20"},
                                                          {"nitration", "11"},
                                                          {"tan", "5.1"}}) {
        INFO(quantity);
        const SampleAssessment found = one(clean_values_but({value(quantity, amount)}));
        CHECK(found.advice.kind == AdviceKind::change_oil);
        CHECK(found.advice.because == std::vector<std::string>{quantity});
    }
}

TEST_CASE("A wear metal at act is sampled again, in two samples running inspected", "[oil]") {
    OilGarage garage = filled_garage();
    garage.draw("2024-06-01", clean_values_but({value("Cu", "25")}), 13000);
    CHECK(garage.assess().advice.kind == AdviceKind::sample_now);
    garage.fill("2024-06-02", "10W-40", "Marsh 4T", 13100);
    garage.draw("2024-09-01", clean_values_but({value("Cu", "31")}), 15000);
    const SampleAssessment twice = garage.assess();
    CHECK(twice.advice.kind == AdviceKind::inspect);
    CHECK(twice.advice.because == std::vector<std::string>{"Cu"});
    CHECK(twice.advice.look_at == std::vector<std::string>{"big-end and main bearings"});
    garage.draw("2024-10-01", clean_values_but({value("Sn", "11")}), 16000);
    CHECK(garage.assess().advice.kind == AdviceKind::sample_now); // another metal than before
}

TEST_CASE("Watch asks for the next sample after half the planned interval", "[oil]") {
    OilGarage garage = filled_garage();
    PlanItem item;
    item.slug = "engine-oil";
    item.repeat.distance = WrittenDistance{Decimal{6000}, DistanceUnit::km};
    garage.bike().plan.push_back({{}, "k7-90", {}, {}, {}, item});
    garage.draw("2024-06-01", clean_values_but({value("Fe", "85")}), 13000);
    const SampleAssessment found = garage.assess();
    CHECK(found.whole.word == Word::watch);
    CHECK(found.advice.kind == AdviceKind::sample_after);
    CHECK(found.half_interval == Distance::from_whole_km(3000));
}

TEST_CASE("Coolant metals lift a clean sample to watch and ask for another", "[oil]") {
    const SampleAssessment found = one(clean_values_but({value("Na", "60"), value("K", "40")}));
    CHECK(found.whole.word == Word::watch);
    CHECK(found.advice.kind == AdviceKind::sample_now);
    CHECK(found.patterns.at(0).id == "P8");
    OilGarage air = filled_garage();
    air.details().cooling = Cooling::air;
    air.draw("2024-06-01", clean_values_but({value("Na", "60"), value("K", "40")}), 13000);
    CHECK(air.assess().whole.word == Word::within);
    CHECK(air.assess().coolant.is_named());
    CHECK(air.assess().patterns.empty());
}

TEST_CASE("The laboratory's flag sets the word where it is worse", "[oil]") {
    OilGarage garage = filled_garage();
    auto& entry = garage.draw("2024-06-01", clean_values(), 13000);
    auto& sample = std::get<Sample>(entry.value.body);
    sample.flag = LabFlag::within;
    CHECK(garage.assess().whole.word == Word::within);
    sample.flag = LabFlag::watch;
    CHECK(garage.assess().whole.word == Word::watch);
    CHECK(garage.assess().whole.set_by_laboratory);
    CHECK(garage.assess().advice.kind == AdviceKind::sample_after);
    sample.flag = LabFlag::act;
    CHECK(garage.assess().whole.word == Word::act);
    CHECK(garage.assess().advice.kind == AdviceKind::sample_now);
    sample.values = {value("Fe", "10")};
    sample.flag = LabFlag::within;
    CHECK(garage.assess().whole.word == Word::not_enough_to_say);
}

TEST_CASE("A trend over the set's limit acts within one fill only", "[oil]") {
    OilGarage garage = filled_garage();
    const Profile io360 = find_profile("io360").value();
    garage.draw("2024-05-01", clean_values_but({value("Fe", "10")}), 12000);
    garage.draw("2024-06-01", clean_values_but({value("Fe", "38")}), 12500); // 28 in 10 h at 50 km/h
    CHECK(rated(garage.assess(io360), "Fe").ladder == Ladder::act);
    CHECK(rated(garage.assess(io360), "Fe").level == std::optional<std::string>("abnormal-trend"));
    CHECK(garage.assess().whole.word == Word::within); // the default profile has no trend limits
    CHECK(rated(garage.assess(), "Fe").rate->is_rising());
    garage.fill("2024-06-02", "10W-40", "Marsh 4T", 12500);
    garage.draw("2024-07-01", clean_values_but({value("Fe", "80")}), 13000);
    CHECK_FALSE(rated(garage.assess(io360), "Fe").rate.has_value());
}

TEST_CASE("What stands out of a sample after a top-up or of another compartment is said", "[oil]") {
    OilGarage garage = filled_garage();
    auto& entry = garage.draw("2024-06-01", clean_values(), 13000);
    const std::size_t usual = garage.assess().cautions.size();
    std::get<Sample>(entry.value.body).drawn = TopUpSide::after;
    CHECK(garage.assess().cautions.size() == usual + 1);
    std::get<Sample>(entry.value.body).compartment = "final-drive";
    CHECK(garage.assess().cautions.front().find("final-drive") != std::string::npos);
}

TEST_CASE("A bike's own profile is used unless another is asked for", "[oil]") {
    BikeDetails bike;
    CHECK(profile_for(bike, std::nullopt)->name == "motorcycle");
    bike.oil_profile = "dd";
    CHECK(profile_for(bike, std::nullopt)->name == "dd");
    CHECK(profile_for(bike, "io360")->name == "io360");
    CHECK_FALSE(profile_for(bike, "made up").has_value());
}

TEST_CASE("An oil filled in before the record began is known by the name the sample gives", "[oil]") {
    OilGarage garage;
    garage.new_oil("2024-01-01", {value("kv100", "14.4")}, "Marsh 4T");
    auto& entry = garage.draw("2024-06-01", clean_values(), 13000);
    CHECK(rated(garage.assess(), "kv100").unrated == Unrated::no_reference);
    std::get<Sample>(entry.value.body).oil_name = "Marsh 4T";
    CHECK(rated(garage.assess(), "kv100").ladder == Ladder::within);
}

TEST_CASE("An oil change that is named but not recorded is said", "[oil]") {
    OilGarage garage = filled_garage();
    auto& entry = garage.draw("2024-06-01", clean_values(), 13000);
    std::get<Sample>(entry.value.body).oil_change_date = day("2024-02-02");
    CHECK(garage.assess().filled.oil_change == nullptr);
    CHECK(garage.assess().cautions.front().find("2024-02-02") != std::string::npos);
}
