// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/subject_states.h"

#include "tests/catch.h"
#include "tests/model/store/example_records.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Hash256 hash_of(std::uint8_t number) {
    Hash256 hash;
    hash.fill(number);
    return hash;
}

ChainHead head(std::uint8_t chain, std::uint32_t sequence, std::uint8_t hash) {
    ChainHead made{.chain = {}, .sequence = sequence, .hash = hash_of(hash)};
    made.chain.bytes.fill(chain);
    return made;
}

/// One subject with chain 1: 11, 12 and then either 13 or 14, 15; and chain 2: 21, 22.
ChainIndex forked_and_two_chains() {
    ChainIndex index;
    const auto add = [&](std::uint8_t chain, std::uint32_t sequence, std::uint8_t hash,
                         std::uint8_t previous) {
        FrameHeader header;
        IndexedFrame frame;
        header.subject = subject_of(1);
        header.chain.bytes.fill(chain);
        header.sequence = sequence;
        if (sequence > 0) header.previous = hash_of(previous);
        frame.hash = hash_of(hash);
        REQUIRE(index.add(header, frame) == nullptr);
    };
    add(1, 0, 11, 0);
    add(1, 1, 12, 11);
    add(1, 2, 13, 12);
    add(1, 2, 14, 12);
    add(1, 3, 15, 14);
    add(2, 0, 21, 0);
    add(2, 1, 22, 21);
    return index;
}

bool had(const ChainIndex& index, std::vector<ChainHead> heads, std::size_t most_states = 1000) {
    const auto leaf = leaf_hash(subject_of(1), heads);
    const auto frames = frames_by_subject(index).at(subject_of(1));
    const auto search = state_with_leaf(index, frames, {hash_of(99), leaf}, most_states);
    if (search.found) CHECK(*search.found == FingerprintLeaf{leaf, subject_of(1), heads});
    CHECK(search.all == (most_states >= 1000)); // there are 24 of them
    return search.found.has_value();
}

} // namespace

TEST_CASE("Every state a subject can have had is found", "[fingerprint]") {
    const auto index = forked_and_two_chains();
    CHECK(had(index, {head(1, 0, 11)}));
    CHECK(had(index, {head(1, 1, 12)}));
    CHECK(had(index, {head(1, 2, 13)}));
    CHECK(had(index, {head(1, 3, 15)}));
    CHECK(had(index, {head(1, 2, 13), head(1, 2, 14)}));
    CHECK(had(index, {head(1, 2, 13), head(1, 3, 15)}));
    CHECK(had(index, {head(2, 0, 21)}));
    CHECK(had(index, {head(1, 1, 12), head(2, 1, 22)}));
    CHECK(had(index, {head(1, 2, 13), head(1, 3, 15), head(2, 1, 22)}));
}

TEST_CASE("A state that a subject cannot have had is not found", "[fingerprint]") {
    const auto index = forked_and_two_chains();
    CHECK_FALSE(had(index, {}));
    CHECK_FALSE(had(index, {head(1, 0, 11), head(1, 1, 12)})); // the one follows the other
    CHECK_FALSE(had(index, {head(1, 2, 14), head(1, 3, 15)}));
    CHECK_FALSE(had(index, {head(1, 4, 16)}));
    CHECK_FALSE(had(index, {head(1, 3, 13)}));
}

TEST_CASE("Where the states are too many, those are tried through which the file grew", "[fingerprint]") {
    const auto index = forked_and_two_chains();
    CHECK(had(index, {head(1, 2, 13), head(1, 2, 14)}, 3));
    CHECK(had(index, {head(1, 2, 13), head(1, 3, 15), head(2, 0, 21)}, 3));
    CHECK_FALSE(had(index, {head(1, 3, 15)}, 3)); // was a state only in another copy
}
