// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/file_lock.h"

#include "model/store/hash.h"
#include "model/store/posix_file_layer.h"
#include "tests/catch.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/temp_folder.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

std::string text_of(const std::string& path) {
    const auto bytes = bytes_of_file(path);
    return {bytes.begin(), bytes.end()};
}

} // namespace

TEST_CASE("Readers share the lock and a writer has it alone", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("g");
    {
        const auto one = FileLock::take(files, path, LockKind::shared, {0});
        const auto two = FileLock::take(files, path, LockKind::shared, {0});
        REQUIRE((one && two));
        const auto writer = FileLock::take(files, path, LockKind::exclusive, {40});
        REQUIRE_FALSE(writer);
        CHECK(writer.error().kind == ProblemKind::locked);
        CHECK(writer.error().sentence.find("which is reading it") != std::string::npos);
    }
    CHECK(FileLock::take(files, path, LockKind::exclusive, {0}));
}

TEST_CASE("A lock that is always interrupted is given up", "[lock]") {
    const TempFolder folder;
    FailingFiles files(
        {.fail_at = 1, .from_then_on = true, .fault = IoFault::interrupted, .code = 4, .only = "lock"});
    const auto writer = FileLock::take(files, folder.file("g"), LockKind::exclusive, {0});
    REQUIRE_FALSE(writer);
    CHECK(writer.error().sentence.find("it was interrupted") != std::string::npos);
    CHECK(files.operations() == most_interruptions);
    CHECK(FileLock::take(files, folder.file("g"), LockKind::shared, {0})); // a reader goes on without
}

TEST_CASE("While a writer holds the lock, others are told which", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("g");
    {
        const auto writer = FileLock::take(files, path, LockKind::exclusive, {0});
        REQUIRE(writer);
        CHECK(text_of(path + ".lock") == "boot " + files.boot_id() + " holder " + files.self() + "\n");
        const auto reader = FileLock::take(files, path, LockKind::shared, {40});
        REQUIRE_FALSE(reader);
        CHECK(reader.error().kind == ProblemKind::locked);
        CHECK(reader.error().sentence.find(files.self()) != std::string::npos);
        CHECK(reader.error().place.file == path);
    }
    const auto reader = FileLock::take(files, path, LockKind::shared, {0});
    REQUIRE(reader);
    // The last writer's name still stands there, but it is not the one who is in the way.
    const auto writer = FileLock::take(files, path, LockKind::exclusive, {0});
    CHECK(writer.error().sentence.find("another program, which is reading it") != std::string::npos);
}

TEST_CASE("The lock file is kept open for the next time, as long as it is the one of that name", "[lock]") {
    MemoryDisk disk;
    std::optional<OpenFile> kept;
    const auto take = [&] { return FileLock::take(disk, "/g", LockKind::exclusive, {0}, &kept); };
    {
        REQUIRE(take());
        REQUIRE(kept);
        const auto lock = take();
        REQUIRE(lock);
        CHECK_FALSE(kept);
        CHECK(disk.open_files() == 1);
        CHECK_FALSE(FileLock::take(disk, "/g", LockKind::shared, {0}));
    }
    CHECK(FileLock::take(disk, "/g", LockKind::shared, {0})); // kept open is not kept locked
    const auto handle = kept->handle();
    REQUIRE(take());
    CHECK(kept->handle() == handle);
    REQUIRE(disk.remove("/g.lock"));
    const auto lock = take();
    REQUIRE(lock);
    CHECK_FALSE(FileLock::take(disk, "/g", LockKind::shared, {0})); // it is the new file that is locked
}

TEST_CASE("A writer that cannot see whether the file is suspect does not write", "[lock]") {
    MemoryDisk disk;
    disk.put("/g.lock", as_bytes("boot a suspect from 1 file 1 1 end\n"));
    FailingFiles blind({.fail_at = 1, .from_then_on = true, .only = "read"}, disk);
    CHECK(FileLock::take(blind, "/g", LockKind::exclusive, {0}).error().kind == ProblemKind::io);
}

TEST_CASE("A reader does without a lock where none can be had, a writer does not", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("no such folder/g");
    CHECK(FileLock::take(files, path, LockKind::shared, {0}));
    CHECK(FileLock::take(files, path, LockKind::exclusive, {0}).error().kind == ProblemKind::io);
    FailingFiles no_locks(
        {.fail_at = 1, .from_then_on = true, .fault = IoFault::not_supported, .code = 95, .only = "lock"});
    CHECK(FileLock::take(no_locks, folder.file("g"), LockKind::shared, {0}));
    CHECK(FileLock::take(no_locks, folder.file("g"), LockKind::exclusive, {0}).error().kind ==
          ProblemKind::io);
}

