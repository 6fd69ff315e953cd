// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/file_layer.h"

#include "model/store/hash.h"
#include "model/store/posix_file_layer.h"
#include "tests/catch.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/temp_folder.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Bytes bytes_of(std::string_view text) { return {as_bytes(text).begin(), as_bytes(text).end()}; }

} // namespace

TEST_CASE("Files are made, read, written, cut and renamed", "[files]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("a");
    {
        const auto file = open_file(files, path, OpenMode::create_new);
        REQUIRE(file);
        REQUIRE(write_fully(*file, 0, as_bytes("hello world")));
        REQUIRE(files.sync(file->handle()));
        REQUIRE(files.truncate(file->handle(), 5));
        CHECK(files.size(file->handle()).value() == 5);
        CHECK(files.identity(file->handle()).value() == files.identity(path).value());
        Bytes read(9);
        CHECK(read_fully(*file, 1, read).value() == 4);
    }
    CHECK(bytes_of_file(path) == bytes_of("hello"));
    CHECK(open_file(files, path, OpenMode::create_new).error().fault == IoFault::exists);
    REQUIRE(files.rename_new(path, folder.file("b")));
    write_file(path, as_bytes("other"));
    CHECK(files.rename_new(path, folder.file("b")).error().fault == IoFault::exists);
    CHECK(bytes_of_file(folder.file("b")) == bytes_of("hello"));
    REQUIRE(files.rename(path, folder.file("b")));
    CHECK(bytes_of_file(folder.file("b")) == bytes_of("other"));
    REQUIRE(files.sync_folder(folder_of(path)));
    REQUIRE(files.remove(folder.file("b")));
    CHECK(open_file(files, folder.file("b"), OpenMode::read).error().fault == IoFault::not_found);
    CHECK(read_text(files, "/proc/self/no such thing", 10).error().fault == IoFault::not_found);
    CHECK_FALSE(files.sync_folder(folder.file("nowhere")));
}

TEST_CASE("A private file is for its owner's eyes, from its first moment", "[file-layer]") {
    namespace fs = std::filesystem;
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = folder.file("key");
    const auto file = open_file(files, path, OpenMode::create_private);
    REQUIRE(file);
    CHECK(fs::status(path).permissions() == (fs::perms::owner_read | fs::perms::owner_write));
    REQUIRE(write_fully(*file, 0, as_bytes("secret")));
    CHECK(open_file(files, path, OpenMode::create_private).error().fault == IoFault::exists);
    CHECK(bytes_of_file(path).size() == 6);
}

TEST_CASE("Folders are made with those above them", "[files]") {
    const TempFolder folder;
    PosixFileLayer files;
    REQUIRE(files.make_folders(folder.file("x/y/z")));
    REQUIRE(files.make_folders(folder.file("x/y/z")));
    REQUIRE(files.identity(folder.file("x/y/z")));
    write_file(folder.file("f"), {});
    CHECK_FALSE(files.make_folders(folder.file("f/g")));
}

TEST_CASE("Locks exclude each other, also within one program", "[files]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto first = open_file(files, folder.file("l"), OpenMode::read_write_or_create);
    const auto second = open_file(files, folder.file("l"), OpenMode::read);
    REQUIRE((first && second));
    CHECK(files.try_lock(first->handle(), LockKind::shared).value());
    CHECK(files.try_lock(second->handle(), LockKind::shared).value());
    CHECK_FALSE(files.try_lock(second->handle(), LockKind::exclusive).value());
    files.unlock(first->handle());
    CHECK(files.try_lock(second->handle(), LockKind::exclusive).value());
    CHECK_FALSE(files.try_lock(first->handle(), LockKind::shared).value());
}

TEST_CASE("Interrupted and short operations are carried on", "[files]") {
    const TempFolder folder;
    FailingFiles files({.interrupt_first = true, .most_at_once = 3, .only = {}});
    const auto file = open_file(files, folder.file("a"), OpenMode::create_new);
    REQUIRE(file);
    REQUIRE(write_fully(*file, 0, as_bytes("a longer text")));
    Bytes read(13);
    CHECK(read_fully(*file, 0, read).value() == 13);
    CHECK(read == bytes_of("a longer text"));
    CHECK(read_text(files, folder.file("a"), 8).value() == "a longer");
}

