// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/new_action.h"

#include "model/store/loader.h"
#include "tests/catch.h"
#include "tests/model/store/example_records.h"

#include <set>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// What a reader makes of the action at the start of a file.
Loader read_back(const NewAction& action) {
    Loader loader;
    Window window(action.bytes, 0);
    const auto scan = scan_actions(window, 0, 0, ScanDepth::everything, loader);
    REQUIRE(scan.tail == Tail::whole);
    REQUIRE_FALSE(loader.fault());
    return loader;
}

NewAction make(const std::vector<NewRecord>& records, RandomSource& random) {
    auto action = make_action(records, {}, {}, ChainIndex{}, random);
    REQUIRE(action);
    return std::move(*action);
}

} // namespace

TEST_CASE("Records of several subjects become a chain each, in one action", "[action]") {
    SeededRandom random("new action");
    const std::vector<NewRecord> records{
        {subject_of(1), fuel_record(1)}, {subject_of(2), fuel_record(2)}, {subject_of(1), fuel_record(3)}};
    const auto action = make(records, random);
    CHECK(action.order == std::vector<std::size_t>{0, 2, 1});
    const auto loader = read_back(action);
    REQUIRE(loader.records().size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(loader.records()[i].subject == records[action.order[i]].subject);
        CHECK(loader.records()[i].record == records[action.order[i]].record);
    }
    CHECK(loader.index().chains().size() == 2);
}

TEST_CASE("No salt and no chain id is used twice", "[action]") {
    SeededRandom random("salts");
    std::vector<NewRecord> records;
    for (std::uint8_t i = 0; i < 20; ++i)
        records.push_back({subject_of(i), fuel_record(i)});
    const auto bytes = make(records, random).bytes;
    struct Salts final : ScanHandler {
        std::set<Salt> salts;
        std::size_t parts = 0;
        void frame(const VerifiedFrame& verified, std::uint64_t /*at*/) override {
            for (std::size_t slot = 0; slot < part_slots; ++slot) {
                if (!verified.frame.exists(slot)) continue;
                ++parts;
                salts.insert(verified.frame.parts[slot].salt);
            }
            salts.insert(verified.frame.header.chain.bytes);
        }
        void fingerprint_record(ByteView /*body*/) override {}
        void action_done(bool /*good*/) override {}
    } salts;
    Window window(bytes, 0);
    static_cast<void>(scan_actions(window, 0, 0, ScanDepth::usual, salts));
    CHECK(salts.parts == 60);
    CHECK(salts.salts.size() == 80);
}

TEST_CASE("The notes name what is about to be written, then what was", "[action]") {
    SeededRandom random("notes");
    const auto action = make({{subject_of(1), fuel_record(1)}}, random);
    REQUIRE(action.notes.size() == 1);
    CHECK_FALSE(action.notes[0].written);
    REQUIRE(action.notes[0].about_to_write);
    const auto loader = read_back(action);
    CHECK(action.notes[0].about_to_write->hash == loader.index().frames()[0].hash);
    const auto written = as_written(action.notes);
    CHECK(written[0].written == action.notes[0].about_to_write);
    CHECK_FALSE(written[0].about_to_write);
    const auto next = make_action({{subject_of(1), fuel_record(2)}}, {}, written, loader.index(), random);
    REQUIRE(next);
    REQUIRE(next->notes.size() == 1);
    CHECK(next->notes[0].about_to_write->sequence == 1);
}

TEST_CASE("An attachment is a frame of its subject's chain in front of the records", "[action]") {
    SeededRandom random("attachment");
    const auto paper = new_attachment(subject_of(1), Bytes{1, 2, 3}, random);
    REQUIRE(paper);
    const auto action = make_action({{subject_of(2), fuel_record(1)}, {subject_of(1), fuel_record(2)}},
                                    {*paper}, {}, ChainIndex{}, random);
    REQUIRE(action);
    const auto loader = read_back(*action);
    REQUIRE(loader.index().frames().size() == 3);
    CHECK(loader.index().frames()[1].kind == FrameKind::attachment);
    CHECK(loader.index().frames()[2].parent == 1U);
    REQUIRE(loader.attachments().size() == 1);
    CHECK(loader.attachments()[0].hash == paper->hash);
    CHECK(loader.attachments()[0].length == 3);
    const auto alone = make_action({}, {*paper}, {}, ChainIndex{}, random);
    REQUIRE(alone);
    CHECK(read_back(*alone).records().empty());
}

TEST_CASE("Attachments of one under, exactly and one over 64 MiB", "[action]") {
    SeededRandom random("large");
    CHECK(new_attachment(subject_of(1), Bytes(max_attachment_bytes - 1), random));
    CHECK(new_attachment(subject_of(1), Bytes(max_attachment_bytes), random));
    CHECK_FALSE(new_attachment(subject_of(1), Bytes(max_attachment_bytes + 1), random));
}

TEST_CASE("Actions of one under, exactly and one over 65535 frames", "[action]") {
    SeededRandom random("many");
    const auto paper = new_attachment(subject_of(1), Bytes{1}, random); // a frame each
    REQUIRE(paper);
    const auto with = [&](std::size_t frames) {
        return make_action({}, std::vector<NewAttachment>(frames, *paper), {}, ChainIndex{}, random);
    };
    for (const auto frames : {max_frames_in_action - 1, max_frames_in_action}) {
        const auto action = with(frames);
        REQUIRE(action);
        CHECK(read_back(*action).index().frames().size() == frames);
    }
    const auto over = with(max_frames_in_action + 1);
    REQUIRE_FALSE(over);
    CHECK(over.error().kind == ProblemKind::refused);
}

TEST_CASE("Nothing and what cannot be written are refused", "[action]") {
    SeededRandom random("refused");
    CHECK_FALSE(make_action({}, {}, {}, ChainIndex{}, random));
    Entry entry = full_entry(Note{});
    entry.note = "\xFF";
    CHECK_FALSE(make_action({{subject_of(1), Record{{}, {}, entry}}}, {}, {}, ChainIndex{}, random));
}
