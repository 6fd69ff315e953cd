// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_copy.h"

#include "tests/catch.h"
#include "tests/model/store/set_bench.h"

using namespace sumpbook;
using namespace sumpbook::store;

TEST_CASE("A copy is read as a set, with what it says", "[garage copy]") {
    SetBench bench;
    bench.example("/g");
    const auto copy = must(read_copy(bench.disk, "/g", at_once));
    const auto garage = bench.open("/g");
    CHECK(copy.set.garage() == garage.subject());
    CHECK(copy.set.frames().size() == garage.index().frames().size());
    CHECK(copy.set.fingerprint_count() == 1);
    CHECK(copy.contents.records().size() == garage.records().size());
    CHECK(copy.contents.records().back().id == garage.records().back().id);
    CHECK(copy.bytes == bench.disk.bytes("/g").size());
    CHECK(copy.mode == 0644);
    CHECK(copy.notices.empty());
    for (const auto& frame : garage.index().frames()) {
        const auto found = std::ranges::find(copy.set.frames(), frame.hash, &SetFrame::hash);
        REQUIRE(found != copy.set.frames().end());
        CHECK(found->copies.front().at == frame.at);
    }
}

TEST_CASE("Others cannot write to a file as long as a set refers to it", "[garage copy]") {
    SetBench bench;
    bench.example("/g");
    {
        const auto copy = must(read_copy(bench.disk, "/g", at_once));
        const auto second = read_copy(bench.disk, "/g", at_once);
        CHECK(second);
        auto garage = bench.open("/g");
        const auto appended = garage.append({{subject_of(1), fuel_record(9)}});
        REQUIRE_FALSE(appended);
        CHECK(appended.error().kind == ProblemKind::locked);
    }
    CHECK(bench.disk.open_files() == 0);
    bench.add("/g", subject_of(1), 9);
}

TEST_CASE("A copy that is damaged anywhere is refused, attachments included", "[garage copy]") {
    SetBench bench;
    bench.example("/g");
    const auto good = bench.disk.bytes("/g");
    std::size_t taken = 0;
    for (std::size_t at = 0; at < good.size(); ++at) {
        auto bad = good;
        bad[at] ^= 0x10;
        bench.disk.put("/bad", bad);
        const auto copy = read_copy(bench.disk, "/bad", at_once);
        if (copy || copy.error().kind != ProblemKind::damaged) ++taken;
    }
    CHECK(taken == 0);
}

TEST_CASE("A save that was cut short is left out of a copy, with a notice", "[garage copy]") {
    SetBench bench;
    bench.example("/g");
    const auto before = must(read_copy(bench.disk, "/g", at_once)).set.frames().size();
    bench.add("/g", subject_of(1), 9);
    auto bytes = bench.disk.bytes("/g");
    bytes.resize(bytes.size() - 20);
    bench.disk.put("/torn", bytes);
    const auto copy = must(read_copy(bench.disk, "/torn", at_once));
    CHECK(copy.set.frames().size() == before);
    CHECK(copy.notices.size() == 1);
}

TEST_CASE("A file that is not there, or of another kind, is told", "[garage copy]") {
    SetBench bench;
    const auto gone = read_copy(bench.disk, "/gone", at_once);
    REQUIRE_FALSE(gone);
    CHECK(gone.error().kind == ProblemKind::io);
    bench.disk.put("/text", Bytes(100, 'x'));
    const auto text = read_copy(bench.disk, "/text", at_once);
    REQUIRE_FALSE(text);
    CHECK(text.error().kind == ProblemKind::damaged);
}
