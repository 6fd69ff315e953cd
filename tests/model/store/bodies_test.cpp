// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/bodies.h"

#include "tests/catch.h"
#include "tests/model/store/record_maker.h"

#include <rapidcheck/catch.h>

#include <set>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// The frame a batch becomes; views into the batch.
Frame frame_of(const Batch& batch) {
    Frame frame;
    frame.header.entry_count = batch.count;
    for (std::size_t slot = 0; slot < 3; ++slot) {
        if (slot > 0 && batch.parts[slot].empty()) continue;
        frame.header.parts_exist |= bit_of(slot);
        frame.parts[slot] = {.shown = true, .hash = {}, .salt = {}, .body = batch.parts[slot]};
    }
    return frame;
}

std::vector<Record> back(const Batch& batch) {
    auto records = decode_records(frame_of(batch));
    REQUIRE(records);
    return std::move(*records);
}

Batch one_batch(const std::vector<Record>& records) {
    auto batches = encode_records(records);
    REQUIRE(batches);
    REQUIRE(batches->size() == 1);
    return std::move(batches->front());
}

bool same(const Batch& a, const Batch& b) { return a.count == b.count && a.parts == b.parts; }

Record note_record(std::string text) {
    Entry entry;
    entry.date = day(2024, 1, 1);
    entry.note = std::move(text);
    entry.body = Note{};
    return {{}, {}, entry};
}

} // namespace

TEST_CASE("Every field of every kind comes back", "[bodies]") {
    for (const auto& record : full_records())
        CHECK(back(one_batch({record})) == std::vector{record});
    for (const auto& record : bare_records())
        CHECK(back(one_batch({record})) == std::vector{record});
    CHECK(back(one_batch(full_records())) == full_records());
}

TEST_CASE("One record has one encoding, whatever its kind", "[bodies]") {
    std::set<std::size_t> kinds;
    rc::prop("decode then encode gives the same bytes", [&] {
        std::vector<Record> records;
        RecordMaker maker(*rc::gen::arbitrary<std::uint64_t>());
        for (int i = 0; i < 5; ++i) {
            records.push_back(maker.record());
            const auto* entry = std::get_if<Entry>(&records.back().content);
            kinds.insert(records.back().content.index() * 100 + (entry == nullptr ? 0 : entry->body.index()));
        }
        const auto batch = one_batch(records);
        const auto again = back(batch);
        RC_ASSERT(again == records);
        RC_ASSERT(same(one_batch(again), batch));
    });
    CHECK(kinds.size() > 15); // of 6 + 15
}

TEST_CASE("A changed body is refused or is the one encoding of something else", "[bodies]") {
    rc::prop("single changed bytes", [] {
        RecordMaker maker(*rc::gen::arbitrary<std::uint64_t>());
        auto batch = one_batch({maker.record(), maker.record()});
        const auto slot = *rc::gen::inRange<std::size_t>(0, 3);
        if (batch.parts[slot].empty()) return;
        const auto at = *rc::gen::inRange<std::size_t>(0, batch.parts[slot].size());
        batch.parts[slot][at] = *rc::gen::arbitrary<std::uint8_t>();
        const auto records = decode_records(frame_of(batch));
        if (!records) return;
        const auto again = encode_records(*records);
        RC_ASSERT(again);
        RC_ASSERT(same(again->front(), batch));
    });
}

TEST_CASE("Money and personal fields stand in their own part and nowhere else", "[bodies]") {
    const auto batch = one_batch(full_records());
    const auto holds = [&](Part part, std::string_view text) {
        const auto& body = batch.parts[slot_of(part)];
        return std::ranges::search(body, as_bytes(text)).begin() != body.end();
    };
    for (const auto* text : {"Stands in the shed", "AB 123", "Drizzle", "Somewhere", "A friend",
                             "invoice.pdf", "An invented laboratory", "Written twice", "Notiz"}) {
        CHECK(holds(Part::personal, text));
        CHECK_FALSE(holds(Part::open, text));
        CHECK_FALSE(holds(Part::money, text));
    }
    CHECK(holds(Part::money, "Preis"));
    CHECK_FALSE(holds(Part::open, "Preis"));
    CHECK(holds(Part::open, "Datum"));
    CHECK(holds(Part::open, "rear axle nut"));
}

TEST_CASE("Without money and personal parts their fields are absent and all others stay", "[bodies]") {
    const auto batch = one_batch(full_records());
    auto frame = frame_of(batch);
    frame.parts[1] = withheld_part({});
    frame.parts[2] = withheld_part({});
    const auto records = decode_records(frame);
    REQUIRE(records);
    REQUIRE(records->size() == full_records().size());
    const auto& fuel = std::get<Entry>((*records)[7].content);
    CHECK_FALSE(fuel.paid);
    CHECK_FALSE(fuel.note);
    CHECK(fuel.attachments.empty());
    CHECK_FALSE(std::get<Fuel>(fuel.body).price);
    CHECK(std::get<Fuel>(fuel.body).trip == std::get<Fuel>(full_bodies()[1]).trip);
    REQUIRE(fuel.doubts.size() == 1);
    CHECK(fuel.doubts[0].column == "Datum");
}

