// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/odometer_run.h"

#include "tests/catch.h"

#include <string>
#include <vector>

using namespace sumpbook;
using namespace sumpbook::import;

namespace {

std::vector<RunReading> run_of(const std::vector<long>& kilometres) {
    std::vector<RunReading> run;
    Date day = std::chrono::year{2024} / 1 / 1;
    for (const long km : kilometres) {
        run.push_back({.date = day, .odometer = Distance::from_whole_km(km), .digits = std::to_string(km)});
        day = plus_days(day, 7);
    }
    return run;
}

std::vector<std::size_t> faults_in(const std::vector<long>& kilometres) {
    std::vector<std::size_t> indices;
    for (const auto& found : find_run_faults(run_of(kilometres)))
        if (found.fault == RunFault::out_of_run) indices.push_back(found.index);
    return indices;
}

using Indices = std::vector<std::size_t>;

} // namespace

TEST_CASE("A run that never falls has no fault, however uneven it is") {
    CHECK(faults_in({}).empty());
    CHECK(faults_in({12000}).empty());
    CHECK(faults_in({12000, 12000, 12300, 12310, 30000, 30100}).empty());
    CHECK(faults_in({12000, 12200, 12400, 52000}).empty()); // a long gap; no single slip explains it
}

TEST_CASE("Digits swapped, missing, added or wrong are found where they break the run") {
    CHECK(faults_in({12000, 12300, 21600, 12900, 13200}) == Indices{2});  // 12600 swapped
    CHECK(faults_in({12000, 12300, 1260, 12900, 13200}) == Indices{2});   // a digit missing
    CHECK(faults_in({12000, 12300, 122600, 12900, 13200}) == Indices{2}); // a digit too many
    CHECK(faults_in({12000, 12300, 16600, 12900, 13200}) == Indices{2});  // 12600 with a wrong digit
    CHECK(faults_in({12000, 12300, 21600, 12900, 19200, 13500}) == Indices{2, 4});
}

TEST_CASE("Of two readings that contradict each other the likelier one is named, or both") {
    CHECK(faults_in({12000, 12300, 12200, 12600, 12900}) == Indices{1, 2}); // 12100 or 12400? nothing tells
    CHECK(faults_in({12000, 12300, 15600, 12900, 13200}) == Indices{2});
    CHECK(faults_in({12000, 13200, 12600, 12900}) == Indices{1});        // 12300 with swapped digits
    CHECK(faults_in({12000, 12300, 12060, 12900, 13200}) == Indices{2}); // 12600 with swapped digits
}

TEST_CASE("The first and the last reading are named when they lie far off by a slip") {
    CHECK(faults_in({1200, 12300, 12600, 12900}) == Indices{0});
    CHECK(faults_in({12000, 12300, 12600, 129000}) == Indices{3});
}

TEST_CASE("A clock that falls and stays low is one finding, not many") {
    const auto found = find_run_faults(run_of({50000, 50300, 50600, 50900, 51200, 100, 400, 700, 1000}));
    REQUIRE(found.size() == 1);
    CHECK(found[0].fault == RunFault::falls_and_stays);
    CHECK(found[0].index == 5);
}

TEST_CASE("One slip is one swap, one wrong, one missing or one extra digit") {
    CHECK(is_one_slip_from("12435", 12345, 12345));
    CHECK(is_one_slip_from("1245", 12345, 12345));
    CHECK(is_one_slip_from("123345", 12345, 12345));
    CHECK(is_one_slip_from("17345", 12345, 12345));
    CHECK_FALSE(is_one_slip_from("17845", 12345, 12345));
    CHECK_FALSE(is_one_slip_from("12345", 12345, 12345));
    CHECK_FALSE(is_one_slip_from("", 1, 1000000));
}
