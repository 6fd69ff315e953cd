// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/handover.h"

#include "tests/catch.h"
#include "tests/model/store/set_bench.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Bytes text(std::string_view words) { return {words.begin(), words.end()}; }

/// The example with secrets in it.
struct Secrets : SetBench {
    Secrets() {
        example("/g");
        for (const auto& [bike, note] : {std::pair(subject_of(1), "SECRET NOTE OF RED"),
                                         std::pair(subject_of(2), "SECRET NOTE OF BLUE")}) {
            auto garage = open("/g");
            Entry entry = full_entry(Note{});
            entry.note = note;
            entry.paid = Money{0x5EC2E7, eur()};
            static_cast<void>(must(garage.append({{bike, Record{{++clock}, {}, entry}}})));
        }
        attach("/g", subject_of(1), text("SECRET PAPER OF RED"));
        attach("/g", subject_of(2), text("SECRET PAPER OF BLUE"));
        print("/g");
    }
    HandOverPlan plan(const Withheld& withheld, const SubjectId& bike = subject_of(1)) {
        return must(plan_hand_over(disk, "/g", bike, withheld, at_once));
    }
    Bytes given(const Withheld& withheld) {
        const auto path = must(write_out(disk, plan(withheld).set, "/given-" + std::to_string(++clock))).path;
        return disk.bytes(path);
    }
};

/// The amount as it stands in a money part.
const Bytes price{0xE7, 0xC2, 0x5E, 0, 0, 0, 0, 0};

} // namespace

TEST_CASE("A hand-over leaks no withheld byte and nothing of another bike", "[handover]") {
    Secrets bench;
    const auto all = bench.given({});
    CHECK(holds(all, text("SECRET NOTE OF RED")));
    CHECK(holds(all, text("SECRET PAPER OF RED")));
    CHECK(holds(all, price));
    for (unsigned withheld = 0; withheld < 8; ++withheld) {
        const bool money = (withheld & 1U) != 0, personal = (withheld & 2U) != 0,
                   files = (withheld & 4U) != 0;
        const auto given = bench.given({money, personal, files});
        CHECK(holds(given, price) == !money);
        CHECK(holds(given, text("SECRET NOTE OF RED")) == !personal);
        CHECK(holds(given, text("paper.txt")) == !personal);
        CHECK(holds(given, text("SECRET PAPER OF RED")) == !files);
        CHECK_FALSE(holds(given, text("OF BLUE")));
        CHECK_FALSE(holds(given, text("Blue")));
        CHECK_FALSE(holds(given, subject_of(2).bytes));
    }
}

TEST_CASE("No salt of a withheld part and no chain of another bike stands in a hand-over", "[handover]") {
    Secrets bench;
    const auto given = bench.given({true, true, true});
    const auto garage = bench.open("/g");
    std::size_t others = 0, salts = 0;
    for (const auto& [id, chain] : garage.index().chains()) {
        if (chain.subject == subject_of(1)) continue;
        CHECK_FALSE(holds(given, id.bytes));
        ++others;
    }
    for (const auto& frame : garage.index().frames()) {
        if (garage.index().subject_of(frame) != subject_of(1)) CHECK_FALSE(holds(given, frame.hash));
    }
    // Salts and bodies: whatever 16 bytes of the bike's frames stand in the hand-over are open or a hash.
    const auto full = bench.disk.bytes("/g");
    for (const auto& indexed : garage.index().frames()) {
        if (garage.index().subject_of(indexed) != subject_of(1) || indexed.kind != FrameKind::records)
            continue;
        const auto bytes = ByteView(full).subspan(static_cast<std::size_t>(indexed.at));
        const auto start = read_frame_start(bytes);
        REQUIRE(start);
        const auto verified = verify_frame(*start, bytes.first(start->length));
        REQUIRE(verified);
        for (const auto slot : {slot_of(Part::money), slot_of(Part::personal)}) {
            if (!verified->frame.exists(slot)) continue;
            CHECK_FALSE(holds(given, verified->frame.parts[slot].salt));
            CHECK(holds(given, verified->frame.parts[slot].hash));
            ++salts;
        }
    }
    CHECK(others > 0);
    CHECK(salts > 4);
}

