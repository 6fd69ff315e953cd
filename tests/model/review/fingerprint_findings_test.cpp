// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/fingerprint_findings.h"

#include "model/store/action.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::review;
using namespace sumpbook::store;

namespace {

void append(GarageFile& garage, int number) {
    REQUIRE(garage.append({{subject_of(1), fuel_record(number)}}));
}

/// The file and the installation's notes, to be put back later.
struct Saved {
    explicit Saved(const Bench& bench, const GarageFile& garage)
        : file(bench.path())
        , notes(chain_notes_path(bench.folder.file("state"), garage.subject()))
        , file_bytes(bytes_of_file(file))
        , note_bytes(bytes_of_file(notes)) {}
    void put_back() const {
        write_file(file, file_bytes);
        write_file(notes, note_bytes);
    }
    std::string file, notes;
    Bytes file_bytes, note_bytes;
};

void add_record(const Bench& bench, const FingerprintRecord& record) {
    auto bytes = bench.bytes();
    put_bytes(bytes, encode_fingerprint_action(encode_fingerprint_record(record)));
    write_file(bench.path(), bytes);
}

std::vector<std::string> ids_of(Bench& bench) {
    const auto garage = bench.open();
    REQUIRE(garage);
    std::vector<std::string> ids;
    for (const auto& finding : fingerprint_findings(*garage))
        ids.push_back(finding.id);
    return ids;
}

using Ids = std::vector<std::string>;

} // namespace

TEST_CASE("A recorded fingerprint that lines up is no finding, whatever came later") {
    Bench bench;
    auto garage = make_example(bench);
    CHECK(fingerprint_findings(garage).empty());
    append(garage, 9);
    CHECK(ids_of(bench).empty());
}

TEST_CASE("A recorded fingerprint that does not line up says whether something changed or is missing") {
    Bench bench;
    auto garage = bench.create().value();
    append(garage, 1);
    const Saved before(bench, garage);
    append(garage, 2);
    const auto printed = garage.take_fingerprint({1'700'000'500});
    REQUIRE(printed);
    before.put_back();
    add_record(bench, *printed);
    CHECK(ids_of(bench) == Ids{"fingerprint-missing"});
    before.put_back();
    auto again = bench.open().value();
    append(again, 3); // another entry in the place of the second
    add_record(bench, *printed);
    CHECK(ids_of(bench) == Ids{"fingerprint-changed"});
    add_record(bench, *printed); // the same record twice says it once
    CHECK(ids_of(bench) == Ids{"fingerprint-changed"});
}

TEST_CASE("A recorded fingerprint of which nothing is here is foreign") {
    Bench bench;
    auto garage = bench.create().value();
    append(garage, 1);
    Bench elsewhere;
    elsewhere.random = SeededRandom("elsewhere");
    auto other = elsewhere.create().value();
    append(other, 1);
    const auto printed = other.take_fingerprint({1'700'000'500});
    REQUIRE(printed);
    add_record(bench, *printed);
    CHECK(ids_of(bench) == Ids{"fingerprint-record-foreign"});
}

TEST_CASE("A recorded fingerprint of another garage whose bike was taken over is no serious matter") {
    Bench bench;
    auto garage = bench.create().value();
    append(garage, 1);
    auto printed = garage.take_fingerprint({1'700'000'500});
    REQUIRE(printed);
    for (auto& leaf : printed->leaves) { // as a hand-over of the bike has it, and of no more
        if (leaf.subject != subject_of(1)) leaf = {Hash256{1}, {}, {}};
    }
    std::ranges::sort(printed->leaves, {}, &FingerprintLeaf::leaf);
    add_record(bench, *printed);
    CHECK(ids_of(bench) == Ids{"fingerprint-record-foreign"});
    auto bare = *printed; // of the bike only a number, and of the settings too: that is too little
    bare.leaves.push_back({Hash256{2}, {}, {}});
    std::ranges::sort(bare.leaves, {}, &FingerprintLeaf::leaf);
    for (auto& leaf : bare.leaves)
        leaf = {leaf.leaf, {}, {}};
    add_record(bench, bare);
    CHECK(ids_of(bench) == Ids{"fingerprint-record-foreign", "fingerprint-missing"});
}
