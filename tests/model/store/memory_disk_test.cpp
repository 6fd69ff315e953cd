// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/memory_disk.h"

#include "model/store/hash.h"
#include "tests/catch.h"

#include <set>

using namespace sumpbook::store;

namespace {

std::string text_of(const Bytes& bytes) { return {bytes.begin(), bytes.end()}; }

FileLayer::Handle written(MemoryDisk& disk, const std::string& path, const std::string& text) {
    const auto file = disk.open(path, OpenMode::read_write_or_create);
    REQUIRE(file);
    REQUIRE(disk.write(*file, 0, as_bytes(text)));
    return *file;
}

} // namespace

TEST_CASE("A power cut leaves what was synced, name and bytes each", "[doubles]") {
    MemoryDisk disk;
    const auto file = written(disk, "/g", "one");
    CHECK(disk.after_power_cut(0).names().empty());
    CHECK(text_of(disk.after_power_cut(1).bytes("/g")) == "one");
    REQUIRE(disk.sync(file));
    CHECK(disk.after_power_cut(0).names().empty()); // the name is not safe yet
    REQUIRE(disk.sync_folder("/"));
    CHECK(disk.all_safe());
    REQUIRE(disk.write(file, 3, as_bytes(std::string("two"))));
    CHECK(text_of(disk.bytes("/g")) == "onetwo");
    CHECK(text_of(disk.after_power_cut(0).bytes("/g")) == "one");
    REQUIRE(disk.rename("/g", "/h"));
    CHECK(disk.after_power_cut(0).names() == std::vector<std::string>{"/g"});
    REQUIRE(disk.sync_folder("/"));
    CHECK(disk.after_power_cut(0).names() == std::vector<std::string>{"/h"});
    CHECK(disk.after_power_cut(0).boot_id() != disk.boot_id());
}

TEST_CASE("Seeds tear, drop and reorder what was not safe, and nothing else", "[doubles]") {
    MemoryDisk disk;
    disk.put("/g", as_bytes(std::string(1000, 's')));
    const auto file = *disk.open("/g", OpenMode::read_write);
    REQUIRE(disk.write(file, 1000, as_bytes(std::string(1000, 'a'))));
    REQUIRE(disk.write(file, 2000, as_bytes(std::string(1000, 'b'))));
    std::set<std::string> seen;
    bool second_without_first = false, zeros = false, shorter = false;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const auto text = text_of(disk.after_power_cut(seed).bytes("/g"));
        CHECK(text.substr(0, 1000) == std::string(1000, 's'));
        CHECK(text.size() <= 3000);
        seen.insert(text);
        second_without_first |= text.ends_with('b') && text.find('a') == std::string::npos;
        zeros |= text.ends_with('\0');
        shorter |= text.size() > 1000 && text.size() < 2000;
    }
    CHECK(seen.size() > 50);
    CHECK((second_without_first && zeros && shorter));
}

TEST_CASE("After a failed sync the bytes are seen, and no later sync keeps them", "[doubles]") {
    MemoryDisk disk;
    disk.put("/g", as_bytes(std::string("safe")));
    const auto file = written(disk, "/g", "lost");
    disk.sync_failed(file);
    REQUIRE(disk.sync(file));
    CHECK(text_of(disk.bytes("/g")) == "lost");
    CHECK(text_of(disk.after_power_cut(0).bytes("/g")) == "safe");
}

TEST_CASE("The disk in memory answers as a real one does", "[doubles]") {
    MemoryDisk disk;
    CHECK(disk.open("/g", OpenMode::read).error().fault == IoFault::not_found);
    CHECK(disk.open("/no/g", OpenMode::create_new).error().fault == IoFault::not_found);
    REQUIRE(disk.make_folders("/a/b"));
    const auto file = disk.open("/a/b/g", OpenMode::create_new);
    REQUIRE(file);
    CHECK(disk.open("/a/b/g", OpenMode::create_new).error().fault == IoFault::exists);
    REQUIRE(disk.write(*file, 2, as_bytes(std::string("x"))));
    CHECK(disk.bytes("/a/b/g") == Bytes{0, 0, 'x'});
    REQUIRE(disk.truncate(*file, 1));
    CHECK(disk.size(*file).value() == 1);
    const auto reader = disk.open("/a/b/g", OpenMode::read);
    CHECK(disk.write(*reader, 0, as_bytes(std::string("x"))).error().fault == IoFault::denied);
    CHECK(disk.try_lock(*reader, LockKind::shared).value());
    CHECK_FALSE(disk.try_lock(*file, LockKind::exclusive).value());
    disk.close(*reader);
    CHECK(disk.try_lock(*file, LockKind::exclusive).value());
    disk.put("/h", Bytes{1});
    CHECK(disk.rename_new("/h", "/a/b/g").error().fault == IoFault::exists);
    CHECK(disk.identity("/h").value() != disk.identity(*file).value());
    REQUIRE(disk.rename("/h", "/a/b/g")); // the open file is another one now
    CHECK(disk.identity("/a/b/g").value() != disk.identity(*file).value());
    CHECK(disk.size(*file).value() == 1);
    REQUIRE(disk.remove("/a/b/g"));
    CHECK(disk.names().empty());
    CHECK(disk.open_files() == 1);
}
