// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/kept_bodies.h"

#include "tests/catch.h"

#include <algorithm>
#include <random>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// Bodies of a frame; an absent one is not shown.
using Bodies = std::array<std::optional<Bytes>, 3>;

Frame frame_of(const Bodies& bodies) {
    Frame frame;
    frame.header.entry_count = 1;
    for (std::size_t slot = 0; slot < bodies.size(); ++slot) {
        frame.header.parts_exist |= bit_of(slot); // those that are not shown are withheld
        if (bodies[slot]) frame.parts[slot] = {.shown = true, .hash = {}, .salt = {}, .body = *bodies[slot]};
    }
    return frame;
}

bool same(const Frame& frame, const Bodies& bodies) {
    for (std::size_t slot = 0; slot < bodies.size(); ++slot) {
        if (frame.exists(slot) != bodies[slot].has_value()) return false;
        if (bodies[slot] && !std::ranges::equal(frame.parts[slot].body, *bodies[slot])) return false;
    }
    return true;
}

std::vector<Bodies> many_bodies(std::size_t count) {
    std::mt19937 random(7);
    std::vector<Bodies> all;
    for (std::size_t i = 0; i < count; ++i) {
        Bodies bodies;
        bodies[0] = Bytes(8 + random() % 50, static_cast<std::uint8_t>(i));
        if (random() % 2 == 0) bodies[1] = Bytes(random() % 300, 1);
        if (random() % 2 == 0) bodies[2] = Bytes(random() % 70'000, 2);
        all.push_back(bodies);
    }
    return all;
}

void check_read(const Runs& runs, const std::vector<Bodies>& expected) {
    BodyReader reader;
    std::size_t right = 0;
    for (const auto& bodies : expected)
        right += same(reader.next(runs, 1), bodies) ? 1U : 0U;
    CHECK(right == expected.size());
}

} // namespace

TEST_CASE("Kept bodies come back in order, over many blocks", "[kept_bodies]") {
    const auto all = many_bodies(200);
    BodyKeeper keeper(10'000); // some bodies are longer than a block
    Runs runs;
    for (const auto& bodies : all)
        keeper.keep(frame_of(bodies), runs);
    CHECK(runs.size() < all.size());
    check_read(runs, all);
}

TEST_CASE("The longest body of every part comes back", "[kept_bodies]") {
    const Bodies longest{Bytes(max_part_bytes, 1), Bytes(max_part_bytes, 2), Bytes(max_part_bytes, 3)};
    BodyKeeper keeper;
    Runs runs;
    keeper.keep(frame_of(longest), runs);
    check_read(runs, {longest});
}

TEST_CASE("What was kept since a mark can be forgotten", "[kept_bodies]") {
    const auto all = many_bodies(60);
    BodyKeeper keeper(100'000);
    Runs runs;
    for (const auto& bodies : all) {
        const auto mark = keeper.mark();
        Runs forgotten;
        for (int i = 0; i < 3; ++i)
            keeper.keep(frame_of(all[5]), forgotten);
        keeper.back_to(mark);
        keeper.keep(frame_of(bodies), runs);
    }
    check_read(runs, all);
}

TEST_CASE("Reading goes on where more was kept", "[kept_bodies]") {
    const auto all = many_bodies(20);
    BodyKeeper keeper;
    Runs runs;
    BodyReader reader;
    std::size_t right = 0;
    for (const auto& bodies : all) {
        keeper.keep(frame_of(bodies), runs);
        right += same(reader.next(runs, 1), bodies) ? 1U : 0U;
    }
    CHECK(right == all.size());
}
