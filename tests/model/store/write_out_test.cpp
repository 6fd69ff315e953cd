// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/write_out.h"

#include "model/store/action.h"
#include "model/store/garage_copy.h"
#include "tests/catch.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/set_bench.h"

#include <clocale>
#include <locale>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// A locale in which numbers would look different.
class Commas : public std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

} // namespace

TEST_CASE("Canonical: equal sets give equal bytes, in whatever order and locale they were read", "[write out]") {
    SetBench bench;
    bench.example("/a");
    bench.copy("/a", "/b");
    bench.add("/a", subject_of(1), 5);
    bench.add("/b", subject_of(2), 6);
    bench.add("/b", subject_of(1), 7);
    const auto bytes = bench.merged({"/a", "/b"});
    const std::locale before = std::locale::global(std::locale(std::locale::classic(), new Commas));
    const auto other = bench.merged({"/b", "/a", "/b"});
    std::locale::global(before);
    CHECK(other == bytes);
    // One frame an action.
    bench.disk.put("/canonical", bytes);
    const auto garage = bench.open("/canonical");
    std::size_t actions = 0;
    for (std::size_t at = file_header_bytes; at < bytes.size(); ++actions) {
        const auto header = read_action_header(ByteView(bytes).subspan(at));
        REQUIRE(header);
        CHECK(header->frame_count == (header->kind == ActionKind::frames ? 1U : 0U));
        at += header->length;
    }
    CHECK(actions == garage.index().frames().size() + 1);
}

TEST_CASE("A file that is there is never replaced", "[write out]") {
    SetBench bench;
    bench.example("/a");
    bench.disk.put("/out", Bytes{1, 2, 3});
    const auto copy = must(read_copy(bench.disk, "/a", at_once));
    const auto written = write_out(bench.disk, copy.set, "/out");
    REQUIRE_FALSE(written);
    CHECK(written.error().kind == ProblemKind::refused);
    CHECK(bench.disk.bytes("/out") == Bytes{1, 2, 3});
}

TEST_CASE("Permissions are those asked for", "[write out]") {
    SetBench bench;
    bench.example("/a");
    const auto copy = must(read_copy(bench.disk, "/a", at_once));
    REQUIRE(write_out(bench.disk, copy.set, "/private", 0600));
    REQUIRE(write_out(bench.disk, copy.set, "/usual"));
    CHECK(must(read_copy(bench.disk, "/private", at_once)).mode == 0600);
    CHECK(must(read_copy(bench.disk, "/usual", at_once)).mode == 0644);
}

TEST_CASE("Whatever fails while a file is written out, it is whole or not there", "[write out]") {
    SetBench bench;
    bench.example("/a");
    const auto good = bench.merged({"/a"});
    int fail_at = 0;
    for (int failures = 1; failures > 0;) {
        MemoryDisk disk(bench.disk);
        FailingFiles files({.fail_at = ++fail_at, .only = {}}, disk);
        const auto copy = read_copy(files, "/a", at_once);
        const auto written =
            copy ? write_out(files, copy->set, "/out", 0600) : Result<WrittenOut>(pass_on(copy.error()));
        failures = files.failures();
        CHECK(written.has_value() == disk.identity("/out").has_value());
        if (written) CHECK(disk.bytes("/out") == good);
        if (failures == 0) CHECK(written);
    }
    CHECK(fail_at > 10);
}

TEST_CASE("A file that changes between reading and writing is noticed", "[write out]") {
    SetBench bench;
    bench.example("/a");
    const auto good = bench.disk.bytes("/a");
    std::size_t unnoticed = 0;
    for (std::size_t at = file_header_bytes; at < good.size(); at += 7) {
        bench.disk.put("/b", good);
        const auto copy = must(read_copy(bench.disk, "/b", at_once));
        const auto file = must(open_source(bench.disk, "/b", at_once));
        const auto handle = bench.disk.open("/b", OpenMode::read_write);
        REQUIRE(handle);
        const Bytes other{static_cast<std::uint8_t>(good[at] ^ 1)};
        REQUIRE(bench.disk.write(*handle, at, other));
        bench.disk.close(*handle);
        const auto written = write_out(bench.disk, copy.set, "/out");
        if (!written) {
            CHECK_FALSE(bench.disk.identity("/out"));
        } else {
            // Only what is not copied may change: headings of actions, the fingerprint record kept in memory.
            if (bench.disk.bytes("/out") != bench.merged({"/a"})) ++unnoticed;
            REQUIRE(bench.disk.remove("/out"));
        }
    }
    CHECK(unnoticed == 0);
}
