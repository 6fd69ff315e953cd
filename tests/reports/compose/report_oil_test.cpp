// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_oil.h"

#include "reports/compose/report_oil_answers.h"
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
    return write::text(compose::report_oil(front(), {{"Heron", samples_of(garage), {}, {}}}),
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
          "Over the samples", "What is missing", "Sources", "About this report"}) {
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
    REQUIRE(sure.size() >= 2);
    CHECK(holds(sure[0], "There is one sample. It is a snapshot"));
    CHECK(holds(sure[1], "None of them was published for motorcycles"));
    CHECK(holds(sure[1], "HB2004 (automotive, fuel not stated)"));
}

TEST_CASE("A wear metal past its limit answers yes with its limit, and leaves the oil's answer alone",
          "[compose][report]") {
    OilGarage garage;
    with_sample(garage, clean_values_but({value("Cu", "24")}));
    const auto samples = samples_of(garage);
    const auto wear = compose::wear_answer(samples);
    CHECK(wear.severity == Severity::danger);
    CHECK(holds(wear.text, "■ act. Yes, more than it should: copper (limit: above 20 mg/kg, HB2004)."));
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
    CHECK(holds(sure[0], "There are 2 samples from 1 Jun 2024 to 1 Oct 2024, of 2 fills of oil."));
    CHECK(holds(sure[0], "too few to call anything a trend"));
    CHECK(holds(compose::wear_answer(samples).text, "mg/kg of iron (usual "));
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
