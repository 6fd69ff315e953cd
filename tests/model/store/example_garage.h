// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/garage_file.h"
#include "tests/model/store/example_records.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/temp_folder.h"

namespace sumpbook::store {

/// A folder, files that may be told to fail, and repeatable randomness.
struct Bench {
    explicit Bench(FailingFiles::Plan plan = {})
        : files(std::move(plan)) {}

    [[nodiscard]] std::string path() const { return folder.file("example.sumpbook"); }
    [[nodiscard]] Surroundings around() { return around(files); }
    [[nodiscard]] Surroundings around(FileLayer& layer) {
        return {layer, random, folder.file("state"), Patience{0}};
    }
    [[nodiscard]] Result<GarageFile> create() {
        return GarageFile::create(around(), path(), full_settings(), {1'700'000'000});
    }
    [[nodiscard]] Result<GarageFile> open(ScanDepth depth = ScanDepth::usual) {
        return GarageFile::open(around(), path(), depth);
    }
    [[nodiscard]] Bytes bytes() const { return bytes_of_file(path()); }

    TempFolder folder;
    FailingFiles files;
    SeededRandom random{"bench"};
};

/// A garage with settings, two bikes, an attachment and a fingerprint record: five actions.
inline GarageFile make_example(Surroundings around, const std::string& path) {
    RandomSource& random = around.random;
    auto garage = GarageFile::create(std::move(around), path, full_settings(), {1'700'000'000});
    if (!garage) throw std::runtime_error(garage.error().sentence);
    const auto all = full_records();
    const auto done = [](const auto& result) {
        if (!result) throw std::runtime_error(result.error().sentence);
    };
    done(garage->append(
        {{subject_of(1), all[1]}, {subject_of(1), fuel_record(1)}, {subject_of(2), fuel_record(2)}}));
    const auto paper = new_attachment(subject_of(1), Bytes{'p', 'a', 'p', 'e', 'r'}, random);
    done(paper);
    Entry entry = full_entry(Attach{});
    entry.attachments = {{"paper.txt", "text/plain", 5, paper->hash}};
    done(garage->append({{subject_of(1), Record{{1'700'000'100}, {}, entry}}}, {*paper}));
    done(garage->take_fingerprint({1'700'000'200}));
    done(garage->append({{subject_of(2), fuel_record(3)}}));
    return std::move(*garage);
}
inline GarageFile make_example(Bench& bench) { return make_example(bench.around(), bench.path()); }

} // namespace sumpbook::store
