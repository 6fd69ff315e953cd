// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/loader.h"

#include "model/store/action.h"
#include "model/store/bodies.h"
#include "tests/catch.h"
#include "tests/model/store/example_records.h"

#include <functional>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// A frame of one record in a chain of its own, changed before it is sealed.
Bytes frame_of(const std::function<void(Frame&)>& change = [](Frame&) {}) {
    static const auto batch = encode_records({fuel_record(1)}).value().front();
    Frame frame;
    frame.header.entry_count = batch.count;
    frame.header.parts_exist = 1 | 2 | 4;
    frame.header.subject = subject_of(1);
    for (std::size_t slot = 0; slot < 3; ++slot)
        frame.parts[slot] = shown_part(slot, {}, batch.parts[slot]);
    change(frame);
    return encode_frame(frame);
}

Loader load(const Bytes& bytes) {
    Loader loader;
    Window window(bytes, 40);
    static_cast<void>(scan_actions(window, 40, 0, ScanDepth::usual, loader));
    return loader;
}

} // namespace

TEST_CASE("Records get their lasting name and their id for people", "[loader]") {
    const auto loader = load(encode_action({frame_of()}));
    REQUIRE(loader.records().size() == 1);
    CHECK(loader.records()[0].record == fuel_record(1));
    CHECK(loader.records()[0].id == "00-1");
    CHECK(loader.records()[0].name.frame_hash == loader.index().frames()[0].hash);
    CHECK(loader.records()[0].name.index == 0);
    CHECK(loader.entries() == 1);
}

TEST_CASE("A body of a later format is told apart from damage", "[loader]") {
    const auto loader = load(encode_action({frame_of(), frame_of([](Frame& f) {
                                                f.header.chain.bytes[0] = 9;
                                                f.header.format = body_format + 1;
                                            })}));
    REQUIRE(loader.fault());
    CHECK(loader.fault()->kind == ProblemKind::newer_format);
    CHECK(loader.fault()->frame_number == 2);
    CHECK(loader.records().empty()); // nothing of its action
}

TEST_CASE("A sealed body that no version writes is damage and names its entry", "[loader]") {
    const Bytes nonsense(20, 0xEE);
    const auto loader =
        load(encode_action({frame_of([&](Frame& f) { f.parts[0] = shown_part(0, {}, nonsense); })}));
    REQUIRE(loader.fault());
    CHECK(loader.fault()->kind == ProblemKind::damaged);
    CHECK(loader.fault()->what.find("entry 1") != std::string::npos);
}

TEST_CASE("A frame that does not follow its chain is damage", "[loader]") {
    auto bytes = encode_action({frame_of()});
    put_bytes(bytes, encode_action({frame_of()}));
    const auto loader = load(bytes);
    REQUIRE(loader.fault());
    CHECK(loader.fault()->what == "stands in the file twice");
    CHECK(loader.records().size() == 1);
}

TEST_CASE("Withheld parts are counted and their frames kept", "[loader]") {
    const auto loader = load(encode_action(
        {frame_of([](Frame& f) { f.parts[1] = withheld_part(f.parts[1].hash); }), frame_of([](Frame& f) {
             f.header.chain.bytes[0] = 1;
             f.parts[0] = withheld_part(f.parts[0].hash);
         })}));
    CHECK_FALSE(loader.fault());
    CHECK(loader.withheld(Part::money) == 1);
    CHECK(loader.withheld(Part::open) == 1);
    CHECK(loader.withheld(Part::personal) == 0);
    CHECK(loader.records().size() == 1);
    CHECK(loader.entries() == 2);
    CHECK(loader.index().frames().size() == 2);
    CHECK_FALSE(std::get<Entry>(loader.records()[0].record.content).paid);
}

TEST_CASE("16 million entries: one under, at, one over", "[loader]") {
    CHECK(entries_fit(max_entries - 2, 1));
    CHECK(entries_fit(max_entries - 1, 1));
    CHECK_FALSE(entries_fit(max_entries, 1));
    CHECK(entries_fit(0, max_entries));
    CHECK_FALSE(entries_fit(0, max_entries + 1));
    CHECK_FALSE(entries_fit(1, SIZE_MAX));
}

TEST_CASE("Entries for their bytes: at and over what keeps the promise about memory", "[loader]") {
    const std::uint64_t bytes = 100'000'000;
    const std::size_t most = (64 * bytes + 16 * 1024 * 1024) / memory_per_entry;
    CHECK(memory_fits(most - 1, bytes));
    CHECK(memory_fits(most, bytes));
    CHECK_FALSE(memory_fits(most + 1, bytes));
    CHECK(bytes / most < 33); // a reading of the odometer alone takes more
    const auto reading = Entry{.date = day(2024, 1, 1),
                               .odometer = WrittenDistance{Decimal(1), DistanceUnit::km},
                               .body = Reading{}};
    CHECK(encode_records({Record{{}, {}, reading}})->front().parts[0].size() >= 33);
}

TEST_CASE("An action that is tried out counts behind what is there", "[loader]") {
    auto bytes = encode_action({frame_of()});
    const auto before = load(bytes);
    auto trial = Loader::behind(before);
    CHECK(trial.entries() == 1);
    CHECK(trial.records().empty());
    Window window(ByteView(bytes), 40);
    static_cast<void>(scan_actions(window, 40, 0, ScanDepth::usual, trial));
    CHECK_FALSE(trial.fault());
    CHECK(trial.entries() == 2);
}
