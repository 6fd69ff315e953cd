// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/store/example_records.h"

#include "model/store/fingerprint.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Hash256 hash_of(std::uint8_t number) {
    Hash256 hash;
    hash.fill(number);
    return hash;
}

/// A file as its chains and the times of its entries, one entry a frame.
struct ExampleFile {
    ChainIndex index;
    std::vector<FingerprintRecord> records;
    std::vector<RecordedTime> recorded;

    void add(std::uint8_t chain, std::uint8_t hash, std::uint32_t sequence, std::uint8_t previous,
             std::int64_t time) {
        FrameHeader header;
        IndexedFrame frame;
        header.subject = subject_of(chain);
        header.chain.bytes.fill(chain);
        header.sequence = sequence;
        header.entry_count = 1;
        if (sequence > 0) header.previous = hash_of(previous);
        frame.hash = hash_of(hash);
        frame.first_record = static_cast<std::uint32_t>(recorded.size());
        frame.record_count = 1;
        REQUIRE(index.add(header, frame) == nullptr);
        recorded.push_back({time});
    }

    FingerprintRecord print(std::int64_t time) {
        records.push_back({.printed = {time}, .entries = recorded.size(), .leaves = leaves_of(index)});
        return records.back();
    }

    [[nodiscard]] FingerprintCheck check(const Hash256& fingerprint,
                                         const std::optional<SubjectId>& only = {},
                                         std::size_t search_limit = most_states_searched) const {
        return check_fingerprint(TypedFingerprint::read(fingerprint_text(fingerprint)).value(), index,
                                 records, recorded, only, search_limit);
    }
};

ExampleFile two_bikes() {
    ExampleFile file;
    file.add(1, 11, 0, 0, 100);
    file.add(2, 21, 0, 0, 110);
    file.add(1, 12, 1, 11, 120);
    return file;
}

/// The same record with nothing but leaves, as anybody can write it.
FingerprintRecord bare(FingerprintRecord record) {
    for (auto& leaf : record.leaves)
        leaf = {leaf.leaf, {}, {}};
    return record;
}

} // namespace

TEST_CASE("Nothing changed since a fingerprint, with or without later entries", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130).fingerprint();
    auto check = file.check(print);
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.printed == RecordedTime{130});
    CHECK(check.covered_entries == 3);
    CHECK(check.recorded_later + check.recorded_earlier == 0);

    file.add(1, 13, 2, 12, 140);
    file.add(3, 31, 0, 0, 125); // another copy's, by its clock before the print
    check = file.check(print);
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.covered_entries == 3);
    CHECK(check.recorded_later == 1);
    CHECK(check.recorded_earlier == 1);
    CHECK(check.forked_before == 0);
}

TEST_CASE("In the second of the printing the order in a chain decides what came later", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130).fingerprint();
    file.add(1, 13, 2, 12, 130); // behind the covered end of its chain
    file.add(1, 14, 3, 13, 130);
    file.add(1, 15, 4, 14, 129); // by its own clock before the print
    file.add(3, 31, 0, 0, 130);  // another chain: only its clock says anything
    const auto check = file.check(print);
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.recorded_later == 2);
    CHECK(check.recorded_earlier == 2);
}

TEST_CASE("A fingerprint without its record is found as an earlier state of the file", "[fingerprint]") {
    auto file = two_bikes();
    const auto now = fingerprint_of(leaves_of(file.index));
    CHECK(file.check(now).answer == FingerprintAnswer::unchanged);
    file.add(2, 22, 1, 21, 150);
    const auto check = file.check(now);
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK_FALSE(check.printed);
    CHECK(check.covered_entries == 3);
    CHECK(check.recorded_later == 1);
    CHECK(file.check(hash_of(1)).answer == FingerprintAnswer::not_found);
}

TEST_CASE("Where not all earlier states are searched, that is said", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130);
    file.add(2, 22, 1, 21, 150);
    CHECK(file.check(print.fingerprint(), {}, 1).answer == FingerprintAnswer::unchanged);
    CHECK(file.check(print.fingerprint(), {}, 1).searched); // with its record nothing is searched
    file.records.clear();
    const std::size_t all = 4 * 2; // frames x chains
    CHECK(file.check(print.fingerprint(), {}, all).answer == FingerprintAnswer::unchanged);
    CHECK(file.check(print.fingerprint(), {}, all).searched);
    CHECK(file.check(hash_of(1), {}, all).answer == FingerprintAnswer::not_found);
    CHECK(file.check(hash_of(1), {}, all).searched);
    const auto left_out = file.check(print.fingerprint(), {}, all - 1);
    CHECK(left_out.answer == FingerprintAnswer::not_found);
    CHECK_FALSE(left_out.searched);
    CHECK(file.check(fingerprint_of(leaves_of(file.index)), {}, 1).searched); // the present state
}

