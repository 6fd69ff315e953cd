// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/action.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

#include <set>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// The places between the actions of the example file, with the header's end and the file's end.
std::set<std::size_t> borders_of(const Bytes& bytes) {
    std::set<std::size_t> borders{file_header_bytes};
    for (std::size_t at = file_header_bytes; at < bytes.size();) {
        at += read_action_header(ByteView(bytes).subspan(at))->length;
        borders.insert(at);
    }
    return borders;
}

/// First byte of the action (or of the header) that byte `at` belongs to.
std::size_t start_of_action(const std::set<std::size_t>& borders, std::size_t at) {
    return at < file_header_bytes ? 0 : *std::prev(borders.upper_bound(at));
}

} // namespace

TEST_CASE("Every flipped bit of a garage file is noticed, and placed", "[damage]") {
    Bench bench;
    make_example(bench);
    const auto good = bench.bytes();
    const auto borders = borders_of(good);
    REQUIRE(borders.size() == 6);
    std::size_t unnoticed = 0, misplaced = 0;
    for (std::size_t bit = 0; bit < good.size() * 8; ++bit) {
        auto bad = good;
        bad[bit / 8] = static_cast<std::uint8_t>(bad[bit / 8] ^ (1U << bit % 8));
        write_file(bench.path(), bad);
        const auto opened = bench.open(ScanDepth::everything);
        if (opened || opened.error().kind != ProblemKind::damaged) ++unnoticed;
        if (opened || bit / 8 < file_header_bytes) continue;
        const auto byte = "at byte " + std::to_string(start_of_action(borders, bit / 8)) + ",";
        if (opened.error().sentence.find(byte) == std::string::npos) ++misplaced;
    }
    CHECK(unnoticed == 0);
    CHECK(misplaced == 0);
}

TEST_CASE("Every other value of every byte is noticed", "[damage]") {
    Bench bench;
    make_example(bench);
    const auto good = bench.bytes();
    struct Nothing final : ScanHandler {
        void frame(const VerifiedFrame& /*frame*/, std::uint64_t /*at*/) override {}
        void fingerprint_record(ByteView /*body*/) override {}
        void action_done(bool /*good*/) override {}
    } nothing;
    std::size_t tried = 0, unnoticed = 0;
    for (std::size_t at = file_header_bytes; at < good.size(); at += 3) {
        for (unsigned value = 0; value < 256; value += 5) {
            if (good[at] == value) continue;
            auto bad = good;
            bad[at] = static_cast<std::uint8_t>(value);
            Window window(ByteView(bad), 0);
            const auto scan = scan_actions(window, file_header_bytes, 0, ScanDepth::everything, nothing);
            ++tried;
            if (scan.damages.empty() && scan.tail != Tail::damaged) ++unnoticed;
        }
    }
    CHECK(tried > 10'000);
    CHECK(unnoticed == 0);
}

TEST_CASE("Every prefix of a garage file is judged right", "[damage]") {
    Bench bench;
    make_example(bench);
    const auto good = bench.bytes();
    const auto borders = borders_of(good);
    std::size_t wrong = 0;
    for (std::size_t length = 0; length < good.size(); ++length) {
        write_file(bench.path(), ByteView(good).first(length));
        const auto opened = bench.open(ScanDepth::everything);
        if (length < file_header_bytes) {
            if (opened || opened.error().kind != ProblemKind::damaged) ++wrong;
        } else if (borders.contains(length)) { // an older state of the file: only a fingerprint tells
            if (!opened || !opened->notices().empty() || opened->bytes() != length) ++wrong;
        } else {
            const bool torn = opened && opened->notices().size() == 1 &&
                              opened->bytes() == start_of_action(borders, length);
            if (!torn) ++wrong;
        }
    }
    CHECK(wrong == 0);
}

TEST_CASE("An action taken out of the middle is a finding", "[damage]") {
    Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    for (int i = 0; i < 3; ++i)
        REQUIRE(garage->append({{subject_of(1), fuel_record(i)}}));
    const auto good = bench.bytes();
    const auto borders = borders_of(good);
    const std::vector<std::size_t> ends(borders.begin(), borders.end());
    REQUIRE(ends.size() == 5);
    Bytes without(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(ends[2]));
    put_bytes(without, ByteView(good).subspan(ends[3]));
    write_file(bench.path(), without);
    const auto opened = bench.open();
    REQUIRE(opened);
    REQUIRE_FALSE(opened->findings().empty());
    CHECK(opened->findings().front().id == "frame-missing");
}
