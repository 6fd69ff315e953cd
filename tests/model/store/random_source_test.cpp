// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/random_source.h"

#include "model/store/hash.h"
#include "tests/catch.h"

using namespace sumpbook::store;

TEST_CASE("Seeded randomness is SHA-256 of seed and counter", "[random]") {
    SeededRandom random("seed");
    Bytes bytes(48);
    random.fill(bytes);
    const auto block = [](std::uint64_t number) {
        Bytes counter;
        put_number(counter, number);
        return sha256({as_bytes("seed"), counter});
    };
    CHECK(get_array<32>(bytes, 0) == block(0));
    const auto second = block(1);
    CHECK(std::equal(bytes.begin() + 32, bytes.end(), second.begin()));
    CHECK(SeededRandom("seed").sixteen() == SeededRandom("seed").sixteen());
    CHECK(SeededRandom("seed").sixteen() != SeededRandom("other").sixteen());
    CHECK(random.sixteen() != random.sixteen());
}

TEST_CASE("The system's randomness never repeats", "[random]") {
    SystemRandom random;
    CHECK(random.sixteen() != random.sixteen());
    CHECK(random.sixteen() != std::array<std::uint8_t, 16>{});
}
