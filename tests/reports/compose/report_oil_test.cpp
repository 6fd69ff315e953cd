// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_oil.h"

#include "reports/compose/report_oil_answers.h"
#include "reports/compose/report_oil_certainty.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::oil::testing;
using document::Severity;

namespace {

compose::ReportFront front() {
    return {.bikes = {"Heron"},
            .as_of = day("2024-07-01"),
            .garage_file = "my.sumpbook",
            .fingerprint = "7k2mf-9q0tz",
            .records = 12};
}

std::vector<oil::SampleAssessment> samples_of(OilGarage& garage) {
    return oil::assess_samples(oil::OilRecord::of(garage.garage, garage.bike()), oil::default_profile());
}

std::string text_of(OilGarage& garage) {
    return write::text(compose::report_oil(front(), {{"Heron", &garage.bike(), samples_of(garage), {}, {}}}),
                       {.width = 200, .colour = false});
}

/// A bike with one sample 3 000 km after its oil change.
void with_sample(OilGarage& garage, const std::vector<SampleValue>& values) {
    garage.new_oil("2023-12-01", {value("kv100", "14.2")});
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-06-01", values, 13000);
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("The five questions are answered first, in order", "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values());
    const auto text = text_of(garage);
    std::size_t at = 0;
    for (const auto* heading :
         {"Oil report: Heron", "Is the engine wearing?", "Is the oil still fit?", "What to do next?",
          "How sure is this?", "What was assumed?", "The latest sample against its limits",
          "Over the samples", "What is missing", "Words used", "Sources", "About this report"}) {
        INFO(heading);
        const auto found = text.find(heading, at);
        REQUIRE(found != std::string::npos);
        at = found;
    }
    CHECK(holds(text, "7k2mf-9q0tz"));
    CHECK(holds(text, "12 records"));
}

TEST_CASE("A clean sample says so, and how little one sample proves", "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values());
    const auto samples = samples_of(garage);
    const auto wear = compose::wear_answer(samples);
    CHECK(wear.severity == Severity::good);
    CHECK(wear.text.starts_with("● within. No sign of it beyond what is usual. Within their limits: iron, "
                                "chromium, aluminium, copper"));
    CHECK(holds(wear.text, "no earlier fill of oil to compare"));
    const auto fit = compose::fitness_answer(samples.back());
    CHECK(fit.severity == Severity::good);
    CHECK(holds(fit.text, "As far as it was measured, yes"));
    const auto sure = compose::certainty_answer(samples);
    REQUIRE(sure.size() >= 3);
    CHECK(holds(sure[0], "Not very sure: nothing stands out, but there is little to compare it with."));
    CHECK(holds(sure[1], "There is one sample. It is a snapshot"));
    CHECK(holds(sure[2], "None of them was published for motorcycles"));
    CHECK(holds(sure[2], "HB2004 (automotive, fuel not stated)"));
    CHECK(holds(sure[2], "GRADE (our own rule on the grades of SAE J300)"));
}

TEST_CASE("A wear metal past its limit answers yes with its limit, and leaves the oil's answer alone",
          "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values_but({value("Cu", "24")}));
    const auto samples = samples_of(garage);
    const auto wear = compose::wear_answer(samples);
    CHECK(wear.severity == Severity::danger);
    CHECK(holds(wear.text,
                "■ act. Yes, more than it should: copper 24 mg/kg (limit: above 20 mg/kg, HB2004)."));
    CHECK(compose::fitness_answer(samples.back()).severity == Severity::good);
    CHECK(holds(text_of(garage), "Where copper can come from"));
    CHECK(holds(text_of(garage), "These are possibilities to look into, not findings."));
}

TEST_CASE("Fuel past its limit makes the oil unfit, not the engine worn", "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values_but({value("fuel", "8")}));
    const auto samples = samples_of(garage);
    CHECK(compose::wear_answer(samples).severity == Severity::good);
    const auto fit = compose::fitness_answer(samples.back());
    CHECK(fit.severity == Severity::danger);
    CHECK(holds(fit.text, "No. Past what it may be: fuel"));
}

TEST_CASE("What was not measured is never called good", "[compose][report]") {
    OilGarage garage;
    with_sample(garage, {value("Ni", "3")});
    const auto samples = samples_of(garage);
    const auto wear = compose::wear_answer(samples);
    CHECK(wear.severity == Severity::none);
    CHECK(holds(wear.text, "This sample cannot tell"));
    CHECK(holds(compose::fitness_answer(samples.back()).text,
                "Not judged, and needed to be sure: fuel, water or glycol and viscosity."));
    CHECK(holds(text_of(garage), "To call a sample clean these are missing"));
}

TEST_CASE("Several samples are a story with a row each; few are no trend", "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values());
    garage.fill("2024-06-02", "10W-40", "Marsh 4T", 13000);
    garage.draw("2024-10-01", clean_values_but({value("Fe", "14")}), 16000);
    const auto samples = samples_of(garage);
    const auto sure = compose::certainty_answer(samples);
    CHECK(holds(sure[1], "There are 2 samples from 1 Jun 2024 to 1 Oct 2024, of 2 fills of oil"));
    CHECK(holds(sure[1], "too few to call anything a trend"));
    INFO(compose::wear_answer(samples).text);
    CHECK(holds(compose::wear_answer(samples).text, "beside the middle of 1 earlier fill: "));
    CHECK(holds(compose::wear_answer(samples).text, "iron 4.3 (usual 4.0)"));
    const auto text = text_of(garage);
    CHECK(holds(text, "2024-06-01"));
    CHECK(holds(text, "2024-10-01"));
}

TEST_CASE("A bike without samples is said to have none", "[compose][report]") {
    OilGarage garage;
    CHECK(holds(text_of(garage), "No sample of used engine oil is recorded for Heron"));
}

TEST_CASE("Samples of other oils do not answer for the engine", "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values());
    auto& other = garage.draw("2024-06-20", {value("Fe", "500")}, 13200);
    std::get<Sample>(other.value.body).compartment = "final-drive";
    const auto text = text_of(garage);
    CHECK(holds(text, "1 sample of other oils than the engine's left out"));
    CHECK(holds(text, "● within. No sign of it"));
}

namespace {

/// Five fills with a sample each, 5 000 km on every one; the last one as given.
void five_fills(OilGarage& garage, const std::vector<SampleValue>& last) {
    garage.new_oil("2019-01-01", {value("kv100", "14.2"), value("Na", "2"), value("K", "1")});
    for (int fill = 0; fill < 5; ++fill) {
        const int at = 10000 + fill * 5000;
        const auto year = std::to_string(2020 + fill);
        garage.fill(year + "-01-02", "10W-40", "Marsh 4T", at);
        garage.draw(year + "-12-01",
                    fill == 4 ? last
                              : clean_values_but({value("Cu", "4"), value("Na", "3"), value("K", "2")}),
                    at + 5000);
    }
}

} // namespace

TEST_CASE("Every metal that is shed fast is named, with its rate", "[compose][report]") {
    OilGarage garage;
    five_fills(garage, clean_values_but({value("Cu", "15"), value("Al", "15")}));
    const auto wear = compose::wear_answer(samples_of(garage)).text;
    INFO(wear);
    CHECK(holds(wear, "no metal is at its limit, but copper and aluminium are shed at least twice as fast"));
    CHECK(holds(wear, "can differ, copper "));
}

TEST_CASE("Coolant metals are named with their figures and the new oil's", "[compose][report]") {
    OilGarage garage;
    five_fills(garage, clean_values_but({value("Na", "81"), value("K", "63"), value("water", "0.12")}));
    const auto fit = compose::fitness_answer(samples_of(garage).back()).text;
    INFO(fit);
    CHECK(holds(fit, "sodium 81 mg/kg (new oil: 2 mg/kg) and potassium 63 mg/kg (new oil: 1 mg/kg)"));
    CHECK(holds(fit, "Coolant may be getting into the oil."));
}

TEST_CASE("How sure is said first, and grows with what agrees", "[compose][report]") {
    OilGarage clean;
    five_fills(clean, clean_values());
    CHECK(compose::certainty_answer(samples_of(clean))[0].starts_with("Rather sure, for what oil can show"));

    OilGarage once;
    five_fills(once, clean_values_but({value("Cu", "24")}));
    CHECK(holds(compose::certainty_answer(samples_of(once))[0], "it rests on one sample."));

    once.fill("2025-01-02", "10W-40", "Marsh 4T", 35000);
    once.draw("2025-12-01", clean_values_but({value("Cu", "25")}), 40000);
    CHECK(holds(compose::certainty_answer(samples_of(once))[0],
                "Rather sure that something is out of order: copper stood out in the sample before as well, "
                "of 1 Dec 2024."));

    OilGarage bare;
    with_sample(bare, {value("Ni", "3")});
    CHECK(compose::certainty_answer(samples_of(bare))[0].starts_with("Not sure: without "));
}

TEST_CASE("After a bad sample the reader learns what was done about it", "[compose][report]") {
    OilGarage garage;
    five_fills(garage, clean_values_but({value("Cu", "24")}));
    garage.fill("2025-01-02", "10W-40", "Marsh 4T", 35000);
    garage.draw("2025-12-01", clean_values(), 40000);
    const auto samples = samples_of(garage);
    const auto past = compose::past_answer(samples, &garage.bike());
    REQUIRE(past.size() == 2);
    CHECK(past[0].starts_with("1 Dec 2024, sample "));
    CHECK(past[1] == "Recorded after the last of these, up to the next sample: Oil changed on 2 Jan 2025.");
    CHECK(compose::past_answer(samples, nullptr).size() == 1);
}

TEST_CASE("The laboratory's fuel is held beside what the thinning would be", "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values_but({value("kv100", "12.9"), value("fuel", "0.1")}));
    const auto fit = compose::fitness_answer(samples_of(garage).back()).text;
    INFO(fit);
    CHECK(holds(fit, "The laboratory found 0.1 % fuel: shear did the rest."));
}
