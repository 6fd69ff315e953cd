// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/tail.h"

#include "tests/catch.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/meddling_files.h"
#include "tests/model/store/temp_folder.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

const Bytes all{1, 2, 3, 4, 5, 6, 7};
const Bytes kept{1, 2, 3};
const Bytes cut{4, 5, 6, 7};

namespace fs = std::filesystem;

fs::perms permissions(const std::string& path) { return fs::status(path).permissions(); }

} // namespace

TEST_CASE("Cut bytes are kept in a file of their own, under the next free number", "[tail]") {
    const TempFolder folder;
    FailingFiles files({.only = {}});
    const auto path = folder.file("g");
    for (const auto* name : {"g.cut-1", "g.cut-2"}) {
        write_file(path, all);
        const auto file = open_file(files, path, OpenMode::read_write);
        REQUIRE(file);
        CHECK(set_tail_aside(*file, path, 3, 7).value() == folder.file(name));
        CHECK(bytes_of_file(path) == kept);
        CHECK(bytes_of_file(folder.file(name)) == cut);
    }
}

TEST_CASE("Nothing is cut before its copy is safe, whatever fails", "[tail]") {
    int fail_at = 0;
    for (int failures = 1; failures > 0;) {
        const TempFolder folder;
        const auto path = folder.file("g");
        write_file(path, all);
        FailingFiles files({.fail_at = ++fail_at, .from_then_on = true, .only = {}});
        PosixFileLayer real;
        // The file itself is open already, under a handle that the failing layer passes on.
        const OpenFile file(files, real.open(path, OpenMode::read_write).value());
        const auto done = set_tail_aside(file, path, 3, 7);
        failures = files.failures();
        CHECK(done.has_value() == (failures == 0));
        CHECK(bytes_of_file(path) == (done ? kept : all));
        if (!done) CHECK(done.error().kind == ProblemKind::io);
    }
    CHECK(fail_at > 5);
}

TEST_CASE("A new file is whole and under its name, or not there at all", "[tail]") {
    int fail_at = 0;
    for (;;) {
        const TempFolder folder;
        FailingFiles files({.fail_at = ++fail_at, .only = {}});
        const auto made = make_file(files, folder.file("g"), all);
        if (files.failures() == 0) {
            REQUIRE(made);
            CHECK(bytes_of_file(folder.file("g")) == all);
            CHECK(folder.files() == 1);
            break;
        }
        REQUIRE_FALSE(made);
        CHECK(folder.files() == 0);
    }
    CHECK(fail_at > 4);
}

TEST_CASE("A new file never takes the place of another", "[tail]") {
    const TempFolder folder;
    FailingFiles files({.only = {}});
    write_file(folder.file("g"), kept);
    const auto made = make_file(files, folder.file("g"), all);
    REQUIRE_FALSE(made);
    CHECK(made.error().kind == ProblemKind::refused);
    CHECK(bytes_of_file(folder.file("g")) == kept);
    CHECK(folder.files() == 1);
}

TEST_CASE("Cut bytes are as private as the file they come from, before they are copied", "[tail]") {
    for (const auto mode : {fs::perms{0600}, fs::perms{0640}, fs::perms{0666}}) {
        const TempFolder folder;
        const auto path = folder.file("g"), aside = folder.file("g.cut-1");
        write_file(path, all);
        fs::permissions(path, mode);
        PosixFileLayer real;
        fs::perms at_first{};
        MeddlingFiles files(
            real, [](const FileOperation& operation) { return operation.name == "write"; },
            [&] { at_first = permissions(aside); });
        const auto file = open_file(files, path, OpenMode::read_write);
        REQUIRE(file);
        REQUIRE(set_tail_aside(*file, path, 3, 7));
        CHECK(at_first == mode);
        CHECK(permissions(aside) == mode);
        CHECK(bytes_of_file(aside) == cut);
    }
}

TEST_CASE("A file that is to take the place of another is its owner's until it is told whose", "[tail]") {
    const TempFolder folder;
    const auto path = folder.file("g");
    write_file(path, all);
    PosixFileLayer files;
    const auto fill = [&](const OpenFile& file) -> Result<void> {
        CHECK(permissions(folder.file("g.new-1")) == fs::perms{0600});
        REQUIRE(write_fully(file, 0, kept));
        return {};
    };
    REQUIRE(replace_file(files, path, fill, [](const OpenFile&) { return Result<void>(); }));
    CHECK(bytes_of_file(path) == kept);
}
