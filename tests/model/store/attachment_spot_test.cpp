// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/attachment_spot.h"

#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

constexpr std::size_t body_bytes = 4 * 1024 * 1024;
constexpr std::size_t piece = 4096;

/// A garage with one large attachment, and one entry behind it.
Hash256 fill(Bench& bench) {
    auto garage = bench.create().value();
    const auto paper = new_attachment(subject_of(1), Bytes(body_bytes, 0x5A), bench.random);
    REQUIRE(paper);
    Entry entry = full_entry(Attach{});
    entry.attachments = {{"paper.bin", "application/octet-stream", body_bytes, paper->hash}};
    REQUIRE(garage.append({{subject_of(1), Record{{1'700'000'100}, {}, entry}}}, {*paper}));
    CHECK(garage.attachments().at(0).checked); // it is the last action
    REQUIRE(garage.append({{subject_of(1), fuel_record(1)}}));
    return paper->hash;
}

} // namespace

TEST_CASE("Opening does not read the bodies of attachments", "[attachment]") {
    Bench bench;
    const auto hash = fill(bench);
    FailingFiles counting({.most_at_once = piece, .only = "read"});
    const auto garage = GarageFile::open(bench.around(counting), bench.path());
    REQUIRE(garage);
    const auto reads = counting.operations();
    INFO(reads << " reads of up to " << piece << " bytes");
    CHECK(static_cast<std::size_t>(reads) < body_bytes / piece / 2);
    REQUIRE(garage->attachments().size() == 1);
    CHECK(garage->attachments()[0].shown);
    CHECK_FALSE(garage->attachments()[0].checked);
    CHECK(garage->attachment(hash).value().size() == body_bytes);
    CHECK(static_cast<std::size_t>(counting.operations() - reads) >= body_bytes / piece);
}

TEST_CASE("A damaged body stops neither opening nor saving; reading it says damaged", "[attachment]") {
    Bench bench;
    const auto hash = fill(bench);
    auto bytes = bench.bytes();
    const auto place = bench.open().value().attachments().at(0).at;
    bytes[place + body_bytes / 2] ^= 4;
    write_file(bench.path(), bytes);
    auto garage = bench.open();
    REQUIRE(garage);
    CHECK(garage->records().size() == 3);
    CHECK(garage->append({{subject_of(1), fuel_record(2)}}));
    CHECK(garage->attachment(hash).error().kind == ProblemKind::damaged);
    CHECK(garage->damaged_attachments().value() == std::vector<Hash256>{hash});
}

TEST_CASE("The whole file read, every attachment is checked", "[attachment]") {
    Bench bench;
    static_cast<void>(fill(bench));
    const auto garage = bench.open(ScanDepth::everything);
    REQUIRE(garage);
    CHECK(garage->attachments().at(0).checked);
    CHECK(garage->damaged_attachments().value().empty());
}