TEST_CASE(
    "Promise 10: parts can be withheld, and the rest verifies against the fingerprint of the whole garage",
    "[handover]") {
    Secrets bench;
    const auto record = bench.print("/g");
    const auto typed = TypedFingerprint::read(fingerprint_text(record.fingerprint())).value();
    bench.disk.put("/given", bench.given({true, true, true}));
    const auto check = bench.open("/given").check(typed);
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.subjects_not_held == 2); // the other bike, and the garage itself
    CHECK(check.covered_entries == bench.open("/given").records().size());
    CHECK(check.recorded_later == 0);
    // What is recorded afterwards is told as later.
    bench.add("/given", subject_of(1), 9);
    CHECK(bench.open("/given").check(typed).answer == FingerprintAnswer::unchanged);
    CHECK(bench.open("/given").check(typed).recorded_later == 1);
}

TEST_CASE("Merged back, a hand-over leaves the full garage as it was, byte for byte", "[handover]") {
    Secrets bench;
    const auto before = bench.merged({"/g"});
    bench.disk.put("/given", bench.given({true, true, true}));
    CHECK(bench.merged({"/g", "/given"}) == before);
    CHECK(bench.merged({"/given", "/g"}) == before);
}

TEST_CASE("Hand-overs with different parts withheld fill each other", "[handover]") {
    Secrets bench;
    bench.disk.put("/no-money", bench.given({true, false, true}));
    bench.disk.put("/no-notes", bench.given({false, true, false}));
    CHECK(bench.merged({"/no-money", "/no-notes"}) == bench.given({}));
    const auto plan = must(plan_merge(bench.disk, {"/no-money", "/no-notes"}, at_once));
    CHECK(plan.new_frames() == 0);
    CHECK(std::ranges::any_of(plan.chains, [](const auto& chain) { return chain.filled_parts > 0; }));
}

TEST_CASE("The preview says what still shows", "[handover]") {
    Secrets bench;
    const auto preview = bench.plan({true, false, true}).preview;
    CHECK(preview.bike == "Red");
    CHECK(preview.entries == 5);
    CHECK(preview.attachments == 2);
    CHECK(preview.attachments_withheld == 2);
    CHECK(preview.entries_with_money == 4); // all but the details
    CHECK(preview.entries_with_private == 0);
    CHECK(preview.other_subjects == 2);
    CHECK(preview.fingerprints == 2);
    CHECK(preview.entries_not_covered == 0);
    CHECK(preview.already_withheld == 0);
    REQUIRE(preview.first_recorded);
    CHECK(*preview.first_recorded < *preview.last_recorded);
    bench.add("/g", subject_of(1), 9);
    CHECK(bench.plan({}).preview.entries_not_covered == 1);
}

TEST_CASE("What was withheld before stays withheld, and is counted", "[handover]") {
    Secrets bench;
    bench.disk.put("/given", bench.given({true, false, false}));
    const auto plan = must(plan_hand_over(bench.disk, "/given", subject_of(1), {}, at_once));
    CHECK(plan.preview.already_withheld == 4);
    REQUIRE(write_out(bench.disk, plan.set, "/again"));
    CHECK(bench.disk.bytes("/again") == bench.disk.bytes("/given"));
}

TEST_CASE("A bike that is not in the file cannot be handed over, nor the garage itself", "[handover]") {
    Secrets bench;
    CHECK_FALSE(plan_hand_over(bench.disk, "/g", subject_of(77), {}, at_once));
    CHECK_FALSE(plan_hand_over(bench.disk, "/g", bench.open("/g").subject(), {}, at_once));
}

TEST_CASE("A hand-over may be read by those who may read the garage", "[handover]") {
    Secrets bench;
    const auto file = open_file(bench.disk, "/g", OpenMode::read_write);
    REQUIRE(file);
    for (const std::uint32_t mode : {0600U, 0640U}) {
        REQUIRE(bench.disk.set_mode(file->handle(), mode));
        CHECK(bench.plan({}).mode == mode);
    }
}
