// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/append_times.h"

#include "model/store/garage_file.h"
#include "model/store/posix_file_layer.h"
#include "tests/bench/database.h"

#include <chrono>
#include <filesystem>

namespace sumpbook::bench {
namespace {

using namespace store;

template <class Work>
double microseconds_of(const Work& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - start).count();
}

/// A file that grows by plain writes.
class PlainFile {
public:
    explicit PlainFile(const std::string& path)
        : file_(*open_file(files_, path, OpenMode::create_new)) {}
    void append(ByteView bytes) {
        if (!write_fully(file_, end_, bytes) || !files_.sync(file_.handle())) give_up("a write failed");
        end_ += bytes.size();
    }

private:
    PosixFileLayer files_;
    OpenFile file_;
    std::uint64_t end_ = 0;
};

} // namespace

AppendTimes append_in_turn(const std::string& folder, int times) {
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    PosixFileLayer files;
    SystemRandom random;
    auto garage = GarageFile::create({files, random, folder + "/state", {}}, folder + "/garage.sumpbook", {},
                                     {1'700'000'000});
    if (!garage) give_up(garage.error().sentence);
    Database database(folder + "/rows.db");
    database.run("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL");
    database.make_table();
    PlainFile plain(folder + "/plain");
    AppendTimes taken;
    for (int i = 0; i < times; ++i) {
        const Row row = row_of(static_cast<std::size_t>(i));
        const std::uint64_t before = garage->bytes();
        taken.garage.push_back(microseconds_of([&] {
            const auto saved = garage->append({{bike_of(row), record_of(row)}});
            if (!saved) give_up(saved.error().sentence);
        }));
        const Bytes bytes(static_cast<std::size_t>(garage->bytes() - before), 1);
        taken.plain.push_back(microseconds_of([&] { plain.append(bytes); }));
        taken.database.push_back(microseconds_of([&] { database.insert(row); }));
    }
    return taken;
}

} // namespace sumpbook::bench
