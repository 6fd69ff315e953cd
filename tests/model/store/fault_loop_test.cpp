// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/fault_loop.h"

#include "model/store/backup.h"
#include "model/store/handover.h"
#include "model/store/merge.h"
#include "model/store/recover.h"
#include "tests/catch.h"

#include <cstdio>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// Opens the garage and does one thing with it.
StoreOperation on_the_example(std::string name,
                              std::function<Result<void>(GarageFile&, RandomSource&)> what) {
    return {.name = std::move(name),
            .before = example_disk(),
            .run = [what = std::move(what)](FileLayer& files) -> Result<void> {
                SeededRandom random("operation");
                auto garage = GarageFile::open(surroundings(files, random), garage_path);
                if (!garage) return pass_on(garage.error());
                return what(*garage, random);
            }};
}

template <class T>
Result<void> without_value(const Result<T>& result) {
    if (!result) return pass_on(result.error());
    return {};
}

StoreOperation create() {
    return {.name = "create", .before = empty_disk(), .run = [](FileLayer& files) {
                SeededRandom random("operation");
                return without_value(GarageFile::create(surroundings(files, random), garage_path,
                                                        full_settings(), {1'700'000'000}));
            }};
}

StoreOperation append() {
    return on_the_example("append", [](GarageFile& garage, RandomSource&) {
        return without_value(
            garage.append({{subject_of(1), fuel_record(7)}, {subject_of(2), fuel_record(8)}}));
    });
}

StoreOperation append_twice() {
    auto operation = on_the_example("append behind an append", [](GarageFile& garage, RandomSource&) {
        return without_value(garage.append({{subject_of(2), fuel_record(8)}}));
    });
    SeededRandom random("first");
    auto garage = GarageFile::open(surroundings(operation.before, random), garage_path);
    REQUIRE(garage->append({{subject_of(1), fuel_record(7)}}));
    return operation;
}

StoreOperation append_attachment() {
    return on_the_example("append attachment", [](GarageFile& garage, RandomSource& random) -> Result<void> {
        const auto attachment = new_attachment(subject_of(1), Bytes(700, 'x'), random);
        if (!attachment) return pass_on(attachment.error());
        return without_value(garage.append({{subject_of(1), fuel_record(7)}}, {*attachment}));
    });
}

StoreOperation take_fingerprint() {
    return on_the_example("fingerprint", [](GarageFile& garage, RandomSource&) {
        return without_value(garage.take_fingerprint({1'800'000'000}));
    });
}

/// The last save had been cut short.
StoreOperation append_behind_torn() {
    auto operation = append();
    operation.name = "append behind a torn end";
    auto bytes = operation.before.bytes(garage_path);
    bytes.resize(bytes.size() - 20);
    operation.before.put(garage_path, bytes);
    return operation;
}

/// Makes one file out of others, which stay as they are.
StoreOperation makes(std::string name, MemoryDisk before, std::string path,
                     std::function<Result<FrameSet>(FileLayer&)> plan) {
    auto run = [path, plan = std::move(plan)](FileLayer& files) -> Result<void> {
        const auto set = plan(files);
        if (!set) return pass_on(set.error());
        return without_value(write_out(files, *set, path));
    };
    return {
        .name = std::move(name), .before = std::move(before), .run = std::move(run), .path = std::move(path)};
}

template <class Plan>
Result<FrameSet> set_of(Result<Plan> plan) {
    if (!plan) return pass_on(plan.error());
    return std::move(plan->set);
}

StoreOperation merge() {
    const std::string other = "/garage/other.sumpbook";
    MemoryDisk disk = example_disk();
    disk.put(other, disk.bytes(garage_path));
    SeededRandom random("other");
    auto copy = GarageFile::open({disk, random, "/other state", Patience{0}}, other);
    REQUIRE(copy->append({{subject_of(2), fuel_record(55)}}));
    return makes("merge", disk.after_power_cut(1), "/garage/merged.sumpbook", [other](FileLayer& files) {
        return set_of(plan_merge(files, {garage_path, other}, Patience{0}));
    });
}

StoreOperation recover() {
    MemoryDisk disk = example_disk();
    auto bytes = disk.bytes(garage_path);
    bytes[bytes.size() / 2] ^= 1U;
    disk.put(garage_path, bytes);
    return makes("recover", std::move(disk), "/garage/recovered.sumpbook", [](FileLayer& files) {
        SeededRandom random("recover");
        return set_of(plan_recovery(files, random, garage_path, Patience{0}));
    });
}

StoreOperation hand_over() {
    return makes("hand-over", example_disk(), "/garage/handed.sumpbook", [](FileLayer& files) {
        return set_of(plan_hand_over(files, garage_path, subject_of(1), {.money = true}, Patience{0}));
    });
}

StoreOperation back_up_once() {
    const auto today = day(2026, 5, 3);
    return {.name = "backup",
            .before = example_disk(),
            .run =
                [today](FileLayer& files) {
                    return without_value(back_up(files, garage_path, "/backups", today, 3, Patience{0}));
                },
            .path = "/backups/" + backup_name(garage_path, {today})};
}

void report(const StoreOperation& operation) {
    FaultLoop loop;
    loop.run(operation);
    INFO((loop.wrong.empty() ? "" : loop.wrong.front()));
    CHECK(loop.wrong == std::vector<std::string>{});
    CHECK(loop.points > 100);
    std::printf("fault loop, %s: %d fault points, %d told as errors, %d failed syncs of the file, "
                "%d restarts\n",
                operation.name.c_str(), loop.points, loop.errors, loop.doubts, loop.restarts);
}

} // namespace

TEST_CASE("Promise 1: whatever file operation fails, a save is whole or not at all", "[faults]") {
    report(create());
    report(append());
    report(append_twice());
    report(append_attachment());
    report(take_fingerprint());
    report(append_behind_torn());
}

TEST_CASE("Promise 1: whatever file operation fails, a new file is whole or not there", "[faults]") {
    report(merge());
    report(recover());
    report(hand_over());
    report(back_up_once());
}
