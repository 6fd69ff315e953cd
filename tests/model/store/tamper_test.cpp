// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"
#include "tests/model/store/forge.h"

#include <functional>
#include <iostream>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// Frames of the bike that the fingerprint covers, and all of them.
constexpr std::uint32_t covered = 6;
constexpr std::uint32_t in_all = 8;

/// A garage whose fingerprint was printed after six saves of a bike, with two more since. The fifth save
/// holds three entries, the others one.
struct Printed {
    Bench bench;
    Hash256 fingerprint{};
    Bytes bytes;

    Printed() {
        auto garage = bench.create();
        REQUIRE(garage);
        for (std::uint32_t i = 1; i <= in_all; ++i) {
            const std::vector<NewRecord> saved(i == 5 ? 3 : 1,
                                               NewRecord{subject_of(1), fuel_record(static_cast<int>(i))});
            REQUIRE(garage->append(saved));
            if (i == covered) fingerprint = garage->take_fingerprint({1'704'650'000}).value().fingerprint();
        }
        bytes = bench.bytes();
    }
};

/// Opened on a computer that never wrote to it, as a buyer would.
Result<GarageFile> opened(const Bytes& bytes) {
    static Bench bench;
    write_file(bench.path(), bytes);
    return bench.open(ScanDepth::everything);
}

TypedFingerprint typed(const Hash256& fingerprint) {
    return TypedFingerprint::read(fingerprint_text(fingerprint)).value();
}

/// What happens to the record of the fingerprint in the tampered file.
enum class Saved { kept, dropped, forged, bare };

void set_record(Forge& forge, Saved record) {
    if (record == Saved::kept) return;
    if (record == Saved::bare) {
        for (auto& leaf : forge.records.front().leaves)
            leaf = {leaf.leaf, {}, {}};
        return;
    }
    forge.records.clear();
    if (record == Saved::dropped) return;
    // A record of the state that the forger made up, with the time of the true printing.
    const auto file = opened(forge.file());
    if (!file) return;
    forge.records.push_back(
        {.printed = {1'704'650'000}, .entries = covered, .leaves = leaves_of(file->index())});
}

struct Tampering {
    const char* name;
    std::function<void(Forge& forge, const std::vector<std::size_t>& bike)> change;
    FingerprintAnswer with_record;
    std::uint32_t named_with_record; ///< Which frame, counted from 1; 0: none.
    std::uint32_t named_without;     ///< With the answer not_found; 0: no chain breaks.
    std::string behind = {};         ///< Ends the place that is named; empty: not looked at.
};

void drop(Forge& forge, std::size_t place) {
    forge.frames.erase(forge.frames.begin() + static_cast<std::ptrdiff_t>(place));
}
void insert_copy(Forge& forge, std::size_t place) {
    auto copy = forge.frames[place];
    forge.frames.insert(forge.frames.begin() + static_cast<std::ptrdiff_t>(place), std::move(copy));
    forge.edit(place);
}
/// What frames say, with everything else of them left where it is.
void swap_contents(Forge& forge, std::size_t a, std::size_t b) {
    std::swap(forge.frames[a].bodies, forge.frames[b].bodies);
    std::swap(forge.frames[a].salts, forge.frames[b].salts);
}

using enum FingerprintAnswer;

/// The third frame of the bike is bike[2].
const std::vector<Tampering>& tamperings() {
    static const std::vector<Tampering> all{
        {"edit one", [](Forge& f, const auto& bike) { f.edit(bike[2]); }, changed, 3, 3, "-2"},
        {"edit the first", [](Forge& f, const auto& bike) { f.edit(bike[0]); }, changed, 1, 1, "-..."},
        {"edit two",
         [](Forge& f, const auto& bike) {
             f.edit(bike[1]);
             f.edit(bike[4]);
         },
         changed, 2, 2},
        {"edit the newest that is covered, behind a save of three entries",
         [](Forge& f, const auto& bike) { f.edit(bike[5]); }, changed, 6, 6, "-7"},
        {"edit one and make all hashes behind it right",
         [](Forge& f, const auto& bike) {
             f.edit(bike[2]);
             f.relink();
         },
         changed, 6, 0},
        {"drop one", [](Forge& f, const auto& bike) { drop(f, bike[2]); }, missing, 3, 3},
        {"drop one and close the gap",
         [](Forge& f, const auto& bike) {
             drop(f, bike[2]);
             f.relink();
         },
         changed, 6, 0},
        {"swap two", [](Forge& f, const auto& bike) { swap_contents(f, bike[2], bike[3]); }, changed, 3, 3},
        {"swap two and make all hashes right",
         [](Forge& f, const auto& bike) {
             swap_contents(f, bike[2], bike[3]);
             f.relink();
         },
         changed, 6, 0},
        {"insert one and make all hashes right",
         [](Forge& f, const auto& bike) {
             insert_copy(f, bike[2]);
             f.relink();
         },
         changed, 6, 0},
        {"cut off the end", [](Forge& f, const auto& bike) { f.frames.resize(bike[4]); }, missing, 6, 0,
         "-..."},
        {"rewrite the tail",
         [](Forge& f, const auto& bike) {
             for (std::size_t i = 3; i < bike.size(); ++i)
                 f.edit(bike[i]);
             f.relink();
         },
         changed, 6, 0},
        {"rewrite everything",
         [](Forge& f, const auto& bike) {
             for (const auto place : bike)
                 f.edit(place);
             f.relink();
         },
         changed, 6, 0},
        {"rewrite everything under a new chain",
         [](Forge& f, const auto& bike) {
             for (const auto place : bike) {
                 f.edit(place);
                 f.frames[place].header.chain.bytes.fill(0x42);
             }
             f.relink();
         },
         missing, 6, 0},
    };
    return all;
}

/// "frame 6 of the entries mw-..., behind the entry mw-7" for "-7", "frame 6 of the entries mw-..." for
/// "-...".
bool ends_behind(const std::string& place, const std::string& behind) {
    if (place.empty() || behind.empty()) return true;
    const bool says_behind = place.find(", behind the entry ") != std::string::npos;
    return place.ends_with(behind) && says_behind == (behind != "-...");
}

/// "frame 3 of the entries "; empty for 0.
std::string frame_named(std::uint32_t number) {
    return number == 0 ? std::string() : "frame " + std::to_string(number) + " of the entries ";
}

} // namespace

TEST_CASE(
    "Promise 9: history cannot be edited quietly, whatever was done to it and to the fingerprint record",
    "[tamper]") {
    const Printed printed;
    REQUIRE(opened(printed.bytes)->check(typed(printed.fingerprint)).answer == unchanged);
    std::size_t rows = 0;
    for (const auto& tampering : tamperings()) {
        for (const auto record : {Saved::kept, Saved::dropped, Saved::forged, Saved::bare}) {
            INFO(tampering.name << ", record " << static_cast<int>(record));
            Forge forge(printed.bytes);
            tampering.change(forge, forge.longest_chain());
            set_record(forge, record);
            const auto file = opened(forge.file());
            REQUIRE(file); // every hash and seal is right: the file opens
            ++rows;
            const auto check = file->check(typed(printed.fingerprint));
            CHECK(check.answer != unchanged);
            CHECK_FALSE(check.lines_up());
            INFO(check.place);
            CHECK(ends_behind(check.place, tampering.behind));
            CHECK_FALSE(file->check(typed(printed.fingerprint), subject_of(1)).lines_up());
            if (record == Saved::kept) {
                CHECK(check.answer == tampering.with_record);
                CHECK(check.place.starts_with(frame_named(tampering.named_with_record)));
            } else if (record == Saved::bare && check.answer == partly) {
                // The settings are as they were, and the bike fits no leaf: that is too little to line up.
                CHECK_FALSE(check.lines_up());
                CHECK(check.untold == std::vector{subject_of(1)});
                CHECK(tampering.named_without != 3);
            } else if (record == Saved::bare) { // the covered end is here, what it stands on is not
                CHECK(check.answer == tampering.with_record);
                CHECK(check.place.starts_with(frame_named(tampering.named_without)));
                CHECK(tampering.named_without != 0);
            } else {
                CHECK(check.answer == not_found);
                CHECK(check.place.starts_with(frame_named(tampering.named_without)));
                CHECK(check.place.empty() == (tampering.named_without == 0));
            }
        }
    }
    std::cout << "tamper table: " << rows << " forged files, none lines up\n";
    CHECK(rows == tamperings().size() * 4);
}

TEST_CASE("Promise 9: frames that only stand elsewhere in the file make it damaged", "[tamper]") {
    const Printed printed;
    Forge forge(printed.bytes);
    const auto bike = forge.longest_chain();
    std::swap(forge.frames[bike[2]], forge.frames[bike[3]]);
    const auto file = opened(forge.file());
    REQUIRE_FALSE(file);
    CHECK(file.error().kind == ProblemKind::damaged);
    CHECK(file.error().sentence.find("stands behind a later frame of its chain") != std::string::npos);
}

TEST_CASE("Promise 9: a frame slipped in beside others is counted, or fits no state", "[tamper]") {
    const Printed printed;
    Forge forge(printed.bytes);
    insert_copy(forge, forge.longest_chain()[3]); // stands on the third, as the fourth does
    if (forge.hash_of(forge.longest_chain()[4]) < forge.hash_of(forge.longest_chain()[3]))
        std::swap(forge.frames[forge.longest_chain()[3]], forge.frames[forge.longest_chain()[4]]);
    const auto file = opened(forge.file());
    REQUIRE(file);
    const auto check = file->check(typed(printed.fingerprint));
    CHECK(check.answer == unchanged); // everything covered is here: the new one is said beside it
    CHECK(check.forked_before == 1);
    CHECK(check.recorded_earlier == 1);
    REQUIRE_FALSE(file->findings().empty());
    CHECK(file->findings().front().id == "chain-forked");

    forge.records.clear();
    const auto without_record = opened(forge.file());
    REQUIRE(without_record);
    CHECK(without_record->check(typed(printed.fingerprint)).answer == not_found);
}

// That `check` says so of such files is tested with its words, in tests/reports/compose.
TEST_CASE("Promise 9: what no fingerprint was printed of can be rewritten unnoticed", "[tamper]") {
    const Printed printed;
    Forge forge(printed.bytes);
    forge.records.clear();
    for (const auto place : forge.longest_chain())
        forge.edit(place);
    forge.relink();
    auto file = opened(forge.file());
    REQUIRE(file);
    CHECK(file->findings().empty());
    CHECK(file->notices().empty());
    const auto later = file->take_fingerprint({2'000'000'000});
    REQUIRE(later);
    CHECK(file->check(typed(later->fingerprint())).answer == unchanged);
}

TEST_CASE("Promise 9: a cut exactly at the end of a frame is only noticed against a fingerprint",
          "[tamper]") {
    const Printed printed;
    Forge forge(printed.bytes);
    forge.records.clear();
    forge.frames.resize(forge.longest_chain()[4]);
    const auto file = opened(forge.file());
    REQUIRE(file);
    CHECK(file->findings().empty());
    CHECK(file->notices().empty());
    CHECK(file->check(typed(printed.fingerprint)).answer == not_found);
}

TEST_CASE("Promise 9: the installation that wrote the entries notices others in their place", "[tamper]") {
    Printed printed;
    Forge forge(printed.bytes);
    forge.records.clear();
    for (const auto place : forge.longest_chain())
        forge.edit(place);
    forge.relink();
    write_file(printed.bench.path(), forge.file());
    const auto file = printed.bench.open();
    REQUIRE(file);
    REQUIRE_FALSE(file->findings().empty());
    CHECK(file->findings().front().id == "not-written-here");
}