TEST_CASE("Parts that say nothing do not exist", "[bodies]") {
    const auto batch = one_batch({Record{{}, {}, DataCardValue{"plug", "NR 8", {}, {}}}});
    CHECK(batch.parts[1].empty());
    CHECK(batch.parts[2].empty());
    auto padded = batch;
    padded.parts[1] = {0};
    CHECK_FALSE(decode_records(frame_of(padded)));
    const auto noted = one_batch({Record{{}, {}, DataCardValue{}}, note_record("x")});
    CHECK(noted.parts[2].front() == 0); // nothing about the first
    auto longer = noted;
    longer.parts[2].push_back(0);
    CHECK_FALSE(decode_records(frame_of(longer)));
    auto emptied = one_batch({note_record("x")});
    std::ranges::fill(emptied.parts[2].begin() + 1, emptied.parts[2].end(), std::uint8_t{0});
    emptied.parts[2].pop_back(); // the text's one letter
    const auto fault = decode_records(frame_of(emptied));
    REQUIRE_FALSE(fault);
    CHECK(fault.error().what == "an empty part is not left out");
}

TEST_CASE("The versions a record replaces are sorted, and a withdrawal names one", "[bodies]") {
    auto record = fuel_record(1);
    record.replaces = {{{}, 2}, {{}, 1}, {{}, 2}};
    CHECK(std::get<0>(std::tuple(back(one_batch({record}))[0].replaces)) ==
          std::vector<RecordName>{{{}, 1}, {{}, 2}});
    CHECK_FALSE(encode_records({Record{{}, {}, Withdrawal{"why"}}}));
    auto batch = one_batch({Record{{}, {{{}, 1}, {{}, 2}}, Withdrawal{}}});
    auto& open = batch.parts[0]; // 8 recorded, 1 count, 36 and 36 names, 1 kind
    REQUIRE(open.size() == 82);
    std::swap_ranges(open.begin() + 9, open.begin() + 45, open.begin() + 45);
    const auto unsorted = decode_records(frame_of(batch));
    REQUIRE_FALSE(unsorted);
    CHECK(unsorted.error().what == "the versions it replaces are not in order");
    batch.parts[0] = Bytes(10, 0);
    batch.parts[0][9] = 6;
    const auto nothing = decode_records(frame_of(batch));
    REQUIRE_FALSE(nothing);
    CHECK(nothing.error().what == "it takes back nothing");
}

TEST_CASE("Many records go into as few frames as the limit of 1 MiB a part allows", "[bodies]") {
    const std::vector<Record> records(40, note_record(std::string(60'000, 'x')));
    const auto batches = encode_records(records);
    REQUIRE(batches);
    REQUIRE(batches->size() == 3); // 17 notes of 60,000 bytes fit into 1 MiB
    CHECK((*batches)[0].count == 17);
    CHECK((*batches)[1].count == 17);
    CHECK((*batches)[2].count == 6);
    for (const auto& batch : *batches)
        CHECK(batch.parts[2].size() <= max_part_bytes);
}

TEST_CASE("One record of one under, exactly and one over 1 MiB", "[bodies]") {
    const auto with_bytes = [](std::size_t extra) {
        Entry entry;
        entry.date = day(2024, 1, 1);
        entry.body = Work{};
        entry.does = std::vector<std::string>(15, std::string(65'000, 'x'));
        entry.does.emplace_back(60'000, 'y');
        entry.visit = std::string(extra, 'z');
        return Record{{}, {}, entry};
    };
    const std::size_t size = one_batch({with_bytes(1)}).parts[0].size();
    const std::size_t fill = max_part_bytes - size + 1 - 1; // a length past 127 takes one byte more
    for (const std::size_t extra : {fill - 1, fill, fill + 1}) {
        const auto batches = encode_records({with_bytes(extra)});
        CHECK(batches.has_value() == (extra <= fill));
        if (extra == fill) CHECK(batches->front().parts[0].size() == max_part_bytes);
        if (extra > fill) CHECK(batches.error().sentence.find("1 MiB") != std::string::npos);
    }
}

TEST_CASE("A text that could not be read back is refused before it is written", "[bodies]") {
    const auto bad = encode_records({note_record("\xFF")});
    REQUIRE_FALSE(bad);
    CHECK(bad.error().sentence == "The entry cannot be saved: a text is not UTF-8.");
    CHECK_FALSE(encode_records({note_record(std::string(65'537, 'x'))}));
    CHECK(encode_records({note_record(std::string(65'536, 'x'))}));
}
