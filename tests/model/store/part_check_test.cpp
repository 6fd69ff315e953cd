// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/part_check.h"

#include "model/store/bodies.h"
#include "tests/catch.h"
#include "tests/model/store/record_maker.h"

#include <iostream>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// One frame of `count` invented records, with its bodies.
struct Invented {
    Batch batch;

    Invented(std::mt19937_64& random, std::size_t count) {
        RecordMaker maker(random());
        std::vector<Record> records;
        for (std::size_t i = 0; i < count; ++i)
            records.push_back(maker.record());
        batch = encode_records(records).value().front();
    }

    [[nodiscard]] Frame frame() const {
        Frame frame;
        frame.header.entry_count = batch.count;
        for (std::size_t slot = 0; slot < batch.parts.size(); ++slot) {
            if (slot > 0 && batch.parts[slot].empty()) continue;
            frame.header.parts_exist |= bit_of(slot);
            frame.parts[slot] = {.shown = true, .hash = {}, .salt = {}, .body = batch.parts[slot]};
        }
        return frame;
    }
};

/// Changes, drops or adds a byte, or another body takes the place of one.
void damage(Invented& invented, std::mt19937_64& random) {
    auto& body = invented.batch.parts[random() % 3];
    const auto place = body.begin() + static_cast<std::ptrdiff_t>(random() % (body.size() + 1));
    const std::array<std::uint8_t, 6> likely{0, 1, 2, 0x7F, 0x80, 0xFF};
    const auto byte =
        random() % 2 == 0 ? likely.at(random() % likely.size()) : static_cast<std::uint8_t>(random());
    switch (random() % 5) {
    case 0:
        body.insert(place, byte);
        break;
    case 1:
        if (place != body.end()) body.erase(place, random() % 2 == 0 ? place + 1 : body.end());
        break;
    case 2:
        body = Invented(random, 1).batch.parts[random() % 3];
        break;
    default:
        if (place != body.end()) *place = byte;
    }
}

} // namespace

TEST_CASE("Every record of every kind is found readable", "[part_check]") {
    for (const auto& records : {full_records(), bare_records()}) {
        const auto batches = encode_records(records);
        REQUIRE(batches);
        for (const auto& batch : *batches) {
            std::mt19937_64 unused(1);
            Invented invented(unused, 1);
            invented.batch = batch;
            CHECK(can_be_decoded(invented.frame()));
        }
    }
}

TEST_CASE("What the check finds readable is what can be read, whatever the bytes", "[part_check]") {
    std::mt19937_64 random(20'240);
    std::size_t readable = 0;
    std::size_t unreadable = 0;
    std::size_t differ = 0;
    for (int round = 0; round < 20'000; ++round) {
        Invented invented(random, 1 + random() % 3);
        for (auto damages = random() % 3; damages > 0; --damages)
            damage(invented, random);
        auto frame = invented.frame();
        if (random() % 4 == 0) frame.parts[1] = withheld_part({});
        if (random() % 4 == 0) frame.parts[2] = withheld_part({});
        const bool expected = decode_records(frame).has_value();
        ++(expected ? readable : unreadable);
        if (can_be_decoded(frame) != expected) ++differ;
    }
    std::cout << "bodies checked and read: " << readable << " readable, " << unreadable << " not\n";
    CHECK(differ == 0);
    CHECK(readable > 5'000);
    CHECK(unreadable > 5'000);
}
