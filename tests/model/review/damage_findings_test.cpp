// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/damage_findings.h"

#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::review;
using namespace sumpbook::store;

TEST_CASE("A damaged frame is named by its bytes, and as missing where others build on it") {
    Bench bench;
    const auto garage = make_example(bench);
    const auto& frames = garage.index().frames();
    const auto broken =
        std::ranges::find_if(frames, [](const IndexedFrame& f) { return f.has_child && f.entry_count > 0; });
    REQUIRE(broken != frames.end());
    auto bytes = bench.bytes();
    bytes[broken->at + frame_unhashed_bytes + frame_header_bytes + part_overhead_bytes] ^= 1;
    write_file(bench.path(), bytes);
    REQUIRE(bench.open().error().kind == ProblemKind::damaged);
    const auto plan = plan_recovery(bench.files, bench.random, bench.path(), Patience{0});
    REQUIRE(plan);
    const auto findings = damage_findings(*plan);
    REQUIRE(findings.size() == 2);
    CHECK(findings[0].id == "frame-damaged");
    CHECK(findings[0].severity == Severity::serious);
    CHECK(findings[0].sentence.starts_with("Bytes "));
    CHECK(findings[1].id == "frame-missing");
}

TEST_CASE("A damaged header is a finding of its own") {
    Bench bench;
    static_cast<void>(make_example(bench));
    auto bytes = bench.bytes();
    bytes[20] ^= 1; // of the garage's id
    write_file(bench.path(), bytes);
    const auto plan = plan_recovery(bench.files, bench.random, bench.path(), Patience{0});
    REQUIRE(plan);
    CHECK(plan->garage != GarageKnown::header);
    const auto findings = damage_findings(*plan);
    REQUIRE_FALSE(findings.empty());
    CHECK(findings[0].id == "header-damaged");
}
