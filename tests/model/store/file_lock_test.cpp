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

TEST_CASE("While a writer holds the lock, others are told which", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("g");
    {
        const auto writer = FileLock::take(files, path, LockKind::exclusive, {0});
        REQUIRE(writer);
        CHECK(text_of(path + ".lock") == "holder " + files.self() + "\n");
        const auto reader = FileLock::take(files, path, LockKind::shared, {40});
        REQUIRE_FALSE(reader);
        CHECK(reader.error().kind == ProblemKind::locked);
        CHECK(reader.error().sentence.find(files.self()) != std::string::npos);
        CHECK(reader.error().place.file == path);
    }
    CHECK(text_of(path + ".lock").empty());
    CHECK(FileLock::take(files, path, LockKind::shared, {0}));
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
        lock->note_suspicion({.from = 4711, .boot_id = "abc", .file = {7, 8}});
    }
    CHECK(text_of(path + ".lock") == "suspect from 4711 boot abc file 7 8\n");
    {
        auto lock = FileLock::take(files, path, LockKind::exclusive, {0});
        REQUIRE(lock);
        REQUIRE(lock->suspicion());
        CHECK(lock->suspicion()->from == 4711);
        CHECK(lock->suspicion()->boot_id == "abc");
        CHECK(lock->suspicion()->file == FileIdentity{7, 8});
        lock->clear_suspicion();
    }
    CHECK_FALSE(FileLock::take(files, path, LockKind::exclusive, {0})->suspicion());
}

TEST_CASE("A suspicion that cannot be read whole is one all the same", "[lock]") {
    const TempFolder folder;
    PosixFileLayer files;
    write_file(folder.file("g.lock"), as_bytes("suspect fr"));
    CHECK(FileLock::take(files, folder.file("g"), LockKind::shared, {0})->suspicion());
    write_file(folder.file("g.lock"), as_bytes("something else"));
    CHECK_FALSE(FileLock::take(files, folder.file("g"), LockKind::shared, {0})->suspicion());
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
        CHECK(text_of(path + ".lock") == "holder " + files.self() + "\n");
        CHECK(FileLock::take(files, path, LockKind::shared, {0}).error().kind == ProblemKind::locked);
    }
    CHECK(text_of(path + ".lock").empty());
    CHECK(FileLock::take(files, path, LockKind::exclusive, {0}));
}