TEST_CASE("A bike that is known by its leaf and was written apart too often is not searched in full",
          "[fingerprint]") {
    // Twenty runs of two entries each: 3^20 states. The leaf is of one that the file did not grow through.
    ExampleFile file;
    const auto add = [&](std::uint8_t run, std::uint8_t number) {
        FrameHeader header;
        IndexedFrame frame;
        header.subject = subject_of(1);
        header.chain.bytes.fill(run);
        header.sequence = number;
        header.entry_count = 1;
        if (number > 0) header.previous = hash_of(run);
        frame.hash = hash_of(static_cast<std::uint8_t>(run + 100 * number));
        frame.first_record = static_cast<std::uint32_t>(file.recorded.size());
        frame.record_count = 1;
        REQUIRE(file.index.add(header, frame) == nullptr);
        file.recorded.push_back({100});
    };
    for (std::uint8_t run = 1; run <= 20; ++run) {
        add(run, 0);
        add(run, 1);
    }
    ChainHead head{.chain = {}, .sequence = 0, .hash = hash_of(20)};
    head.chain.bytes.fill(20);
    const auto leaf = leaf_hash(subject_of(1), {head});
    file.records = {{.printed = {130}, .entries = 1, .leaves = {{leaf, {}, {}}}}};
    const auto fingerprint = file.records.front().fingerprint();
    const auto check = file.check(fingerprint, subject_of(1));
    CHECK(check.answer == FingerprintAnswer::cannot_tell);
    CHECK_FALSE(check.searched);
    CHECK_FALSE(file.check(fingerprint).searched);
}

TEST_CASE("A history that was rewritten does not line up", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130);
    ExampleFile rewritten;
    rewritten.add(1, 11, 0, 0, 100);
    rewritten.add(2, 21, 0, 0, 110);
    rewritten.add(1, 99, 1, 11, 120);
    rewritten.records.push_back(print);
    const auto check = rewritten.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::changed);
    CHECK(check.place == "frame 2 of the entries 04-..., behind the entry 04-1");
    rewritten.records.clear();
    CHECK(rewritten.check(print.fingerprint()).answer == FingerprintAnswer::not_found);
}

TEST_CASE("A covered frame that is not here is missing, at the end, in the middle or with its chain",
          "[fingerprint]") {
    auto file = two_bikes();
    file.add(1, 13, 2, 12, 125);
    const auto print = file.print(130);
    ExampleFile cut = two_bikes();
    cut.records.push_back(print);
    CHECK(cut.check(print.fingerprint()).answer == FingerprintAnswer::missing);
    CHECK(cut.check(print.fingerprint()).place == "frame 3 of the entries 04-..., behind the entry 04-2");

    ExampleFile gap;
    gap.add(1, 11, 0, 0, 100);
    gap.add(2, 21, 0, 0, 110);
    gap.add(1, 13, 2, 12, 125);
    gap.records.push_back(print);
    CHECK(gap.check(print.fingerprint()).answer == FingerprintAnswer::missing);
    CHECK(gap.check(print.fingerprint()).place == "frame 2 of the entries 04-..., behind the entry 04-1");

    ExampleFile without;
    without.add(1, 11, 0, 0, 100);
    without.add(1, 12, 1, 11, 120);
    without.add(1, 13, 2, 12, 125);
    without.records.push_back(print);
    CHECK(without.check(print.fingerprint()).answer == FingerprintAnswer::missing);
}

TEST_CASE("One bike alone verifies against the fingerprint of the whole garage", "[fingerprint]") {
    auto file = two_bikes();
    auto print = file.print(130);
    ExampleFile one_bike;
    one_bike.add(1, 11, 0, 0, 100);
    one_bike.add(1, 12, 1, 11, 120);
    for (auto& leaf : print.leaves) {
        if (leaf.subject == subject_of(2)) leaf = {leaf.leaf, {}, {}};
    }
    one_bike.records.push_back(print);
    const auto check = one_bike.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.subjects_not_held == 1);
    CHECK(check.covered_entries == 2);
}

