// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/recover.h"

#include "tests/catch.h"
#include "tests/model/store/set_bench.h"

#include <cstdio>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

struct Recovering : SetBench {
    Recovering() {
        example("/g");
        auto garage = open("/g"); // two frames in one action
        static_cast<void>(must(garage.append({{subject_of(1), fuel_record(8)}, {subject_of(2), fuel_record(9)}})));
        good = disk.bytes("/g");
        for (const auto& frame : garage.index().frames())
            frames.emplace_back(static_cast<std::size_t>(frame.at), frame.hash);
    }
    Result<RecoverPlan> plan(const Bytes& bytes) {
        disk.put("/broken", bytes);
        return plan_recovery(disk, random, "/broken", at_once);
    }
    /// Hashes of the frames that the byte range does not touch.
    [[nodiscard]] std::set<Hash256> untouched(std::size_t from, std::size_t until) const {
        std::set<Hash256> whole;
        for (const auto& [at, hash] : frames) {
            const auto length = get_number<std::uint32_t>(good, at);
            if (until <= at || from >= at + length) whole.insert(hash);
        }
        return whole;
    }

    Bytes good;
    std::vector<std::pair<std::size_t, Hash256>> frames;
};

std::set<Hash256> shown_frames(const FrameSet& set) {
    std::set<Hash256> hashes;
    for (const auto& frame : set.frames()) {
        if (frame.shown == frame.header.parts_exist) hashes.insert(frame.hash);
    }
    return hashes;
}

} // namespace

TEST_CASE("Recover gives back exactly the whole frames, whatever byte is changed", "[recover]") {
    Recovering bench;
    std::size_t tried = 0, wrong = 0, other_garage = 0, unplaced = 0;
    for (std::size_t at = 0; at < bench.good.size(); ++at) {
        for (const unsigned flip : {0x01U, 0x80U, 0xFFU}) {
            auto bad = bench.good;
            bad[at] = static_cast<std::uint8_t>(bad[at] ^ flip);
            ++tried;
            const auto plan = bench.plan(bad);
            // The header's format number alone can become that of a later version, with a check that is wrong.
            if (!plan) {
                ++wrong;
                continue;
            }
            if (shown_frames(plan->set) != bench.untouched(at, at + 1)) ++wrong;
            if (plan->set.garage() != bench.open("/g").subject()) ++other_garage;
            const bool placed = !plan->broken.empty() && plan->broken.front().at <= at && at < plan->broken.front().until;
            if (!placed) ++unplaced;
        }
    }
    CHECK(wrong == 0);
    CHECK(other_garage == 0);
    CHECK(unplaced == 0);
    std::printf("recover: %zu changed bytes\n", tried);
}

TEST_CASE("Recover gives back exactly the whole frames of every prefix", "[recover]") {
    Recovering bench;
    std::size_t wrong = 0;
    for (std::size_t length = 0; length < bench.good.size(); ++length) {
        const auto plan = bench.plan(Bytes(bench.good.begin(), bench.good.begin() + static_cast<std::ptrdiff_t>(length)));
        const auto whole = bench.untouched(length, bench.good.size());
        if (!plan) {
            if (!whole.empty() || plan.error().kind != ProblemKind::refused) ++wrong;
        } else if (shown_frames(plan->set) != whole) {
            ++wrong;
        }
    }
    CHECK(wrong == 0);
}

TEST_CASE("What was recovered is a canonical garage file, and the source is untouched", "[recover]") {
    Recovering bench;
    auto bad = bench.good;
    bad[bench.frames[4].first + 100] ^= 1;
    const auto plan = must(bench.plan(bad));
    REQUIRE(write_out(bench.disk, plan.set, "/new", plan.mode));
    CHECK(bench.disk.bytes("/broken") == bad);
    CHECK(bench.merged({"/new"}) == bench.disk.bytes("/new"));
    CHECK(bench.open("/new").fingerprints().size() == 1);
    // With another copy the gap is filled.
    CHECK(bench.merged({"/new", "/g"}) == bench.merged({"/g"}));
}