TEST_CASE("What is always interrupted is given up", "[files]") {
    const TempFolder folder;
    write_file(folder.file("a"), as_bytes(std::string("text")));
    for (const std::string name : {"open", "read", "write"}) {
        FailingFiles files(
            {.fail_at = 1, .from_then_on = true, .fault = IoFault::interrupted, .code = 4, .only = name});
        const auto file = open_file(files, folder.file("a"), OpenMode::read_write);
        CHECK(file.has_value() == (name != "open"));
        Bytes read(4);
        if (name == "open") CHECK(file.error().fault == IoFault::interrupted);
        if (name == "read") CHECK(read_fully(*file, 0, read).error().fault == IoFault::interrupted);
        if (name == "write")
            CHECK(write_fully(*file, 0, as_bytes("more")).error().fault == IoFault::interrupted);
        CHECK(files.operations() == most_interruptions);
    }
    CHECK(bytes_of_file(folder.file("a")) == bytes_of("text"));
}

TEST_CASE("Failures are told in words", "[files]") {
    CHECK(reason_of({IoFault::no_space, 28}) == "the disk is full");
    CHECK(reason_of({IoFault::denied, 13}) == "permission is missing");
    CHECK(reason_of({IoFault::read_only, 30}) == "the disk can only be read");
    CHECK(reason_of({IoFault::other, 5}).find("error 5") != std::string::npos);
    const auto problem = io_problem("/a/b", "read", {IoFault::not_found, 2});
    CHECK(problem.kind == ProblemKind::io);
    CHECK(problem.place.file == "/a/b");
    CHECK(problem.sentence == "The garage file could not be read: there is no such file or folder.");
    CHECK(folder_of("/a/b") == "/a");
    CHECK(folder_of("/b") == "/");
    CHECK(folder_of("b") == ".");
}

TEST_CASE("The machine says when it was started and who is asking", "[files]") {
    PosixFileLayer files;
    CHECK(files.boot_id().size() == 36);
    CHECK(files.boot_id() == files.boot_id());
    CHECK(files.self().starts_with("process "));
}

TEST_CASE("A link is followed to the name of the file itself", "[files]") {
    namespace fs = std::filesystem;
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = fs::canonical(folder.file(".")).string() + "/a";
    write_file(path, as_bytes("hello"));
    fs::create_symlink("a", folder.file("b"));
    fs::create_symlink(folder.file("b"), folder.file("c"));
    fs::create_symlink("nowhere", folder.file("d"));
    CHECK(files.real_path(folder.file("a")).value() == folder.file("a")); // as it was given
    CHECK(files.real_path(folder.file("not there")).value() == folder.file("not there"));
    CHECK(files.real_path(folder.file("b")).value() == path);
    CHECK(files.real_path(folder.file("c")).value() == path);
    CHECK(files.real_path(folder.file("d")).error().fault == IoFault::not_found);
    for (const auto mode : {OpenMode::read_no_link, OpenMode::read_write_or_create_no_link}) {
        CHECK(open_file(files, folder.file("a"), mode));
        CHECK(open_file(files, folder.file("b"), mode).error().fault == IoFault::is_link);
        CHECK(open_file(files, folder.file("d"), mode).error().fault == IoFault::is_link);
    }
}

TEST_CASE("Only a disk that cannot sync folders is excused from it", "[files]") {
    const TempFolder folder;
    for (const auto& [fault, code] : {std::pair(IoFault::not_supported, 22), std::pair(IoFault::other, 5)}) {
        FailingFiles files({.fail_at = 1, .fault = fault, .code = code, .only = "sync folder"});
        CHECK(sync_folder_of(files, folder.file("a")).has_value() == (fault == IoFault::not_supported));
        CHECK(sync_folder_of(files, folder.file("a")));
    }
}