TEST_CASE("Entries that fork off before the covered end are counted", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130);
    ExampleFile merged;
    merged.add(1, 11, 0, 0, 100);
    merged.add(2, 21, 0, 0, 110);
    merged.add(1, 12, 1, 11, 120);
    merged.add(1, 77, 1, 11, 115);
    merged.add(1, 78, 2, 77, 140);
    merged.records.push_back(print);
    const auto check = merged.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.forked_before == 2);
    CHECK(check.recorded_earlier == 1);
    CHECK(check.recorded_later == 1);
}

TEST_CASE("A record of bare leaves alone proves nothing of a gutted file", "[fingerprint]") {
    auto file = two_bikes();
    file.add(1, 13, 2, 12, 125);
    const auto print = file.print(130);
    const auto fingerprint = print.fingerprint();
    REQUIRE(bare(print).fingerprint() == fingerprint);

    ExampleFile gutted; // most of the first bike is gone, and all of the second
    gutted.add(1, 11, 0, 0, 100);
    gutted.records.push_back(bare(print));
    auto check = gutted.check(fingerprint);
    CHECK(check.answer == FingerprintAnswer::missing);
    CHECK(check.place == "everything it covers");
    CHECK(check.subjects_not_held == 2);
    CHECK(check.covered_entries == 0);

    ExampleFile half; // the second bike is whole; nobody knows what the first is, and that is too little
    half.add(1, 11, 0, 0, 100);
    half.add(2, 21, 0, 0, 110);
    half.records.push_back(bare(print));
    check = half.check(fingerprint);
    CHECK(check.answer == FingerprintAnswer::partly);
    CHECK_FALSE(check.lines_up());
    CHECK(check.tested == std::vector{subject_of(2)});
    CHECK(check.untold == std::vector{subject_of(1)});
    CHECK(check.entries_untold == 1);
    CHECK(check.subjects_not_held == 1);

    ExampleFile empty;
    empty.records.push_back(bare(print));
    CHECK(empty.check(fingerprint).answer == FingerprintAnswer::missing);
    CHECK(empty.check(fingerprint).place == "everything it covers");
}

TEST_CASE("Bare leaves are matched with the states that the bikes held here had", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130);
    auto later = two_bikes();
    later.add(1, 13, 2, 12, 140);
    later.add(2, 22, 1, 21, 150);
    later.add(3, 31, 0, 0, 160); // a new bike, which needs no leaf once every leaf is accounted for
    later.records.push_back(bare(print));
    const auto check = later.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.subjects_not_held == 0);
    CHECK(check.covered_entries == 3);
    CHECK(check.recorded_later == 3);

    ExampleFile one_bike;
    one_bike.add(1, 11, 0, 0, 100);
    one_bike.add(1, 12, 1, 11, 120);
    one_bike.records.push_back(bare(print));
    CHECK(one_bike.check(print.fingerprint()).answer == FingerprintAnswer::unchanged);
    CHECK(one_bike.check(print.fingerprint()).subjects_not_held == 1);
    CHECK(one_bike.check(print.fingerprint()).covered_entries == 2);
}

TEST_CASE("A bare record does not hide what another record of the fingerprint knows", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130);
    ExampleFile gutted;
    gutted.add(1, 11, 0, 0, 100);
    gutted.records = {bare(print), print};
    const auto check = gutted.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::missing);
    CHECK(check.place.starts_with("frame "));
    CHECK(check.subjects_not_held == 0);
}

TEST_CASE("Beside a whole bike that is known by its heads, nothing is told of one that fits no leaf",
          "[fingerprint]") {
    auto file = two_bikes();
    file.add(2, 22, 1, 21, 125);
    auto print = file.print(130);
    for (auto& leaf : print.leaves) {
        if (leaf.subject == subject_of(2)) leaf = {leaf.leaf, {}, {}};
    }
    auto gutted = two_bikes();
    gutted.records.push_back(print);
    const auto check = gutted.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::partly);
    CHECK(check.lines_up());
    CHECK(check.tested == std::vector{subject_of(1)});
    CHECK(check.untold == std::vector{subject_of(2)});
    CHECK(check.covered_entries == 2);
    CHECK(check.entries_untold == 1);
    CHECK(check.recorded_earlier == 0);
    const auto that_one = gutted.check(print.fingerprint(), subject_of(2));
    CHECK(that_one.answer == FingerprintAnswer::cannot_tell);
    CHECK_FALSE(that_one.lines_up());
    CHECK(gutted.check(print.fingerprint(), subject_of(1)).answer == FingerprintAnswer::unchanged);
}