TEST_CASE("Missing frames and what their headings say are named", "[recover]") {
    Recovering bench;
    auto bad = bench.good;
    bad[bench.frames[3].first + 110] ^= 1; // the second frame about the first bike
    const auto plan = must(bench.plan(bad));
    REQUIRE(plan.missing.size() == 1);
    CHECK(plan.missing.front().subject == subject_of(1));
    CHECK(plan.missing.front().bike == "Red");
    CHECK(plan.missing.front().first == 1);
    CHECK(plan.missing.front().last == 1);
    REQUIRE(plan.broken.size() == 1);
    CHECK(plan.broken.front().at == bench.frames[3].first);
    CHECK(plan.broken.front().what == "a frame that does not match its seal");
    CHECK(plan.broken.front().heading.find("-2") != std::string::npos);
    CHECK(plan.entries + 1 == bench.open("/g").records().size());
    CHECK_FALSE(plan.whole());
    CHECK(must(bench.plan(bench.good)).whole());
}

TEST_CASE("An attachment with a changed byte keeps its frame, and another copy gives the bytes back", "[recover]") {
    Recovering bench;
    const Bytes paper{'p', 'a', 'p', 'e', 'r'};
    const auto found = std::search(bench.good.begin(), bench.good.end(), paper.begin(), paper.end());
    REQUIRE(found != bench.good.end());
    auto bad = bench.good;
    bad[static_cast<std::size_t>(found - bench.good.begin())] ^= 1;
    const auto plan = must(bench.plan(bad));
    CHECK(plan.attachments_dropped == 1);
    CHECK(plan.set.frames().size() == bench.frames.size());
    CHECK(plan.missing.empty());
    REQUIRE(write_out(bench.disk, plan.set, "/new"));
    CHECK(bench.merged({"/new", "/g"}) == bench.merged({"/g"}));
}

TEST_CASE("The garage's id is known from its header, its check or its settings, or it is said to be new", "[recover]") {
    Recovering bench;
    const auto subject = bench.open("/g").subject();
    auto bad = bench.good;
    CHECK(must(bench.plan(bad)).garage == GarageKnown::header);
    bad[0] = bad[9] = bad[12] = 0x77; // all that is wrong is outside the id
    CHECK(must(bench.plan(bad)).garage == GarageKnown::mended);
    bad[20] ^= 0x3C;
    CHECK(must(bench.plan(bad)).garage == GarageKnown::mended);
    CHECK(must(bench.plan(bad)).set.garage() == subject);
    for (std::size_t i = 0; i < file_header_bytes; ++i)
        bad[i] = 0;
    CHECK(must(bench.plan(bad)).garage == GarageKnown::settings);
    CHECK(must(bench.plan(bad)).set.garage() == subject);
    // Cut off in front: the file begins with its first action.
    const auto cut = must(bench.plan(Bytes(bench.good.begin() + 40, bench.good.end())));
    CHECK(cut.garage == GarageKnown::settings);
    CHECK(cut.set.frames().size() == bench.frames.size());
    // Without the frame of the settings nothing tells.
    for (std::size_t i = 0; i < bench.frames[1].first - 12; ++i)
        bad[i] = 0;
    const auto unknown = must(bench.plan(bad));
    CHECK(unknown.garage == GarageKnown::nowhere);
    CHECK(unknown.set.garage() != subject);
    CHECK(unknown.set.garage() != SubjectId{});
    CHECK(unknown.set.frames().size() + 1 == bench.frames.size());
}

TEST_CASE("What is no garage file gives nothing, and a later version's file is left alone", "[recover]") {
    Recovering bench;
    for (const auto& bytes : {Bytes{}, Bytes(10'000, 0), Bytes(10'000, 0xA7), Bytes(bench.good.begin(), bench.good.begin() + 40)}) {
        const auto plan = bench.plan(bytes);
        REQUIRE_FALSE(plan);
        CHECK(plan.error().kind == ProblemKind::refused);
    }
    auto later = encode_file_header(bench.open("/g").subject());
    later[8] = 9;
    const auto check = sha256({ByteView(later).first(32)});
    std::copy_n(check.begin(), 8, later.begin() + 32);
    put_bytes(later, ByteView(bench.good).subspan(40));
    const auto plan = bench.plan(later);
    REQUIRE_FALSE(plan);
    CHECK(plan.error().kind == ProblemKind::newer_format);
}
