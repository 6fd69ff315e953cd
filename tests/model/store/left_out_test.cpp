// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/left_out.h"

#include "model/store/handover.h"
#include "tests/catch.h"
#include "tests/model/store/set_bench.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// What is left out of the hand-over of the red bike, of all its records that can be read there.
LeftOut left_out_with(SetBench& bench, const Withheld& withheld) {
    const auto plan = must(plan_hand_over(bench.disk, "/g", subject_of(1), withheld, at_once));
    const auto path =
        must(write_out(bench.disk, plan.set, "/given-" + std::to_string(++bench.clock))).path;
    const auto given = bench.open(path);
    std::vector<RecordName> names;
    for (const auto& record : given.records())
        names.push_back(record.name);
    return left_out_of(given.index(), names);
}

} // namespace

TEST_CASE("A hand-over lacks the money and the notes that were left out, and says of which records") {
    SetBench bench;
    bench.example("/g");
    CHECK(left_out_with(bench, {}).records.empty());
    const auto money = left_out_with(bench, {true, false, false});
    CHECK_FALSE(money.records.empty());
    CHECK(money.money);
    CHECK_FALSE(money.personal);
    const auto personal = left_out_with(bench, {false, true, false});
    CHECK_FALSE(personal.records.empty());
    CHECK_FALSE(personal.money);
    CHECK(personal.personal);
    // The bytes of files are not what a new version would lose: it names them still.
    CHECK(left_out_with(bench, {false, false, true}).records.empty());
}

TEST_CASE("A record that was written without any money and notes lacks nothing") {
    SetBench bench;
    bench.create("/g");
    bench.name_bike("/g", subject_of(1), "Red");
    Entry entry;
    entry.date = std::chrono::year{2026} / 5 / 3;
    entry.body = Reading{};
    {
        auto garage = bench.open("/g");
        static_cast<void>(must(garage.append({{subject_of(1), Record{{++bench.clock}, {}, entry}}})));
    }
    CHECK(left_out_with(bench, {true, true, true}).records.empty());
    bench.add("/g", subject_of(1), 1);
    const auto left_out = left_out_with(bench, {true, true, true});
    CHECK(left_out.records.size() == 1);
}

TEST_CASE("The garage that has everything lacks nothing, and neither does an unknown record") {
    SetBench bench;
    bench.example("/g");
    const auto garage = bench.open("/g");
    std::vector<RecordName> names{{Hash256{7}, 0}};
    for (const auto& record : garage.records())
        names.push_back(record.name);
    CHECK(left_out_of(garage.index(), names).records.empty());
}

TEST_CASE("Of a whole file it is told what was left out, however much was erased besides") {
    SetBench bench;
    bench.example("/g");
    CHECK_FALSE(left_out_of(bench.open("/g").index()).money);
    auto garage = bench.open("/g");
    const auto entry = std::ranges::find_if(garage.records(), [](const NamedRecord& record) {
        return record.subject == subject_of(2) && std::holds_alternative<Entry>(record.record.content);
    });
    REQUIRE(entry != garage.records().end());
    REQUIRE(garage.erase(entry->name, "secret", {++bench.clock}));
    CHECK_FALSE(left_out_of(bench.open("/g").index()).money); // erased is not left out
    const auto plan = must(plan_hand_over(bench.disk, "/g", subject_of(1), {true, false, false}, at_once));
    const auto path = must(write_out(bench.disk, plan.set, "/given")).path;
    CHECK(left_out_of(bench.open(path).index()).money);
    CHECK_FALSE(left_out_of(bench.open(path).index()).personal);
}