TEST_CASE("A bike that was added to a hand-over takes nothing from what it is known to hold", "[fingerprint]") {
    auto print = two_bikes().print(130);
    for (auto& leaf : print.leaves) {
        if (leaf.subject == subject_of(2)) leaf = {leaf.leaf, {}, {}};
    }
    ExampleFile given;
    given.add(1, 11, 0, 0, 100);
    given.add(1, 12, 1, 11, 120);
    given.add(3, 31, 0, 0, 140); // the buyer's own
    given.records = {print};
    auto check = given.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::partly);
    CHECK(check.lines_up());
    CHECK(check.untold == std::vector{subject_of(3)});
    ExampleFile cut; // the bike itself is not whole: that is said first
    cut.add(1, 11, 0, 0, 100);
    cut.add(3, 31, 0, 0, 140);
    cut.records = {print};
    check = cut.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::missing);
    CHECK_FALSE(check.lines_up());
}

TEST_CASE("Where a covered frame is not here, it cannot be told whether those in front of it were covered",
          "[fingerprint]") {
    auto file = two_bikes();
    file.add(1, 13, 2, 12, 125);
    const auto print = file.print(130);
    ExampleFile cut = two_bikes(); // the covered end itself
    cut.records = {print};
    auto check = cut.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::missing);
    CHECK(check.entries_untold == 2);
    CHECK(check.recorded_earlier == 0);
    CHECK(check.covered_entries == 1); // the other bike
    ExampleFile gap; // one in the middle, with an entry since
    gap.add(1, 11, 0, 0, 100);
    gap.add(2, 21, 0, 0, 110);
    gap.add(1, 13, 2, 12, 125);
    gap.add(1, 14, 3, 13, 140);
    gap.records = {print};
    check = gap.check(print.fingerprint());
    CHECK(check.answer == FingerprintAnswer::missing);
    CHECK(check.entries_untold == 1);
    CHECK(check.recorded_earlier == 0);
    CHECK(check.recorded_later == 1);
    CHECK(check.covered_entries == 2);
}

TEST_CASE("The answer about one bike is about that one alone", "[fingerprint]") {
    auto file = two_bikes();
    const auto print = file.print(130);
    file.add(1, 13, 2, 12, 140);
    file.add(3, 31, 0, 0, 150);
    auto check = file.check(print.fingerprint(), subject_of(1));
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.covered_entries == 2);
    CHECK(check.recorded_later == 1);
    CHECK(file.check(print.fingerprint(), subject_of(2)).covered_entries == 1);
    CHECK(file.check(print.fingerprint(), subject_of(3)).answer == FingerprintAnswer::not_covered);
}

TEST_CASE("Another bike that was changed or is not here does not touch the answer about one",
          "[fingerprint]") {
    const auto print = two_bikes().print(130);
    ExampleFile changed;
    changed.add(1, 11, 0, 0, 100);
    changed.add(2, 29, 0, 0, 110);
    changed.add(1, 12, 1, 11, 120);
    changed.records = {print};
    REQUIRE(changed.check(print.fingerprint()).answer == FingerprintAnswer::changed);
    CHECK(changed.check(print.fingerprint(), subject_of(1)).answer == FingerprintAnswer::unchanged);
    CHECK(changed.check(print.fingerprint(), subject_of(2)).answer == FingerprintAnswer::changed);
    ExampleFile without;
    without.add(1, 11, 0, 0, 100);
    without.add(1, 12, 1, 11, 120);
    without.records = {print};
    REQUIRE(without.check(print.fingerprint()).answer == FingerprintAnswer::missing);
    CHECK(without.check(print.fingerprint(), subject_of(1)).answer == FingerprintAnswer::unchanged);
    CHECK(without.check(print.fingerprint(), subject_of(2)).answer == FingerprintAnswer::missing);
}

TEST_CASE("Bare leaves answer about one bike only as far as they fit it", "[fingerprint]") {
    const auto print = bare(two_bikes().print(130));
    ExampleFile one;
    one.add(1, 11, 0, 0, 100);
    one.add(1, 12, 1, 11, 120);
    one.records = {print};
    const auto check = one.check(print.fingerprint(), subject_of(1));
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.covered_entries == 2);
    CHECK(check.subjects_not_held == 0);
    ExampleFile rewritten;
    rewritten.add(1, 11, 0, 0, 100);
    rewritten.add(1, 19, 1, 11, 120);
    rewritten.records = {print};
    CHECK(rewritten.check(print.fingerprint(), subject_of(1)).answer == FingerprintAnswer::cannot_tell);
}
