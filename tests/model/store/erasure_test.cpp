// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/erasure.h"

#include "model/garage/versions.h"
#include "tests/catch.h"
#include "tests/model/store/example_records.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

RecordName name(std::uint8_t frame, std::uint32_t index) { return {.frame_hash = {frame}, .index = index}; }

NamedRecord record(std::uint8_t frame, std::uint32_t index, std::int64_t recorded, RecordContent content,
                   std::vector<RecordName> replaces = {}) {
    return {name(frame, index),
            "k7-" + std::to_string(frame) + std::to_string(index),
            subject_of(1),
            {{recorded}, std::move(replaces), std::move(content)}};
}

Entry note(const std::string& text) {
    Entry entry;
    entry.date = day(2024, 5, 2);
    entry.note = text;
    entry.body = Note{};
    return entry;
}

Entry with_file(std::uint8_t hash) {
    Entry entry = note("paper");
    entry.attachments = {{"a.txt", "text/plain", 5, {hash}}};
    return entry;
}

std::vector<std::string> ids(const std::vector<std::size_t>& places, const std::vector<NamedRecord>& records) {
    std::vector<std::string> all;
    for (const auto place : places)
        all.push_back(records[place].id);
    return all;
}

/// The records as they stand once an erasure was carried out.
std::vector<NamedRecord> carried_out(const Erasure& erasure, const std::vector<NamedRecord>& records) {
    std::vector<NamedRecord> after;
    for (const auto& named : records) {
        if (!erasure.frames.contains(named.name.frame_hash)) after.push_back(named);
    }
    std::vector<RecordName> copied;
    const auto add = [&](const std::vector<NewRecord>& made, std::uint8_t frame) {
        for (std::uint32_t i = 0; i < made.size(); ++i)
            after.push_back({name(frame, i), "n" + std::to_string(frame) + std::to_string(i), made[i].subject,
                             made[i].record});
    };
    const auto first = first_copies(erasure, records, erasure.frames, "private", {1000});
    add(first, 200);
    for (std::uint32_t i = 1; i < first.size(); ++i)
        copied.push_back(name(200, i));
    add(second_copies(erasure, records, copied), 201);
    return after;
}

} // namespace

TEST_CASE("Erasing empties the frames of all versions of the entry, and copies what else is in them", "[erasure]") {
    const std::vector<NamedRecord> records{record(1, 0, 10, note("secret")), record(1, 1, 10, note("neighbour")),
                                           record(2, 0, 20, note("secret, corrected"), {name(1, 0)}),
                                           record(3, 0, 30, note("elsewhere"))};
    const auto erasure = plan_erasure(records, name(1, 0));
    REQUIRE(erasure);
    CHECK(ids(erasure->versions, records) == std::vector<std::string>{"k7-10", "k7-20"});
    CHECK(erasure->frames == std::set<Hash256>{{1}, {2}});
    CHECK(erasure->earlier.empty());
    CHECK(ids(erasure->current, records) == std::vector<std::string>{"k7-11"});
    CHECK(plan_erasure(records, name(2, 0))->frames == erasure->frames); // by any version
    const auto after = carried_out(*erasure, records);
    REQUIRE(after.size() == 3);
    CHECK(after[1].record.recorded == RecordedTime{1000}); // the withdrawal
    CHECK(erased_frames(after) == std::set<EmptiedFrame>{{subject_of(1), {1}}, {subject_of(1), {2}}});
    CHECK(after[2].record.recorded == RecordedTime{10}); // the copy keeps its time
    CHECK(std::get<Entry>(after[2].record.content) == note("neighbour"));
    CHECK(recorded_again_on(after[2], after) == RecordedTime{1000});
    CHECK_FALSE(recorded_again_on(after[0], after));
    CHECK(conflicts(after).empty());
}

