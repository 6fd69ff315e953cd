// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/merge.h"

#include "tests/catch.h"
#include "tests/model/store/set_bench.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

const MergedChain* with_news(const MergePlan& plan) {
    const auto found =
        std::ranges::find_if(plan.chains, [](const MergedChain& chain) { return chain.new_frames > 0; });
    return found == plan.chains.end() ? nullptr : &*found;
}

} // namespace

TEST_CASE("A merge says first how many frames come from which chain", "[merge]") {
    SetBench bench;
    bench.example("/a");
    bench.copy("/a", "/b"); // another computer: it begins chains of its own
    bench.add("/b", subject_of(1), 5);
    bench.add("/b", subject_of(1), 6);
    bench.print("/b");
    const auto plan = must(plan_merge(bench.disk, {"/a", "/b"}, at_once));
    CHECK(plan.new_frames() == 2);
    CHECK(plan.new_entries() == 2);
    CHECK(plan.fingerprints == 2);
    CHECK(plan.new_fingerprints == 1);
    CHECK(plan.brings_news());
    const auto* chain = with_news(plan);
    REQUIRE(chain != nullptr);
    CHECK(chain->bike == "Red");
    CHECK(chain->subject == subject_of(1));
    CHECK(chain->frames == 2);
    CHECK_FALSE(chain->forked);
    CHECK_FALSE(chain->gap);
    CHECK_FALSE(bench.disk.identity("/out")); // nothing is written by a plan
    const auto other_way = must(plan_merge(bench.disk, {"/b", "/a"}, at_once));
    CHECK(other_way.new_frames() == 0);
    CHECK_FALSE(other_way.brings_news());
}

TEST_CASE("A cloned computer's chain is told as forked", "[merge]") {
    SetBench bench;
    bench.example("/a");
    bench.copy("/a", "/b");
    const auto notes = chain_notes_path("/state/a", bench.open("/a").subject());
    bench.disk.put(chain_notes_path("/state/b", bench.open("/a").subject()), bench.disk.bytes(notes));
    bench.add("/a", subject_of(1), 5);
    bench.add("/b", subject_of(1), 6);
    const auto plan = must(plan_merge(bench.disk, {"/a", "/b"}, at_once));
    const auto* chain = with_news(plan);
    REQUIRE(chain != nullptr);
    CHECK(chain->forked);
    CHECK(chain->new_entries == 1);
}

TEST_CASE("Copies of different garages are not merged", "[merge]") {
    SetBench bench;
    bench.example("/a");
    bench.example("/b");
    const auto plan = plan_merge(bench.disk, {"/a", "/b"}, at_once);
    REQUIRE_FALSE(plan);
    CHECK(plan.error().kind == ProblemKind::refused);
    CHECK(plan.error().place.file == "/b");
    CHECK_FALSE(plan_merge(bench.disk, {}, at_once));
}

TEST_CASE("A bike of another garage is adopted with its history and its fingerprints", "[merge]") {
    SetBench bench;
    bench.example("/mine");
    bench.create("/theirs");
    bench.name_bike("/theirs", subject_of(5), "Green");
    bench.add("/theirs", subject_of(5), 1);
    bench.name_bike("/theirs", subject_of(6), "Grey");
    bench.print("/theirs");
    const auto plan = must(plan_adoption(bench.disk, "/mine", "/theirs", {"Green"}, at_once));
    CHECK(plan.new_frames() == 2);
    CHECK(plan.new_fingerprints == 1);
    REQUIRE(write_out(bench.disk, plan.set, "/out"));
    const auto garage = bench.open("/out");
    CHECK(garage.subject() == bench.open("/mine").subject());
    const auto of = [&](const SubjectId& subject) {
        return std::ranges::count(garage.records(), subject, &NamedRecord::subject);
    };
    CHECK(of(subject_of(5)) == 2);
    CHECK(of(subject_of(6)) == 0);
    CHECK(of(garage.subject()) == 1); // their settings stay theirs
    CHECK(of(subject_of(1)) == std::ranges::count(bench.open("/mine").records(), subject_of(1),
                                                  &NamedRecord::subject));
}

TEST_CASE("Only bikes that are there are adopted, and only from another garage", "[merge]") {
    SetBench bench;
    bench.example("/mine");
    bench.example("/theirs");
    const auto unknown = plan_adoption(bench.disk, "/mine", "/theirs", {"Purple"}, at_once);
    REQUIRE_FALSE(unknown);
    CHECK(unknown.error().sentence.find("Red, Blue") != std::string::npos);
    bench.copy("/mine", "/copy");
    CHECK_FALSE(plan_adoption(bench.disk, "/mine", "/copy", {"Red"}, at_once));
}
