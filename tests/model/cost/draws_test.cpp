// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/draws.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::cost;

TEST_CASE("A text's number is the first four bytes of its SHA-256, little-endian") {
    // FIPS 180-4 example: SHA-256("abc") = ba7816bf 8f01cfea ...
    CHECK(hash32("abc") == 0xbf1678ba);
}

TEST_CASE("Numbered purposes are the text and the number, however high") {
    const NumberedPurpose purpose("job/engine-oil/");
    CHECK(purpose.at(1) == hash32("job/engine-oil/1"));
    CHECK(purpose.at(16) == hash32("job/engine-oil/16"));
    CHECK(purpose.at(17) == hash32("job/engine-oil/17"));
}

TEST_CASE("Each bike, path, piece, purpose and seed has its own draw, always the same") {
    const Draws draws(1);
    const double u = draws.uniform(1, 2, 3, 4);
    CHECK(u > 0);
    CHECK(u < 1);
    CHECK(draws.uniform(1, 2, 3, 4) == u);
    CHECK(draws.uniform(2, 2, 3, 4) != u);
    CHECK(draws.uniform(1, 3, 3, 4) != u);
    CHECK(draws.uniform(1, 2, 4, 4) != u);
    CHECK(draws.uniform(1, 2, 3, 5) != u);
    CHECK(Draws(2).uniform(1, 2, 3, 4) != u);
    CHECK(Draws(1 + (std::uint64_t{1} << 32U)).uniform(1, 2, 3, 4) != u);
}

TEST_CASE("A bike's id as text") {
    SubjectId id;
    id.bytes[0] = 0xa7;
    CHECK(hex_text(id) == "a7000000000000000000000000000000");
}

TEST_CASE(
    "A draw is the number that an implementation written apart gives for bike, path, piece and purpose") {
    // A Python implementation of Philox4x32-10 (it gives 6627e8d5 e169c58d bc57ac4c 9b00dbd8 for zero counter
    // and key, the published check) and of SHA-256 (hashlib): words 85386426 e2f5d402.
    const std::uint32_t bike = hash32("a7000000000000000000000000000000");
    CHECK(bike == 0x0143a100);
    const std::uint32_t purpose = hash32("job/engine-oil/2");
    CHECK(purpose == 0x32f23db3);
    CHECK(Draws(0x123456789abcdef0).uniform(bike, 7, 3, purpose) == 0x1.0a70c84dc5ebbp-1);
}
