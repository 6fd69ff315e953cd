// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/order_watcher.h"

#include "model/store/hash.h"
#include "model/store/tail.h"
#include "tests/catch.h"
#include "tests/model/store/disk_bench.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

using Faults = std::vector<std::string>;

} // namespace

TEST_CASE("Promise 2: when a save or an erasure is reported, its bytes and its name have been synced", "[order]") {
    MemoryDisk disk = empty_disk();
    OrderWatcher files(disk);
    SeededRandom random("order");
    auto garage =
        GarageFile::create(surroundings(files, random), garage_path, full_settings(), {1'700'000'000});
    REQUIRE(garage);
    CHECK(files.not_safe() == Faults{});
    CHECK(files.syncs() == 2); // the file before its name, the folder after it
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}, {subject_of(2), fuel_record(2)}}));
    CHECK(files.not_safe() == Faults{});
    CHECK(files.syncs() == 4); // the folder once, in case the maker had died; then the file
    const auto paper = new_attachment(subject_of(1), Bytes(100'000, 'x'), random);
    REQUIRE(paper);
    REQUIRE(garage->append({{subject_of(1), fuel_record(3)}}, {*paper}));
    CHECK(files.not_safe() == Faults{});
    CHECK(files.syncs() == 5);
    REQUIRE(garage->take_fingerprint({1'800'000'000}));
    CHECK(files.not_safe() == Faults{});
    CHECK(files.syncs() == 6);
    REQUIRE(garage->erase(garage->records()[1].name, "names somebody", {1'800'000'001}));
    CHECK(files.not_safe() == Faults{});
    CHECK(files.syncs() == 8); // the new file before its name, the folder after it
    CHECK(files.faults() == Faults{});
    CHECK(state_text(*garage) == [&] {
        auto restarted = disk.after_power_cut(0);
        return state_text(restarted);
    }());
}

TEST_CASE("Promise 2: a torn end is safe in a file of its own before it is cut off", "[order]") {
    MemoryDisk disk = example_disk();
    auto bytes = disk.bytes(garage_path);
    bytes.resize(bytes.size() - 10);
    disk.put(garage_path, bytes);
    OrderWatcher files(disk);
    SeededRandom random("order");
    auto garage = GarageFile::open(surroundings(files, random), garage_path);
    REQUIRE(garage);
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
    CHECK(files.not_safe() == Faults{});
    CHECK(files.faults() == Faults{});
    CHECK(files.syncs() == 5); // the folder, the side file, its name, the cut, the action
}

TEST_CASE("The watcher sees what is done too early", "[doubles]") {
    MemoryDisk disk;
    OrderWatcher files(disk);
    const auto hello = as_bytes("hello");
    {
        const auto file = open_file(files, "/g.new-1", OpenMode::create_new);
        REQUIRE(file);
        REQUIRE(write_fully(*file, 0, hello));
        CHECK(files.not_safe() == Faults{"/g.new-1", "/"});
        REQUIRE(files.rename_new("/g.new-1", "/g"));
        CHECK(files.faults() == Faults{"/g got its name before it was synced"});
    }
    REQUIRE(files.sync_folder("/"));
    const auto file = open_file(files, "/g", OpenMode::read_write);
    REQUIRE(file);
    REQUIRE(write_fully(*file, 0, hello));
    CHECK(files.faults().back() == "/g was changed without its lock");
    REQUIRE(files.sync(file->handle()));
    {
        const auto lock = FileLock::take(files, "/g", LockKind::exclusive, {0});
        REQUIRE(lock);
        REQUIRE(write_fully(*file, 0, hello));
        CHECK(files.faults().size() == 2);
    }
    CHECK(files.faults().back() == "the lock of /g was let go of before the file was synced");
    REQUIRE(files.sync(file->handle()));
    const auto lock = FileLock::take(files, "/g", LockKind::exclusive, {0});
    const auto aside = open_file(files, "/g.cut-1", OpenMode::create_new);
    REQUIRE(write_fully(*aside, 0, hello));
    REQUIRE(files.truncate(file->handle(), 2));
    CHECK(files.faults()[3] == "/g was cut before /g.cut-1 was synced");
    CHECK(files.faults()[4] == "/g was cut before its folder was synced");
}
