// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/garage.h"

#include "tests/catch.h"

#include <algorithm>

using namespace sumpbook;

namespace {

constexpr SubjectId garage_subject{{1}};
constexpr SubjectId bike_subject{{2}};
constexpr SubjectId other_bike{{3}};

Date day(int year, unsigned month, unsigned of_month) {
    return std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{of_month};
}

RecordName name(std::uint8_t n) { return {.frame_hash = {n}, .index = 0}; }

NamedRecord record(std::uint8_t n, std::int64_t recorded, RecordContent content,
                   std::vector<RecordName> replaces = {}, SubjectId subject = bike_subject) {
    return {
        name(n), "k7-" + std::to_string(n), subject, {{recorded}, std::move(replaces), std::move(content)}};
}

Entry note(Date date, const std::string& text) {
    Entry entry;
    entry.date = date;
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

std::vector<std::string> notes_of(const Garage& garage) {
    std::vector<std::string> notes;
    for (const auto& entry : garage.bikes.at(0).log)
        notes.push_back(entry.value.note.value_or(""));
    return notes;
}

} // namespace

TEST_CASE("an empty file folds into an empty garage") {
    const Garage garage = fold(garage_subject, {});
    CHECK(garage.id == garage_subject);
    CHECK_FALSE(garage.settings.has_value());
    CHECK(garage.bikes.empty());
}

TEST_CASE("entries stand by date, those of one date in the order recorded") {
    const Garage garage =
        fold(garage_subject,
             {record(1, 10, BikeDetails{.name = "Old twin"}), record(2, 11, note(day(2024, 5, 2), "second")),
              record(3, 12, note(day(2024, 5, 2), "third")), record(4, 13, note(day(2024, 5, 1), "first"))});
    REQUIRE(garage.bikes.size() == 1);
    CHECK(garage.bikes[0].details.value.name == "Old twin");
    CHECK(notes_of(garage) == std::vector<std::string>{"first", "second", "third"});
}

TEST_CASE("a correction stands for what it replaces and keeps its place in the day") {
    const std::vector<NamedRecord> records{record(1, 10, note(day(2024, 5, 2), "a")),
                                           record(2, 11, note(day(2024, 5, 2), "b")),
                                           record(3, 12, note(day(2024, 5, 2), "a, corrected"), {name(1)})};
    const Garage garage = fold(garage_subject, records);
    CHECK(notes_of(garage) == std::vector<std::string>{"a, corrected", "b"});
    const LogEntry& corrected = garage.bikes[0].log[0];
    CHECK(corrected.id == "k7-3");
    CHECK(corrected.earlier_ids == std::vector<std::string>{"k7-1"});
    CHECK_FALSE(corrected.in_conflict());
    CHECK(find_entry(garage.bikes[0], "k7-1") == &corrected);
    CHECK(find_entry(garage.bikes[0], "k7-9") == nullptr);
}

TEST_CASE("a withdrawal takes an entry out, and a later correction that names both brings it back") {
    std::vector<NamedRecord> records{record(1, 10, note(day(2024, 5, 2), "a")),
                                     record(2, 11, Withdrawal{}, {name(1)})};
    CHECK(fold(garage_subject, records).bikes.empty());
    records.push_back(record(3, 12, note(day(2024, 5, 2), "again"), {name(2)}));
    CHECK(notes_of(fold(garage_subject, records)) == std::vector<std::string>{"again"});
}

TEST_CASE("two corrections made apart are both kept: the later recorded is used and both are named") {
    const std::vector<NamedRecord> records{record(1, 10, note(day(2024, 5, 2), "a")),
                                           record(2, 20, note(day(2024, 5, 2), "from the phone"), {name(1)}),
                                           record(3, 15, note(day(2024, 5, 2), "from the desk"), {name(1)})};
    const Garage garage = fold(garage_subject, records);
    CHECK(notes_of(garage) == std::vector<std::string>{"from the phone"});
    CHECK(garage.bikes[0].log[0].in_conflict());
    CHECK(garage.bikes[0].log[0].heads.size() == 2);

    SECTION("of two recorded in one second the smaller hash is used, whatever the order of the file") {
        auto tied = records;
        tied[2].record.recorded = {20};
        CHECK(notes_of(fold(garage_subject, tied)) == std::vector<std::string>{"from the phone"});
        std::ranges::reverse(tied);
        CHECK(notes_of(fold(garage_subject, tied)) == std::vector<std::string>{"from the phone"});
    }
    SECTION("settling names both") {
        auto settled = records;
        settled.push_back(record(4, 30, note(day(2024, 5, 2), "settled"), {name(2), name(3)}));
        const Garage after = fold(garage_subject, settled);
        CHECK(notes_of(after) == std::vector<std::string>{"settled"});
        CHECK_FALSE(after.bikes[0].log[0].in_conflict());
    }
}

TEST_CASE("corrections of an entry that is not held here still belong together") {
    const std::vector<NamedRecord> records{record(2, 20, note(day(2024, 5, 2), "one"), {name(1)}),
                                           record(3, 15, note(day(2024, 5, 2), "two"), {name(1)})};
    const Garage garage = fold(garage_subject, records);
    CHECK(notes_of(garage) == std::vector<std::string>{"one"});
    CHECK(garage.bikes[0].log[0].in_conflict());
}

TEST_CASE("plan items are one a slug, and subjects are apart") {
    const std::vector<NamedRecord> records{record(1, 10, item("engine-oil", 12)),
                                           record(2, 11, item("brake-fluid", 24)),
                                           record(3, 12, item("engine-oil", 6), {name(1)}),
                                           record(4, 13, item("engine-oil", 3), {}, other_bike)};
    const Garage garage = fold(garage_subject, records);
    REQUIRE(garage.bikes.size() == 2);
    REQUIRE(garage.bikes[0].plan.size() == 2);
    REQUIRE(find_plan_item(garage.bikes[0], "engine-oil") != nullptr);
    CHECK(find_plan_item(garage.bikes[0], "engine-oil")->value.repeat.months == 6);
    CHECK(find_plan_item(garage.bikes[1], "engine-oil")->value.repeat.months == 3);
    CHECK(find_plan_item(garage.bikes[1], "brake-fluid") == nullptr);
}

TEST_CASE("a plan item dropped and set again is no conflict once it names the withdrawal") {
    std::vector<NamedRecord> records{record(1, 10, item("engine-oil", 12)),
                                     record(2, 11, Withdrawal{}, {name(1)})};
    const auto heads = heads_like(records, bike_subject, item("engine-oil", 6));
    CHECK(heads == std::vector<RecordName>{name(2)});
    records.push_back(record(3, 12, item("engine-oil", 6), heads));
    const Garage garage = fold(garage_subject, records);
    REQUIRE(garage.bikes.at(0).plan.size() == 1);
    CHECK_FALSE(garage.bikes[0].plan[0].in_conflict());
    CHECK(heads_like(records, bike_subject, item("coolant", 6)).empty());
    CHECK(heads_like(records, other_bike, item("engine-oil", 6)).empty());
}

TEST_CASE("bikes are found by name, whatever the case, the exact one first") {
    const Garage garage = fold(garage_subject, {record(1, 10, BikeDetails{.name = "TWIN"}),
                                                record(2, 11, BikeDetails{.name = "Twin"}, {}, other_bike)});
    CHECK(find_bike(garage, "Twin") == &garage.bikes[1]);
    CHECK(find_bike(garage, "TWIN") == &garage.bikes[0]);
    CHECK(find_bike(garage, "twin") != nullptr);
    CHECK(find_bike(garage, "twins") == nullptr);
}

TEST_CASE("every kind has a word and a body") {
    CHECK(entry_kind_slugs().size() == std::variant_size_v<EntryBody>);
    for (const auto slug : entry_kind_slugs()) {
        const auto body = body_of_kind(slug);
        REQUIRE(body.has_value());
        CHECK(kind_slug(*body) == slug);
    }
    CHECK(kind_slug(EntryBody{Fuel{}}) == "fuel");
    CHECK(kind_slug(EntryBody{OilChange{}}) == "oil-change");
    CHECK(kind_slug(EntryBody{Recall{}}) == "recall");
    CHECK(kind_slug(EntryBody{Attach{}}) == "attach");
    CHECK_FALSE(body_of_kind("fuels").has_value());
}