TEST_CASE("What was saved together keeps its corrections, withdrawals and conflicts", "[erasure]") {
    const std::vector<NamedRecord> records{
        record(1, 0, 10, note("secret")),
        record(1, 1, 10, note("corrected later")),
        record(1, 2, 10, note("withdrawn later")),
        record(1, 3, 10, note("in conflict")),
        record(2, 0, 20, note("the correction"), {name(1, 1)}),
        record(2, 1, 21, Withdrawal{"typed twice"}, {name(1, 2)}),
        record(2, 2, 22, note("one side"), {name(1, 3)}),
        record(3, 0, 23, note("other side"), {name(1, 3)})};
    const auto erasure = plan_erasure(records, name(1, 0));
    REQUIRE(erasure);
    CHECK(ids(erasure->earlier, records) == std::vector<std::string>{"k7-11", "k7-12", "k7-13"});
    CHECK(ids(erasure->current, records) == std::vector<std::string>{"k7-20", "k7-21", "k7-22", "k7-30"});
    const auto after = carried_out(*erasure, records);
    const auto open = conflicts(after);
    REQUIRE(open.size() == 1);
    CHECK(std::get<Entry>(after[open[0].current.used].record.content) == note("other side"));
    std::vector<std::string> standing;
    for (const auto& group : version_groups(after)) {
        const auto& used = after[current_version(group, after).used];
        if (const auto* entry = std::get_if<Entry>(&used.record.content)) standing.push_back(*entry->note);
    }
    CHECK(standing == std::vector<std::string>{"the correction", "other side"});
    // The first versions are still among the earlier ones.
    CHECK(std::ranges::count_if(after, [](const NamedRecord& named) {
              const auto* entry = std::get_if<Entry>(&named.record.content);
              return entry != nullptr && entry->note == "corrected later";
          }) == 1);
}

TEST_CASE("Only attachments that nothing else refers to go with the entry", "[erasure]") {
    std::vector<NamedRecord> records{record(1, 0, 10, with_file(7)), record(2, 0, 20, with_file(8), {name(1, 0)}),
                                     record(3, 0, 30, with_file(8))};
    CHECK(plan_erasure(records, name(1, 0))->attachments == std::set<Hash256>{{7}});
    records.pop_back();
    CHECK(plan_erasure(records, name(1, 0))->attachments == std::set<Hash256>{{7}, {8}});
}

TEST_CASE("Only entries can be erased, and only once", "[erasure]") {
    std::vector<NamedRecord> records{record(1, 0, 10, BikeDetails{.name = "Old twin"}), record(1, 1, 11, note("a")),
                                     record(2, 0, 12, Withdrawal{}, {name(1, 1)})};
    CHECK(plan_erasure(records, name(1, 0)).error().kind == ProblemKind::refused);
    CHECK(plan_erasure(records, name(9, 0)).error().kind == ProblemKind::refused);
    const auto withdrawn = plan_erasure(records, name(2, 0)); // taken back already, and still in the file
    REQUIRE(withdrawn);
    const auto after = carried_out(*withdrawn, records);
    CHECK(plan_erasure(after, after.front().name).error().kind == ProblemKind::refused);
    CHECK(std::ranges::count_if(after, [](const NamedRecord& named) {
              return std::holds_alternative<BikeDetails>(named.record.content);
          }) == 1);
}

TEST_CASE("Erasing what was saved with a withdrawal of an erased entry keeps what it says was erased", "[erasure]") {
    // The copies of one erasure stand in the frame of its withdrawal: erasing one of them empties that frame.
    const std::vector<NamedRecord> records{
        record(4, 0, 10, Withdrawal{"first"}, {name(1, 0), {{1}, no_version}}), record(4, 1, 11, note("b"))};
    const auto erasure = plan_erasure(records, name(4, 1));
    REQUIRE(erasure);
    const auto after = carried_out(*erasure, records);
    CHECK(erased_frames(after) == std::set<EmptiedFrame>{{subject_of(1), {1}}, {subject_of(1), {4}}});
}
