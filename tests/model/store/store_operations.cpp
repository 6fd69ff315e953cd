// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/store_operations.h"

#include "model/store/backup.h"
#include "model/store/handover.h"
#include "model/store/merge.h"
#include "model/store/recover.h"

#include <stdexcept>

namespace sumpbook::store {
namespace {

template <class T>
void must(const Result<T>& result) {
    if (!result) throw std::runtime_error(result.error().sentence);
}

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

} // namespace

StoreOperation create_operation() {
    return {.name = "create", .before = empty_disk(), .run = [](FileLayer& files) {
                SeededRandom random("operation");
                return without_value(GarageFile::create(surroundings(files, random), garage_path,
                                                        full_settings(), {1'700'000'000}));
            }};
}

StoreOperation append_operation() {
    return on_the_example("append", [](GarageFile& garage, RandomSource&) {
        return without_value(
            garage.append({{subject_of(1), fuel_record(7)}, {subject_of(2), fuel_record(8)}}));
    });
}

StoreOperation append_twice_operation() {
    auto operation = on_the_example("append behind an append", [](GarageFile& garage, RandomSource&) {
        return without_value(garage.append({{subject_of(2), fuel_record(8)}}));
    });
    SeededRandom random("first");
    auto garage = GarageFile::open(surroundings(operation.before, random), garage_path);
    must(garage->append({{subject_of(1), fuel_record(7)}}));
    return operation;
}

StoreOperation append_attachment_operation() {
    return on_the_example("append attachment", [](GarageFile& garage, RandomSource& random) -> Result<void> {
        const auto attachment = new_attachment(subject_of(1), Bytes(700, 'x'), random);
        if (!attachment) return pass_on(attachment.error());
        return without_value(garage.append({{subject_of(1), fuel_record(7)}}, {*attachment}));
    });
}

StoreOperation take_fingerprint_operation() {
    return on_the_example("fingerprint", [](GarageFile& garage, RandomSource&) {
        return without_value(garage.take_fingerprint({1'800'000'000}));
    });
}

StoreOperation append_behind_torn_operation() {
    auto operation = append_operation();
    operation.name = "append behind a torn end";
    auto bytes = operation.before.bytes(garage_path);
    bytes.resize(bytes.size() - 20);
    operation.before.put(garage_path, bytes);
    return operation;
}

StoreOperation merge_operation() {
    const std::string other = "/garage/other.sumpbook";
    MemoryDisk disk = example_disk();
    disk.put(other, disk.bytes(garage_path));
    SeededRandom random("other");
    auto copy = GarageFile::open({disk, random, "/other state", Patience{0}}, other);
    must(copy->append({{subject_of(2), fuel_record(55)}}));
    return makes("merge", disk.after_power_cut(1), "/garage/merged.sumpbook", [other](FileLayer& files) {
        return set_of(plan_merge(files, {garage_path, other}, Patience{0}));
    });
}

StoreOperation recover_operation() {
    MemoryDisk disk = example_disk();
    auto bytes = disk.bytes(garage_path);
    bytes[bytes.size() / 2] ^= 1U;
    disk.put(garage_path, bytes);
    return makes("recover", std::move(disk), "/garage/recovered.sumpbook", [](FileLayer& files) {
        SeededRandom random("recover");
        return set_of(plan_recovery(files, random, garage_path, Patience{0}));
    });
}

StoreOperation hand_over_operation() {
    return makes("hand-over", example_disk(), "/garage/handed.sumpbook", [](FileLayer& files) {
        return set_of(plan_hand_over(files, garage_path, subject_of(1), {.money = true}, Patience{0}));
    });
}

StoreOperation back_up_operation() {
    MemoryDisk disk = example_disk();
    SeededRandom random("grows");
    auto garage = GarageFile::open(surroundings(disk, random), garage_path);
    must(garage);
    std::vector<std::string> older;
    for (const unsigned of_month : {1U, 2U, 3U}) {
        const auto date = day(2026, 5, of_month);
        must(back_up(disk, garage_path, "/backups", date, {}, Patience{0}));
        older.push_back("/backups/" + backup_name(garage_path, {date}));
        must(garage->append({{subject_of(1), fuel_record(60 + static_cast<int>(of_month))}}));
    }
    const auto today = day(2026, 5, 4);
    return {.name = "backup",
            .before = disk.after_power_cut(1),
            .run =
                [today](FileLayer& files) {
                    return without_value(back_up(files, garage_path, "/backups", today, 1, Patience{0}));
                },
            .path = "/backups/" + backup_name(garage_path, {today}),
            .removes = std::move(older)};
}

} // namespace sumpbook::store
