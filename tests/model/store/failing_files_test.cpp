// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/failing_files.h"

#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// What a new reader finds, with nothing failing.
Result<GarageFile> reopen(Bench& bench, FailingFiles& healthy) {
    return GarageFile::open(bench.around(healthy), bench.path(), ScanDepth::everything);
}

bool mentions(const Problem& problem, std::string_view words) {
    return problem.sentence.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("A full disk says so", "[faults]") {
    Bench bench;
    make_example(bench);
    const auto before = bench.bytes();
    {
        // The lock file names this program already, so the first write is the notes, the second the action.
        FailingFiles full(
            {.fail_at = 2, .from_then_on = true, .fault = IoFault::no_space, .code = 28, .only = "write"});
        auto garage = GarageFile::open(bench.around(full), bench.path());
        REQUIRE(garage);
        const auto appended = garage->append({{subject_of(1), fuel_record(7)}});
        REQUIRE_FALSE(appended);
        CHECK(mentions(appended.error(), "the disk is full"));
        CHECK(mentions(appended.error(), "nothing was changed"));
        CHECK(bench.bytes() == before);
    }
    FailingFiles healthy({.only = {}});
    auto again = reopen(bench, healthy);
    REQUIRE(again);
    CHECK(again->append({{subject_of(1), fuel_record(7)}})); // once there is room
    CHECK(again->index().chains().size() == 3);              // in the same chains
    Bench another(
        {.fail_at = 1, .from_then_on = true, .fault = IoFault::no_space, .code = 28, .only = "write"});
    CHECK(mentions(another.create().error(), "the disk is full"));
    CHECK(another.folder.files() == 0);
}
