// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/merged_erasures.h"

#include "model/garage/garage.h"
#include "model/garage/versions.h"
#include "tests/catch.h"
#include "tests/model/store/set_bench.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

const SubjectId red = subject_of(1);

Record noted(const std::string& text, RecordedTime recorded, std::vector<RecordName> replaces = {}) {
    Record record = fuel_record(5);
    std::get<Entry>(record.content).note = text;
    record.recorded = recorded;
    record.replaces = std::move(replaces);
    return record;
}

/// Two copies of one garage that hold the same import: three entries of one save.
struct Copies : SetBench {
    Copies() {
        create("/a");
        name_bike("/a", red, "Red");
        save("/a", {noted("text X", {++clock}), noted("text Y", {clock}), noted("text Z", {clock})});
        copy("/a", "/b");
    }
    void save(const std::string& path, const std::vector<Record>& records) {
        std::vector<NewRecord> made;
        for (const auto& record : records)
            made.push_back({red, record});
        static_cast<void>(must(open(path).append(made)));
    }
    RecordName named(const std::string& path, const std::string& text) {
        const auto garage = open(path);
        const auto found = std::ranges::find_if(garage.records(), [&](const NamedRecord& one) {
            const auto* entry = std::get_if<Entry>(&one.record.content);
            return entry != nullptr && entry->note == text;
        });
        REQUIRE(found != garage.records().end());
        return found->name;
    }
    Erased erase(const std::string& path, const std::string& text) {
        const auto name = named(path, text);
        return must(open(path).erase(name, "private", {++clock}));
    }
    MergePlan merge(const std::vector<std::string>& paths, const std::string& to) {
        auto plan = must(plan_merge(disk, paths, at_once));
        REQUIRE(write_out(disk, plan.set, to));
        return plan;
    }
    bool in_file(const std::string& path, std::string_view text) {
        return holds(disk.bytes(path), as_bytes(text));
    }
    std::vector<std::string> log(const std::string& path) {
        const auto garage = open(path);
        const auto folded = fold(garage.subject(), garage.records());
        std::vector<std::string> notes;
        for (const auto& entry : folded.bikes.at(0).log)
            notes.push_back(entry.value.note.value_or(""));
        std::ranges::sort(notes);
        return notes;
    }
};

} // namespace

TEST_CASE("Different entries of one save erased in two copies stay different things after a merge",
          "[merge][erase]") {
    Copies copies;
    copies.erase("/a", "text X");
    copies.erase("/b", "text Y");
    const auto one = copies.merge({"/a", "/b"}, "/ab");
    const auto other = copies.merge({"/b", "/a"}, "/ba");
    CHECK(copies.disk.bytes("/ab") == copies.disk.bytes("/ba"));
    CHECK(copies.log("/ab") == std::vector<std::string>{"text Z"});
    const auto merged = copies.open("/ab");
    for (const auto& group : version_groups(merged.records())) {
        std::set<std::string> things; // nothing that was erased is a version of something else
        for (const auto i : group) {
            const auto* entry = std::get_if<Entry>(&merged.records()[i].record.content);
            if (entry != nullptr) things.insert(entry->note.value_or(""));
        }
        CHECK(things.size() <= 1);
    }
    // Each copy recorded again what the other erased: it is told, and goes when it is erased here.
    CHECK(one.still_here.size() == 2);
    CHECK(other.still_here.size() == 2);
    CHECK(copies.in_file("/ab", "text X"));
    copies.erase("/ab", "text X");
    copies.erase("/ab", "text Y");
    CHECK_FALSE(copies.in_file("/ab", "text X"));
    CHECK_FALSE(copies.in_file("/ab", "text Y"));
    CHECK(copies.log("/ab") == std::vector<std::string>{"text Z"});
    const auto again = copies.merge({"/ab", "/a", "/b"}, "/again");
    CHECK(again.still_here.empty());
    CHECK_FALSE(copies.in_file("/again", "text X"));
    CHECK_FALSE(copies.in_file("/again", "text Y"));
    CHECK(copies.log("/again") == std::vector<std::string>{"text Z"});
}

