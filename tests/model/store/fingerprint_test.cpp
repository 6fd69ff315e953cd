// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/fingerprint.h"

#include "model/store/base32.h"
#include "tests/catch.h"
#include "tests/model/store/example_records.h"

#include <rapidcheck/catch.h>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Hash256 hash_of(std::uint8_t number) {
    Hash256 hash;
    hash.fill(number);
    return hash;
}

ChainHead head(std::uint8_t number) {
    ChainHead head;
    head.chain.bytes.fill(number);
    head.sequence = number;
    head.hash = hash_of(number);
    return head;
}

FingerprintRecord example_record() {
    const std::vector<ChainHead> heads{head(1), head(2)};
    FingerprintRecord record{
        .printed = {1'700'000'000},
        .entries = 12,
        .leaves = {{leaf_hash(subject_of(9), heads), subject_of(9), heads}, {hash_of(3), {}, {}}}};
    std::ranges::sort(record.leaves, {}, &FingerprintLeaf::leaf);
    return record;
}

bool reads(std::string_view text) { return TypedFingerprint::read(text).has_value(); }

} // namespace

TEST_CASE("A fingerprint is a hash over sorted leaves, a leaf over the heads of one subject",
          "[fingerprint]") {
    Bytes leaf_bytes;
    put_bytes(leaf_bytes, as_bytes("sbleaf-1"));
    put_bytes(leaf_bytes, subject_of(9).bytes);
    put_number(leaf_bytes, std::uint32_t{1});
    put_bytes(leaf_bytes, head(1).chain.bytes);
    put_number(leaf_bytes, std::uint32_t{1});
    put_bytes(leaf_bytes, head(1).hash);
    const auto leaf = leaf_hash(subject_of(9), {head(1)});
    CHECK(leaf == sha256({leaf_bytes}));
    const Bytes one{1, 0, 0, 0};
    CHECK(fingerprint_of({{leaf, {}, {}}}) == sha256({as_bytes("sbroot-1"), one, leaf}));
}

TEST_CASE("The record of a fingerprint reads back and proves itself", "[fingerprint]") {
    const auto record = example_record();
    const auto bytes = encode_fingerprint_record(record);
    const auto back = read_fingerprint_record(bytes);
    REQUIRE(back);
    CHECK(*back == record);
    CHECK(back->fingerprint() == record.fingerprint());
    CHECK(encode_fingerprint_record(*back) == bytes);
    for (std::size_t length = 0; length < bytes.size(); ++length)
        CHECK_FALSE(read_fingerprint_record(ByteView(bytes).first(length)));
}

TEST_CASE("A record may carry the answer of a time-stamp authority", "[fingerprint]") {
    auto record = example_record();
    const auto without = encode_fingerprint_record(record);
    record.time_stamp = {1, 2, 3};
    const auto bytes = encode_fingerprint_record(record);
    CHECK(ByteView(bytes).first(without.size()).size() == without.size());
    CHECK(Bytes(bytes.begin() + static_cast<std::ptrdiff_t>(without.size()), bytes.end()) ==
          Bytes{3, 1, 2, 3});
    CHECK(read_fingerprint_record(bytes) == record);
    CHECK(record.fingerprint() == example_record().fingerprint());
    for (std::size_t length = without.size() + 1; length < bytes.size(); ++length)
        CHECK_FALSE(read_fingerprint_record(ByteView(bytes).first(length)));
    auto empty = without;
    empty.push_back(0); // a time stamp of no bytes: there is one way only to write none
    CHECK_FALSE(read_fingerprint_record(empty));
}

TEST_CASE("A leaf without its heads gives the same fingerprint", "[fingerprint]") {
    auto bare = example_record();
    for (auto& leaf : bare.leaves)
        leaf = {leaf.leaf, {}, {}};
    CHECK(bare.fingerprint() == example_record().fingerprint());
    CHECK(read_fingerprint_record(encode_fingerprint_record(bare)) == bare);
}

TEST_CASE("A record that is out of order is no record", "[fingerprint]") {
    auto record = example_record();
    std::swap(record.leaves[0], record.leaves[1]);
    CHECK_FALSE(read_fingerprint_record(encode_fingerprint_record(record)));
    record = example_record();
    for (auto& leaf : record.leaves) {
        if (!leaf.heads.empty()) std::swap(leaf.heads[0], leaf.heads[1]);
    }
    CHECK_FALSE(read_fingerprint_record(encode_fingerprint_record(record)));
}

TEST_CASE("The printed text holds 125 bits and can be typed back in any dress", "[fingerprint]") {
    const auto fingerprint = example_record().fingerprint();
    const auto text = fingerprint_text(fingerprint);
    REQUIRE(text.size() == 35);
    CHECK(std::ranges::count(text, '-') == 5);
    std::string symbols = text;
    std::erase(symbols, '-');
    CHECK(symbols.substr(0, 25) == base32_text(fingerprint, 25));
    std::string capitals = text;
    for (auto& c : capitals) {
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    }
    for (const auto& typed : {text, symbols, capitals, " " + text + "\n", hex_text(fingerprint)}) {
        const auto read = TypedFingerprint::read(typed);
        REQUIRE(read);
        CHECK(read->matches(fingerprint));
        CHECK_FALSE(read->matches(hash_of(1)));
    }
}

TEST_CASE("The printed text tells apart what differs in the first 125 bits only", "[fingerprint]") {
    Hash256 one = hash_of(0x55);
    Hash256 other = one;
    other[15] ^= 0b1000; // bit 124, the last that is printed
    CHECK(fingerprint_text(one) != fingerprint_text(other));
    other = one;
    other[15] ^= 0b0100; // bit 125
    CHECK(fingerprint_text(one) == fingerprint_text(other));
    CHECK(TypedFingerprint::read(hex_text(one))->matches(one));
    CHECK_FALSE(TypedFingerprint::read(hex_text(one))->matches(other));
}

TEST_CASE("A mistyped or shortened fingerprint is refused", "[fingerprint]") {
    rc::prop("any one wrong symbol and any swap of neighbours", [] {
        Hash256 hash{};
        for (auto& byte : hash)
            byte = *rc::gen::arbitrary<std::uint8_t>();
        std::string text = fingerprint_text(hash);
        std::erase(text, '-');
        RC_ASSERT(reads(text));
        const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
        auto wrong = text;
        wrong[at] = base32_symbols[*rc::gen::inRange<std::size_t>(0, 32)];
        RC_ASSERT(reads(wrong) == (wrong == text));
        auto swapped = text;
        std::swap(swapped[at], swapped[(at + 1) % text.size()]);
        RC_ASSERT(reads(swapped) == (swapped == text));
    });
    auto text = fingerprint_text(hash_of(7));
    CHECK_FALSE(reads(text.substr(0, 29)));
    CHECK_FALSE(reads(text.substr(0, 34)));
    CHECK_FALSE(reads(text + "0"));
    CHECK_FALSE(reads(""));
    CHECK_FALSE(reads(hex_text(hash_of(7)).substr(0, 63) + "g"));
    text[0] = '!';
    CHECK_FALSE(reads(text));
}
