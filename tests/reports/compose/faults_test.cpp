// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/faults.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

void fault(BikeLog& log, std::string_view date, std::string_view odometer, std::uint32_t count,
           bool cleared) {
    Fault made;
    made.code = "P0335";
    made.text = "crank sensor circuit";
    made.count = count;
    made.cleared = cleared;
    log.add(date, made, odometer);
}

std::vector<compose::BikeFaults> faults_of(const BikeLog& log) {
    const auto odometer = usage::OdometerSeries::of(log.bike);
    return {{"Tourer", DistanceUnit::km, review::fault_histories(log.bike, odometer)}};
}

std::string text_of_faults(const BikeLog& log, bool details = false) {
    return write::text(compose::faults_text(faults_of(log), details), {.width = 400});
}

bool says(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

BikeLog come_back() {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    fault(log, "2024-03-01", "3000", 3, true);
    fault(log, "2024-05-01", "3400", 4, false);
    log.reading("2024-06-01", "4000");
    return log;
}

} // namespace

TEST_CASE("a fault that came back: how often on both sides, what to do, and the caution") {
    const auto text = text_of_faults(come_back());
    CHECK(says(text, "4.0 per 1 000 km  1.5 per 1 000 km"));
    CHECK(says(text, "P0335: present, it came back after it was cleared on 1 Mar 2024, 1 000 km of record "
                     "since. It comes more often than before it was cleared."));
    CHECK(says(text, "a qualified mechanic decide"));
    CHECK_FALSE(says(text, "not found"));
}

TEST_CASE("few times are a hint at most") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    fault(log, "2024-03-01", "3000", 1, true);
    fault(log, "2024-05-01", "3400", 1, false);
    CHECK(says(text_of_faults(log), "seen so few times that this is a hint at most"));
}

TEST_CASE("a fault that stays away is temporary, and every look is listed in the details") {
    BikeLog log;
    log.reading("2024-01-01", "1000");
    fault(log, "2024-03-01", "3000", 1, true);
    fault(log, "2024-05-01", "3400", 0, false);
    CHECK(says(text_of_faults(log),
               "temporary as far as the record goes, not seen again in 400 km since it was cleared"));
    CHECK(says(text_of_faults(log, true), "not found"));
}

TEST_CASE("without a code it says how to write one down") {
    CHECK(says(text_of_faults(BikeLog{}), "No fault code is recorded."));
}

TEST_CASE("the tree holds the rates, the stretches and the readings") {
    const auto tree = nlohmann::json::parse(write::json(compose::faults_json(faults_of(come_back()))));
    const auto& item = tree["items"][0];
    CHECK(item["state"] == "present");
    CHECK(item["times"] == 7);
    CHECK(item["since_clearing_per_1000km"] == Approx(4));
    CHECK(item["before_per_1000km"] == Approx(1.5));
    REQUIRE(item["stretches"].size() == 2);
    CHECK(item["stretches"][1]["distance_km"] == Approx(1000));
    CHECK(item["readings"][0]["cleared"] == true);
}
