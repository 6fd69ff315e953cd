// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/versions.h"

#include "model/garage/garage.h"
#include "tests/catch.h"

#include <algorithm>

using namespace sumpbook;

namespace {

constexpr SubjectId bike{{2}};
constexpr SubjectId garage_subject{{1}};

RecordName name(std::uint8_t n) { return {.frame_hash = {n}, .index = 0}; }

NamedRecord record(std::uint8_t n, std::int64_t recorded, RecordContent content,
                   std::vector<RecordName> replaces = {}, SubjectId subject = bike) {
    return {
        name(n), "k7-" + std::to_string(n), subject, {{recorded}, std::move(replaces), std::move(content)}};
}

Entry note(const std::string& text) {
    Entry entry;
    entry.date = std::chrono::year{2024} / 5 / 2;
    entry.note = text;
    entry.body = Note{};
    return entry;
}

PlanItem item(const std::string& slug, int months) {
    PlanItem plan;
    plan.slug = slug;
    plan.repeat.months = months;
    return plan;
}

std::vector<std::string> heads_of(const Conflict& conflict, const std::vector<NamedRecord>& records) {
    std::vector<std::string> ids;
    for (const auto head : conflict.current.heads)
        ids.push_back(records[head].id);
    return ids;
}

} // namespace

TEST_CASE("Things erased from one frame, each in a copy, stay apart", "[versions]") {
    // X, Y and Z were saved together. One copy erased X and recorded Y and Z again, the other erased Y.
    const auto in_frame = [](std::uint32_t index) { return RecordName{.frame_hash = {1}, .index = index}; };
    const std::vector<NamedRecord> records{record(2, 20, Withdrawal{"x"}, {in_frame(0), in_frame(no_version)}),
                                           record(3, 10, note("y"), {in_frame(1)}),
                                           record(4, 10, note("z"), {in_frame(2)}),
                                           record(5, 21, Withdrawal{"y"}, {in_frame(1), in_frame(no_version)}),
                                           record(6, 10, note("x"), {in_frame(0)}),
                                           record(7, 10, note("z"), {in_frame(2)})};
    const auto groups = version_groups(records);
    REQUIRE(groups.size() == 3);
    CHECK(groups[0] == VersionGroup{4, 0}); // x
    CHECK(groups[1] == VersionGroup{1, 3}); // y
    CHECK(groups[2] == VersionGroup{2, 5}); // z
    const auto bike_now = fold(garage_subject, records).bikes.at(0);
    REQUIRE(bike_now.log.size() == 1); // x and y are taken back, and z is one entry
    CHECK(bike_now.log[0].value == note("z"));
}

TEST_CASE("Promise 8: corrections made apart are both kept and shown as a conflict until settled", "[versions]") {
    std::vector<NamedRecord> records{record(1, 10, note("as first written")),
                                     record(2, 20, note("corrected here"), {name(1)}),
                                     record(3, 30, note("corrected there"), {name(1)})};
    const auto found = conflicts(records);
    REQUIRE(found.size() == 1);
    CHECK(heads_of(found[0], records) == std::vector<std::string>{"k7-2", "k7-3"});
    CHECK(found[0].versions.size() == 3); // nothing is dropped
    CHECK(records[found[0].current.used].id == "k7-3");
    CHECK(fold(garage_subject, records).bikes[0].log[0].in_conflict());

    // A correction that names only one of them settles nothing.
    records.push_back(record(4, 40, note("corrected here again"), {name(2)}));
    REQUIRE(conflicts(records).size() == 1);
    CHECK(heads_of(conflicts(records)[0], records) == std::vector<std::string>{"k7-3", "k7-4"});

    records.push_back(record(5, 50, note("corrected there"), {name(3), name(4)}));
    CHECK(conflicts(records).empty());
    CHECK_FALSE(fold(garage_subject, records).bikes[0].log[0].in_conflict());
    CHECK(fold(garage_subject, records).bikes[0].log[0].earlier_ids.size() == 4);
}

TEST_CASE("Until settled the version recorded last is used, then the one with the smallest hash", "[versions]") {
    std::vector<NamedRecord> records{record(1, 10, note("a")), record(9, 20, note("b"), {name(1)}),
                                     record(3, 20, note("c"), {name(1)}), record(5, 20, note("d"), {name(1)})};
    std::ranges::sort(records, {}, &NamedRecord::id);
    do {
        const auto found = conflicts(records);
        REQUIRE(found.size() == 1);
        CHECK(records[found[0].current.used].id == "k7-3");
    } while (std::ranges::next_permutation(records, {}, &NamedRecord::id).found);
}

TEST_CASE("A correction against a withdrawal is a conflict, two withdrawals are none", "[versions]") {
    std::vector<NamedRecord> records{record(1, 10, note("a")), record(2, 20, Withdrawal{"typed twice"}, {name(1)}),
                                     record(3, 15, note("b"), {name(1)})};
    REQUIRE(conflicts(records).size() == 1);
    CHECK(records[conflicts(records)[0].current.used].id == "k7-2"); // so the entry counts in no sum
    CHECK(fold(garage_subject, records).bikes.empty());
    records[2] = record(3, 15, Withdrawal{}, {name(1)});
    CHECK(conflicts(records).empty());
}

TEST_CASE("Everything that can be changed twice can be in conflict", "[versions]") {
    const std::vector<NamedRecord> records{
        record(1, 10, GarageSettings{}, {}, garage_subject), record(2, 11, GarageSettings{}, {}, garage_subject),
        record(3, 12, BikeDetails{.name = "Old twin"}),      record(4, 13, BikeDetails{.name = "The twin"}),
        record(5, 14, item("engine-oil", 12)),               record(6, 15, item("engine-oil", 6)),
        record(7, 16, item("chain", 1)), // another item: no conflict
        record(8, 17, Baseline{.slug = "engine-oil"}),       record(9, 18, Baseline{.slug = "engine-oil"}),
        record(10, 19, DataCardValue{.name = "rear axle nut", .value = "98"}),
        record(11, 20, DataCardValue{.name = "rear axle nut", .value = "100"}),
        record(12, 21, note("one")), // two entries are never about the same thing by themselves
        record(13, 22, note("one"))};
    const auto found = conflicts(records);
    REQUIRE(found.size() == 5);
    for (const auto& conflict : found)
        CHECK(conflict.current.heads.size() == 2);
    CHECK(about_the_same(records[4].record.content, records[5].record.content));
    CHECK_FALSE(about_the_same(records[4].record.content, records[6].record.content));
    CHECK_FALSE(about_the_same(records[11].record.content, records[12].record.content));
}

TEST_CASE("Records that replace one another in a circle count as nothing and stop nobody", "[versions]") {
    const std::vector<NamedRecord> records{record(1, 10, note("a"), {name(2)}), record(2, 20, note("b"), {name(1)})};
    const auto groups = version_groups(records);
    REQUIRE(groups.size() == 1);
    CHECK(current_version(groups[0], records).heads.empty());
    CHECK(conflicts(records).empty());
    CHECK(fold(garage_subject, records).bikes.empty());
}
