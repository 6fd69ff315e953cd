// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/fuzz/garage_draft.h"

#include "tests/catch.h"
#include "tests/fuzz/change_garage.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::store;
using namespace sumpbook::fuzz;

namespace {

Bytes example_bytes() {
    Bench bench;
    make_example(bench);
    return bench.bytes();
}

bool opens(ByteView bytes) {
    MemoryDisk disk;
    disk.put("/g/a", bytes);
    SeededRandom random("draft");
    return GarageFile::open({disk, random, "/state", Patience{0}}, "/g/a", ScanDepth::everything).has_value();
}

} // namespace

TEST_CASE("A draft of a good file is written as it was read", "[fuzz]") {
    const auto bytes = example_bytes();
    CHECK(write_draft(read_draft(bytes)) == bytes);
    auto cut = bytes;
    cut.resize(cut.size() - 3);
    CHECK(write_draft(read_draft(cut)) == cut);
    CHECK(read_draft({}).actions.empty());
}

TEST_CASE("A change inside a draft is sealed again, and what names it follows", "[fuzz]") {
    auto draft = read_draft(example_bytes());
    for (auto* frame : frames_of(draft))
        frame->parts[0].salt[0] ^= 1; // every hash changes with it
    const auto bytes = write_draft(draft);
    CHECK(opens(bytes));
    CHECK(bytes != example_bytes());
    MemoryDisk disk;
    disk.put("/g/a", bytes);
    SeededRandom random("draft");
    const auto garage = GarageFile::open({disk, random, "/state", Patience{0}}, "/g/a");
    REQUIRE(garage);
    CHECK(garage->findings().empty()); // no frame is missing: links were made right
    const auto& saved = garage->fingerprints().front();
    CHECK(garage->check(TypedFingerprint::read(hex_text(saved.fingerprint())).value()).answer ==
          FingerprintAnswer::unchanged);
}

TEST_CASE("Changed garages keep to the length, and many of them open", "[fuzz]") {
    const auto bytes = example_bytes();
    std::size_t opened = 0;
    std::uint32_t at = 0;
    const ChangeBytes change = [&at](Bytes& changed, std::size_t /*most*/) {
        if (!changed.empty()) changed[++at % changed.size()] ^= 1;
    };
    for (std::uint32_t seed = 0; seed < 500; ++seed) {
        const auto changed = changed_garage(bytes, bytes.size() + 500, seed, change);
        CHECK(changed.size() <= bytes.size() + 500);
        CHECK(changed_garage(bytes, bytes.size() + 500, seed, [](Bytes&, std::size_t) {}).size() > 0);
        if (opens(changed)) ++opened;
        CHECK(crossed_garages(bytes, changed, 3000, seed).size() <= 3000);
    }
    CHECK(opened > 50);
    CHECK(opened < 450);
}

TEST_CASE("A count that a frame only claims makes no change long", "[fuzz]") {
    auto draft = read_draft(example_bytes());
    for (auto* frame : frames_of(draft))
        frame->header.entry_count = 1'000'000;
    const auto bytes = write_draft(draft);
    for (std::uint32_t seed = 0; seed < 500; ++seed)
        CHECK(changed_garage(bytes, 100'000'000, seed, [](Bytes&, std::size_t) {}).size() < 500'000);
}
