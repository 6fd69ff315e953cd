// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/chain_index.h"

#include "tests/catch.h"
#include "tests/model/store/example_records.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

ChainId chain_of(std::uint8_t first, std::uint8_t second = 0) {
    ChainId chain;
    chain.bytes[0] = first;
    chain.bytes[1] = second;
    return chain;
}

Hash256 hash_of(std::uint8_t number) {
    Hash256 hash;
    hash.fill(number);
    return hash;
}

struct Numbered {
    FrameHeader header;
    IndexedFrame place;
};

Numbered frame(std::uint8_t hash, std::uint32_t sequence, std::uint8_t previous,
                   std::uint32_t entries = 1, ChainId chain = chain_of(0)) {
    FrameHeader header;
    header.subject = subject_of(1);
    header.chain = chain;
    header.sequence = sequence;
    header.entry_count = entries;
    if (sequence > 0) header.previous = hash_of(previous);
    IndexedFrame place;
    place.hash = hash_of(hash);
    return {header, place};
}

FrameFault add(ChainIndex& index, const Numbered& frame) { return index.add(frame.header, frame.place); }

std::vector<std::string> ids(const ChainIndex& index) {
    std::vector<std::string> ids;
    for (const auto& each : index.frames())
        ids.push_back(index.entry_id(each, 0));
    return ids;
}

std::vector<std::uint8_t> heads(const ChainIndex& index, ChainId chain = chain_of(0)) {
    std::vector<std::uint8_t> heads;
    for (const auto* head : index.heads(*index.find(chain)))
        heads.push_back(head->hash[0]);
    return heads;
}

} // namespace

TEST_CASE("Entries are counted along their chain", "[chains]") {
    ChainIndex index;
    REQUIRE(add(index, frame(1, 0, 0, 3)) == nullptr);
    REQUIRE(add(index, frame(2, 1, 1, 1)) == nullptr);
    REQUIRE(add(index, frame(3, 2, 2, 2)) == nullptr);
    CHECK(ids(index) == std::vector<std::string>{"00-1", "00-4", "00-5"});
    CHECK(index.entry_id(index.frames()[0], 2) == "00-3");
    CHECK(heads(index) == std::vector<std::uint8_t>{3});
    CHECK(index.findings().empty());
}

TEST_CASE("A fork keeps both sides and tells their entries apart", "[chains]") {
    ChainIndex index;
    REQUIRE(add(index, frame(1, 0, 0)) == nullptr);
    REQUIRE(add(index, frame(2, 1, 1)) == nullptr);
    REQUIRE(add(index, frame(3, 1, 1)) == nullptr);
    REQUIRE(add(index, frame(4, 2, 2)) == nullptr);
    REQUIRE(add(index, frame(5, 2, 3)) == nullptr);
    CHECK(ids(index) == std::vector<std::string>{"00-1", "00-2", "00-2/2", "00-3", "00-3/2"});
    CHECK(heads(index) == std::vector<std::uint8_t>{4, 5});
    REQUIRE(index.findings().size() == 1);
    CHECK(index.findings()[0].id == "chain-forked");
}

TEST_CASE("A fork at the first frame", "[chains]") {
    ChainIndex index;
    REQUIRE(add(index, frame(1, 0, 0)) == nullptr);
    REQUIRE(add(index, frame(2, 0, 0)) == nullptr);
    REQUIRE(add(index, frame(3, 1, 2)) == nullptr);
    CHECK(ids(index) == std::vector<std::string>{"00-1", "00-1/2", "00-2/2"});
    CHECK(heads(index) == std::vector<std::uint8_t>{1, 3});
}

TEST_CASE("A gap is a finding and its far side is used", "[chains]") {
    ChainIndex index;
    REQUIRE(add(index, frame(1, 0, 0, 2)) == nullptr);
    REQUIRE(add(index, frame(4, 3, 3, 1)) == nullptr);
    CHECK(ids(index) == std::vector<std::string>{"00-1", "00-3"});
    CHECK_FALSE(index.frames()[1].parent);
    REQUIRE(index.findings().size() == 1);
    CHECK(index.findings()[0].id == "frame-missing");
    CHECK(index.frame_before(chain_of(0), 4) == &index.frames()[1]);
    CHECK(index.frame_before(chain_of(0), 3) == nullptr);
    CHECK(index.has_sequence(*index.find(chain_of(0)), 3));
    CHECK_FALSE(index.has_sequence(*index.find(chain_of(0)), 2));
}

TEST_CASE("Frames that cannot stand where they stand are refused", "[chains]") {
    ChainIndex index;
    REQUIRE(add(index, frame(1, 0, 0)) == nullptr);
    REQUIRE(add(index, frame(2, 1, 1)) == nullptr);
    CHECK(std::string(add(index, frame(2, 1, 1))) == "stands in the file twice");
    CHECK(std::string(add(index, frame(1, 0, 0))) == "stands behind a later frame of its chain");
    CHECK(std::string(add(index, frame(0, 1, 1))) == "stands behind a later frame of its chain");
    auto other = frame(3, 2, 2);
    other.header.subject = subject_of(2);
    CHECK(std::string(add(index, other)) == "is about another bike than the rest of its chain");
    CHECK(index.frames().size() == 2);
}

TEST_CASE("A chain is called by as few symbols as tell it apart", "[chains]") {
    ChainIndex index;
    const auto first = chain_of(0b00001'000, 0b01'000000), second = chain_of(0b00001'000, 0b01'000010),
               third = chain_of(0xFF, 0xFF);
    REQUIRE(add(index, frame(1, 0, 0, 1, first)) == nullptr);
    CHECK(index.name_of(first) == "11");
    REQUIRE(add(index, frame(2, 0, 0, 1, third)) == nullptr);
    REQUIRE(add(index, frame(3, 0, 0, 1, second)) == nullptr);
    CHECK(index.name_of(first) == "110");
    CHECK(index.name_of(second) == "111");
    CHECK(index.name_of(third) == "zz");
    CHECK(index.name_of(chain_of(7)) == "0w000000"); // not here: eight symbols
}
