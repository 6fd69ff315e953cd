// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/garage_file.h"
#include "model/store/merge.h"
#include "tests/model/store/example_records.h"
#include "tests/model/store/memory_disk.h"

#include <stdexcept>

namespace sumpbook::store {

inline const Patience at_once{0};

template <class T>
T must(Result<T> result) {
    if (!result) throw std::runtime_error(result.error().sentence);
    return *std::move(result);
}

/// A disk in memory with garages on it, for tests of what is made from whole files.
struct SetBench {
    MemoryDisk disk;
    SeededRandom random{"sets"};
    std::int64_t clock = 1'700'000'000;

    [[nodiscard]] Surroundings around(const std::string& state) { return {disk, random, state, at_once}; }
    GarageFile create(const std::string& path) {
        return must(GarageFile::create(around("/state" + path), path, full_settings(), {++clock}));
    }
    GarageFile open(const std::string& path) { return must(GarageFile::open(around("/state" + path), path)); }
    /// An entry with a price and a note, by the installation that this path stands for.
    void add(const std::string& path, const SubjectId& bike, int number) {
        auto garage = open(path);
        Record record = fuel_record(number);
        record.recorded = {++clock};
        static_cast<void>(must(garage.append({{bike, record}})));
    }
    void name_bike(const std::string& path, const SubjectId& bike, const std::string& name) {
        auto garage = open(path);
        BikeDetails details;
        details.name = name;
        static_cast<void>(must(garage.append({{bike, Record{{++clock}, {}, details}}})));
    }
    /// An entry with a file of these bytes.
    NewAttachment attach(const std::string& path, const SubjectId& bike, Bytes bytes) {
        auto garage = open(path);
        auto file = must(new_attachment(bike, std::move(bytes), random));
        Entry entry = full_entry(Attach{});
        entry.attachments = {{"paper.txt", "text/plain", file.bytes.size(), file.hash}};
        static_cast<void>(must(garage.append({{bike, Record{{++clock}, {}, entry}}}, {file})));
        return file;
    }
    FingerprintRecord print(const std::string& path) { return must(open(path).take_fingerprint({++clock})); }
    void copy(const std::string& from, const std::string& to) { disk.put(to, disk.bytes(from)); }

    /// Settings, two bikes, an attachment and a fingerprint.
    void example(const std::string& path) {
        create(path);
        name_bike(path, subject_of(1), "Red");
        name_bike(path, subject_of(2), "Blue");
        add(path, subject_of(1), 1);
        attach(path, subject_of(1), {'p', 'a', 'p', 'e', 'r'});
        add(path, subject_of(2), 2);
        print(path);
    }
    /// The canonical bytes of the union.
    Bytes merged(const std::vector<std::string>& paths) {
        const auto plan = must(plan_merge(disk, paths, at_once));
        const auto path = must(write_out(disk, plan.set, "/merged-" + std::to_string(++clock))).path;
        return disk.bytes(path);
    }
};

/// Whether the bytes occur in the others.
[[nodiscard]] inline bool holds(ByteView all, ByteView piece) {
    return std::search(all.begin(), all.end(), piece.begin(), piece.end()) != all.end();
}

} // namespace sumpbook::store