TEST_CASE("A correction made elsewhere of what was erased here is told, and can be erased too", "[merge][erase]") {
    Copies copies;
    copies.save("/b", {noted("text X again", {++copies.clock}, {copies.named("/b", "text X")})});
    const auto erased = copies.erase("/a", "text X");
    const auto plan = copies.merge({"/a", "/b"}, "/ab");
    REQUIRE(plan.still_here.size() == 1);
    const auto& told = plan.still_here[0];
    CHECK(told.bike == "Red");
    CHECK(told.erased_in == "/a");
    CHECK(told.held_in == "/b");
    REQUIRE(told.ids.size() == 1);
    const auto merged = copies.open("/ab");
    const auto version = std::ranges::find(merged.records(), told.ids[0], &NamedRecord::id);
    REQUIRE(version != merged.records().end());
    CHECK(std::get<Entry>(version->record.content).note == "text X again");
    CHECK(copies.in_file("/ab", "text X again"));
    copies.erase("/ab", "text X again");
    CHECK_FALSE(copies.in_file("/ab", "text X"));
    CHECK(copies.merge({"/ab", "/a", "/b"}, "/again").still_here.empty());
    CHECK_FALSE(copies.in_file("/again", "text X"));
}

TEST_CASE("A merge says of each bike how much goes, and which record says that it was erased", "[merge][erase]") {
    Copies copies;
    const auto paper = copies.attach("/a", red, {'l', 'e', 't', 't', 'e', 'r'});
    copies.copy("/a", "/b");
    const auto name = copies.open("/a").records().back().name;
    const auto with_paper = must(copies.open("/a").erase(name, "private", {++copies.clock}));
    const auto import = copies.erase("/a", "text X");
    for (const auto& paths : {std::vector<std::string>{"/a", "/b"}, std::vector<std::string>{"/b", "/a"}}) {
        const auto plan = must(plan_merge(copies.disk, paths, at_once));
        REQUIRE(plan.lost.size() == 1);
        CHECK(plan.lost[0].bike == "Red");
        CHECK(plan.lost[0].entries == 4); // three of the import, and that of the paper
        CHECK(plan.lost[0].attachments == 1);
        CHECK(plan.lost[0].by == std::vector<std::string>{with_paper.id, import.id});
        CHECK(plan.lost[0].unaccounted.empty());
        CHECK(plan.still_here.empty());
        CHECK(plan.notices.size() == 1);
    }
    copies.merge({"/a", "/b"}, "/ab");
    CHECK(must(plan_merge(copies.disk, {"/ab", "/a"}, at_once)).lost.empty()); // nothing goes that was there
}

TEST_CASE("Entries that a record empties without standing for them are told one by one", "[merge][erase]") {
    Copies copies;
    const auto erased = copies.named("/b", "text X");
    const auto before = copies.open("/a");
    std::vector<std::string> expected;
    for (const auto& one : before.records()) {
        if (one.name.frame_hash == erased.frame_hash && one.name != erased) expected.push_back(one.id);
    }
    REQUIRE(expected.size() == 2);
    // No program writes this: it says that the whole save was erased and names one entry of it.
    copies.save("/b", {{{++copies.clock}, {erased, {erased.frame_hash, no_version}}, Withdrawal{"made up"}}});
    const auto plan = must(plan_merge(copies.disk, {"/a", "/b"}, at_once));
    REQUIRE(plan.lost.size() == 1);
    CHECK(plan.lost[0].entries == 3);
    REQUIRE(plan.lost[0].by.size() == 1);
    CHECK(plan.lost[0].by[0] == copies.open("/b").records().back().id);
    CHECK(plan.lost[0].unaccounted == expected);
}

TEST_CASE("With a bike of another garage only what was erased of that bike is taken over", "[merge][erase]") {
    Copies copies; // the other garage
    const auto blue = subject_of(2);
    copies.name_bike("/a", blue, "Blue");
    copies.add("/a", blue, 3);
    copies.create("/mine");
    REQUIRE(write_out(copies.disk, must(plan_adoption(copies.disk, "/mine", "/a", {"Red"}, at_once)).set, "/with-red"));
    copies.erase("/a", "text X"); // of the red one, there
    const auto blue_too = must(plan_adoption(copies.disk, "/with-red", "/a", {"Blue"}, at_once));
    CHECK(blue_too.lost.empty());
    CHECK(blue_too.notices.empty());
    REQUIRE(write_out(copies.disk, blue_too.set, "/with-both"));
    CHECK(copies.log("/with-both") == std::vector<std::string>{"text X", "text Y", "text Z"});
    const auto red_again = must(plan_adoption(copies.disk, "/with-both", "/a", {"Red"}, at_once));
    REQUIRE(red_again.lost.size() == 1);
    CHECK(red_again.lost[0].entries == 3);
    CHECK(red_again.lost[0].unaccounted.empty());
    CHECK(red_again.notices.size() == 1);
    REQUIRE(write_out(copies.disk, red_again.set, "/as-there"));
    CHECK_FALSE(copies.in_file("/as-there", "text X"));
    CHECK(copies.log("/as-there") == std::vector<std::string>{"text Y", "text Z"});
}
