// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/frame_set.h"

#include "tests/catch.h"
#include "tests/model/store/example_records.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

ChainId chain(std::uint8_t number) {
    ChainId id;
    id.bytes.fill(number);
    return id;
}

/// A frame whose hash is made up: sets do not look at bytes.
SetFrame frame(std::uint8_t subject, std::uint8_t of_chain, std::uint32_t sequence, std::uint8_t hash,
               std::uint8_t shown = 7) {
    SetFrame frame;
    frame.header.subject = subject_of(subject);
    frame.header.chain = chain(of_chain);
    frame.header.sequence = sequence;
    frame.header.parts_exist = 7;
    frame.hash.fill(hash);
    frame.shown = shown;
    frame.copies = {{nullptr, hash, 100, shown}};
    return frame;
}

FrameSet set_of(const std::vector<SetFrame>& frames, const std::vector<FingerprintRecord>& records = {}) {
    return FrameSet::of(subject_of(9), frames, records, {}).value();
}

FingerprintLeaf leaf(std::uint8_t subject, bool bare = false) {
    std::vector<ChainHead> heads{{chain(subject), 3, Hash256{}}};
    FingerprintLeaf leaf{leaf_hash(subject_of(subject), heads), subject_of(subject), heads};
    if (bare) leaf = {leaf.leaf, {}, {}};
    return leaf;
}

FingerprintRecord record(std::vector<FingerprintLeaf> leaves) {
    std::ranges::sort(leaves, {}, &FingerprintLeaf::leaf);
    FingerprintRecord record;
    record.printed = {77};
    record.entries = 12;
    record.leaves = std::move(leaves);
    return record;
}

std::vector<int> hashes(const FrameSet& set) {
    std::vector<int> hashes;
    for (const auto& frame : set.frames())
        hashes.push_back(frame.hash[0]);
    return hashes;
}

} // namespace

TEST_CASE("Canonical order is subject, chain, sequence, hash", "[frame set]") {
    const auto set = set_of({frame(2, 1, 0, 10), frame(1, 4, 1, 9), frame(1, 4, 0, 20), frame(1, 3, 7, 30),
                             frame(1, 4, 1, 8), frame(1, 4, 0, 20)});
    CHECK(hashes(set) == std::vector<int>{30, 20, 8, 9, 10});
}

TEST_CASE("Of every frame the union shows what any file shows", "[frame set]") {
    auto set = set_of({frame(1, 1, 0, 1, 1), frame(1, 1, 1, 2, 7), frame(1, 1, 2, 3, 1 | 2)});
    REQUIRE(set.unite(set_of({frame(1, 1, 0, 1, 7), frame(1, 1, 1, 2, 1), frame(1, 1, 2, 3, 1 | 4)})));
    for (const auto& frame : set.frames())
        CHECK(frame.shown == 7);
    CHECK(set.frames()[0].copies.size() == 1);
    CHECK(set.frames()[1].copies.size() == 1);
    CHECK(set.frames()[2].copies.size() == 2);
}

TEST_CASE("Another garage, or a chain of two subjects, is refused and changes nothing", "[frame set]") {
    auto set = set_of({frame(1, 1, 0, 1)});
    const auto other_garage = FrameSet::of(subject_of(8), {frame(1, 2, 0, 2)}, {}, {}).value();
    const auto refused = set.unite(other_garage);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().kind == ProblemKind::refused);
    CHECK_FALSE(set.unite(set_of({frame(2, 1, 1, 2)})));
    CHECK_FALSE(set.adopt(set_of({frame(2, 1, 1, 2)}), {subject_of(2)}));
    CHECK(hashes(set) == std::vector<int>{1});
    CHECK_FALSE(FrameSet::of(subject_of(9), {frame(1, 1, 0, 1), frame(2, 1, 1, 2)}, {}, {}));
}

TEST_CASE("Only chosen subjects are adopted, with all fingerprint records", "[frame set]") {
    auto set = set_of({frame(1, 1, 0, 1)});
    const auto other =
        FrameSet::of(subject_of(8), {frame(3, 3, 0, 3), frame(4, 4, 0, 4)}, {record({leaf(3)})}, {}).value();
    REQUIRE(set.adopt(other, {subject_of(4)}));
    CHECK(hashes(set) == std::vector<int>{1, 4});
    CHECK(set.garage() == subject_of(9));
    CHECK(set.fingerprint_count() == 1);
}

TEST_CASE("What two files know of the leaves of one fingerprint is put together", "[frame set]") {
    auto set = set_of({}, {record({leaf(1), leaf(2, true), leaf(3, true)})});
    REQUIRE(set.unite(set_of({}, {record({leaf(1, true), leaf(2), leaf(3, true)})})));
    REQUIRE(set.fingerprint_count() == 1);
    CHECK(set.fingerprints().front() == record({leaf(1), leaf(2), leaf(3, true)}));
    auto later = record({leaf(1)});
    later.printed = {78};
    REQUIRE(set.unite(set_of({}, {later, record({leaf(1)})})));
    CHECK(set.fingerprint_count() == 3); // other leaves or another time: another record
}

TEST_CASE("A hand-over holds one subject and only its heads", "[frame set]") {
    const auto set = set_of({frame(1, 1, 0, 1), frame(2, 2, 0, 2)}, {record({leaf(1), leaf(2)})});
    const auto given = set.hand_over(subject_of(2), 2 | 4);
    CHECK(hashes(given) == std::vector<int>{2});
    CHECK(given.frames().front().shown == 1);
    CHECK(given.garage() == set.garage());
    CHECK(given.fingerprints().front() == record({leaf(1, true), leaf(2)}));
    CHECK(given.fingerprints().front().fingerprint() == set.fingerprints().front().fingerprint());
}

TEST_CASE("Time stamps go with their fingerprint into unions and hand-overs, each once", "[frame set]") {
    auto stamped = record({leaf(1), leaf(2)});
    stamped.time_stamp = {1, 2, 3};
    auto other = record({leaf(1, true), leaf(2)});
    other.time_stamp = {4};
    auto set = set_of({frame(1, 1, 0, 1)}, {record({leaf(1), leaf(2)}), stamped});
    REQUIRE(set.unite(set_of({}, {other, stamped})));
    CHECK(set.fingerprint_count() == 3);
    std::vector<Bytes> kept;
    for (const auto& given : set.hand_over(subject_of(1), 0).fingerprints()) {
        CHECK(given.fingerprint() == stamped.fingerprint());
        kept.push_back(given.time_stamp);
    }
    std::ranges::sort(kept);
    CHECK(kept == std::vector<Bytes>{{}, {1, 2, 3}, {4}});
}

TEST_CASE("A set knows its chains", "[frame set]") {
    auto second = frame(1, 1, 1, 2);
    second.header.previous.fill(1);
    const auto set = set_of({second, frame(1, 1, 0, 1), frame(2, 2, 4, 3)});
    const auto index = set.chains();
    REQUIRE(index.chains().size() == 2);
    CHECK(index.chains().at(chain(1)).missing == 0);
    CHECK(index.chains().at(chain(2)).missing == 1);
    REQUIRE(set.find(second) != nullptr);
    CHECK(set.find(second)->hash == second.hash);
    CHECK(set.find(frame(1, 1, 1, 7)) == nullptr);
}
