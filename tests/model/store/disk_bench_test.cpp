// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/disk_bench.h"

#include "model/store/handover.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Record noted(const std::string& note) {
    Record record = fuel_record(7);
    std::get<Entry>(record.content).note = note;
    return record;
}

/// The example with one save more, by an installation of this name: its salts and chains are its own.
std::string state_with(const Record& record, const std::string& installation,
                       const std::vector<Bytes>& files = {}) {
    MemoryDisk disk = example_disk();
    SeededRandom random(installation);
    auto garage = GarageFile::open({disk, random, "/" + installation, Patience{0}}, garage_path);
    REQUIRE(garage);
    SeededRandom salts("salts"); // the hash of an attachment is part of a state
    std::vector<NewAttachment> attachments;
    for (const auto& bytes : files) {
        auto made = new_attachment(subject_of(1), bytes, salts);
        REQUIRE(made);
        attachments.push_back(*std::move(made));
    }
    REQUIRE(garage->append({{subject_of(1), record}}, attachments));
    return state_text(disk);
}

std::string handed_over(const Withheld& withheld) {
    MemoryDisk disk = example_disk();
    const auto plan = plan_hand_over(disk, garage_path, subject_of(1), withheld, Patience{0});
    REQUIRE(plan);
    REQUIRE(write_out(disk, plan->set, "/garage/handed.sumpbook"));
    return state_text(disk, "/garage/handed.sumpbook");
}

} // namespace

TEST_CASE("A state tells contents apart, and not who wrote them", "[doubles]") {
    CHECK(state_with(noted("one"), "a") == state_with(noted("one"), "b"));
    CHECK(state_with(noted("one"), "a") != state_with(noted("two"), "a")); // the same time and bike
    MemoryDisk disk = example_disk();
    CHECK(state_with(noted("one"), "a") == with_record(state_text(disk), subject_of(1), noted("one")));
}

TEST_CASE("A state tells what an entry replaces", "[doubles]") {
    MemoryDisk disk = example_disk();
    SeededRandom random("names");
    const auto garage = GarageFile::open(surroundings(disk, random), garage_path);
    REQUIRE(garage);
    std::vector<std::string> states;
    for (const std::size_t replaced : {1U, 2U}) {
        Record record = noted("better");
        record.replaces = {garage->records().at(replaced).name};
        states.push_back(state_with(record, "a"));
        CHECK(states.back() == state_with(record, "b"));
    }
    CHECK(states[0] != states[1]);
    CHECK(states[0] != state_with(noted("better"), "a"));
}

TEST_CASE("A state tells a lost or another attachment", "[doubles]") {
    const auto with = [](const std::vector<Bytes>& files) { return state_with(noted("one"), "a", files); };
    CHECK(with({{'x'}}) != with({}));
    CHECK(with({{'x'}}) != with({{'y'}}));
    CHECK(with({{'x'}, {'y'}}) != with({{'x'}}));
}

TEST_CASE("A state tells what was withheld", "[doubles]") {
    const auto all = handed_over({});
    CHECK(handed_over({.money = true}) != all);
    CHECK(handed_over({.personal = true}) != all);
    CHECK(handed_over({.attachments = true}) != all);
    CHECK(handed_over({.attachments = true}).find("left out\n") != std::string::npos);
}

TEST_CASE("A state tells fingerprints apart that were printed at the same time", "[doubles]") {
    const auto printed_of = [](const Record& record) {
        MemoryDisk disk = example_disk();
        SeededRandom random("print");
        auto garage = GarageFile::open(surroundings(disk, random), garage_path);
        REQUIRE(garage);
        REQUIRE(garage->append({{subject_of(1), record}}));
        REQUIRE(garage->take_fingerprint({1'800'000'000}));
        const auto state = state_text(disk);
        const auto at = state.find("fingerprint of 1800000000");
        REQUIRE(at != std::string::npos);
        return state.substr(at, state.find('\n', at) - at);
    };
    CHECK(printed_of(noted("one")) == printed_of(noted("one")));
    CHECK(printed_of(noted("one")) != printed_of(noted("two")));
}