TEST_CASE("A suspicion outlives the lock that noted it", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("g");
    {
        auto lock = FileLock::take(files, path, LockKind::exclusive, {0});
        REQUIRE(lock);
        CHECK_FALSE(lock->suspicion());
        lock->note_suspicion({.from = 4711, .boot_id = {}, .file = {7, 8}});
    }
    CHECK(text_of(path + ".lock") == "boot " + files.boot_id() + " suspect from 4711 file 7 8 end\n");
    {
        auto lock = FileLock::take(files, path, LockKind::exclusive, {0});
        REQUIRE(lock);
        REQUIRE(lock->suspicion());
        CHECK(lock->suspicion()->from == 4711);
        CHECK(lock->suspicion()->boot_id == files.boot_id());
        CHECK(lock->suspicion()->file == FileIdentity{7, 8});
        lock->clear_suspicion();
    }
    CHECK_FALSE(FileLock::take(files, path, LockKind::exclusive, {0})->suspicion());
}

TEST_CASE("A suspicion that was written in part only is one all the same, of a known start", "[lock]") {
    const std::string held = "boot b1 holder process 4711 on garage-pc\n";
    const std::string suspect = "boot b1 suspect from 5 file 7 8 end\n";
    for (std::size_t length = 9; length + 1 < suspect.size(); ++length) {
        MemoryDisk disk;
        disk.put("/g.lock", as_bytes(suspect.substr(0, length) + held.substr(length)));
        const auto lock = FileLock::take(disk, "/g", LockKind::shared, {0});
        REQUIRE(lock->suspicion());
        CHECK_FALSE(lock->suspicion()->whole);
        CHECK(lock->suspicion()->boot_id == "b1");
    }
    for (const std::string text : {"", "boot", "boot b", "something else", held.c_str()}) {
        MemoryDisk disk;
        disk.put("/g.lock", as_bytes(text));
        CHECK_FALSE(FileLock::take(disk, "/g", LockKind::shared, {0})->suspicion());
    }
}

TEST_CASE("A lock that was moved from lets go of nothing", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("g");
    auto taken = FileLock::take(files, path, LockKind::exclusive, {0});
    REQUIRE(taken);
    {
        std::optional<FileLock> moved_from(std::move(*taken));
        const FileLock holder(std::move(*moved_from));
        moved_from.reset(); // its end must neither unlock nor empty the lock file
        CHECK(text_of(path + ".lock") == "boot " + files.boot_id() + " holder " + files.self() + "\n");
        CHECK(FileLock::take(files, path, LockKind::shared, {0}).error().kind == ProblemKind::locked);
    }
    CHECK(FileLock::take(files, path, LockKind::exclusive, {0}));
}

TEST_CASE("A link in the place of the lock file is not followed", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("g"), target = folder.file("letter");
    for (const std::string text : {"", "boot strap", "Dear friend"}) {
        write_file(target, as_bytes(text));
        std::filesystem::remove(path + ".lock");
        std::filesystem::create_symlink(target, path + ".lock");
        const auto writer = FileLock::take(files, path, LockKind::exclusive, {0});
        REQUIRE_FALSE(writer);
        CHECK(writer.error().kind == ProblemKind::refused);
        CHECK(writer.error().sentence.find(path + ".lock") != std::string::npos);
        CHECK(text_of(target) == text);
        CHECK(FileLock::take(files, path, LockKind::shared, {0})); // without one: no writer can have it
        CHECK(text_of(target) == text);
    }
    std::filesystem::remove(target);
    CHECK_FALSE(FileLock::take(files, path, LockKind::exclusive, {0}));
    CHECK(FileLock::take(files, path, LockKind::shared, {0}));
    CHECK_FALSE(std::filesystem::exists(target));
}

TEST_CASE("A file of another kind in the place of the lock file is not written over", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("g");
    const auto take = [&] { return FileLock::take(files, path, LockKind::exclusive, {0}); };
    for (const std::string text : {"Dear friend", "bo", "boots", " boot a", "Boot a holder b"}) {
        write_file(path + ".lock", as_bytes(text));
        const bool is_start = text == "bo";
        const auto writer = take();
        CHECK(writer.has_value() == is_start);
        if (is_start) continue;
        CHECK(writer.error().kind == ProblemKind::refused);
        CHECK(writer.error().place.file == path + ".lock");
        CHECK(text_of(path + ".lock") == text);
    }
    CHECK_FALSE(take());
    for (const std::ptrdiff_t zeros_from : {0, 2, 5}) { // what a power cut makes of one
        std::string text = "boot a holder b\n";
        std::fill(text.begin() + zeros_from, text.end(), '\0');
        write_file(path + ".lock", as_bytes(text));
        CHECK(take());
    }
    write_file(path + ".lock", {});
    CHECK(take());
}
