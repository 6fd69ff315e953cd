// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/action.h"
#include "model/store/recover.h"
#include "tests/catch.h"
#include "tests/model/store/disk_bench.h"

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// Where the frames and the records of a good file stand.
class Layout {
public:
    explicit Layout(const Bytes& bytes)
        : disk_(empty_disk()) {
        disk_.put(garage_path, bytes);
        SeededRandom random("layout");
        garage_.emplace(*GarageFile::open(surroundings(disk_, random), garage_path, ScanDepth::everything));
        borders_.insert(file_header_bytes);
        for (std::size_t at = file_header_bytes; at < bytes.size();) {
            at += read_action_header(ByteView(bytes).subspan(at))->length;
            borders_.insert(at);
        }
    }
    [[nodiscard]] const std::set<std::size_t>& borders() const { return borders_; }
    [[nodiscard]] const GarageFile& garage() const { return *garage_; }
    /// First byte of the action (or of the header) that byte `at` belongs to.
    [[nodiscard]] std::size_t action_of(std::size_t at) const {
        return at < file_header_bytes ? 0 : *std::prev(borders_.upper_bound(at));
    }
    /// The numbers, from 1, of the frame that may be named when `at` is wrong: the one around it. Where the
    /// 12 bytes are wrong that introduce an action, all of its frames, and the one behind them where all are
    /// right.
    [[nodiscard]] std::set<std::size_t> frames_at(std::size_t at) const {
        const auto start = action_of(at);
        const auto end = *borders_.upper_bound(at);
        std::set<std::size_t> numbers;
        std::size_t number = 1;
        for (const auto& frame : garage_->index().frames()) {
            if (frame.at >= end) break;
            if (frame.at >= start && frame.at <= at) numbers = {number};
            if (frame.at >= start && frame.at > at && at < start + action_header_bytes)
                numbers.insert(number);
            ++number;
        }
        if (at < start + action_header_bytes || numbers.empty()) numbers.insert(number);
        return numbers;
    }
    /// Where what is damaged by a change of this byte may begin: its action, or a frame of it that does not
    /// stand behind the byte, unless the byte belongs to the heading of all of them.
    [[nodiscard]] std::set<std::size_t> places_at(std::size_t at) const {
        const auto start = action_of(at);
        const auto end = *borders_.upper_bound(at);
        std::set<std::size_t> places{start};
        if (at < start + action_header_bytes) places.insert(end); // one frame more than there is
        for (const auto& frame : garage_->index().frames()) {
            if (frame.at >= start && frame.at < end && (frame.at <= at || at < start + action_header_bytes))
                places.insert(frame.at);
        }
        return places;
    }
    /// The last entry in front of an action, as people call it.
    [[nodiscard]] std::string entry_before(std::size_t action) const {
        std::string id;
        for (const auto& frame : garage_->index().frames()) {
            if (frame.at < action && frame.entry_count > 0)
                id = garage_->index().entry_id(frame, frame.entry_count - 1);
        }
        return id;
    }

private:
    MemoryDisk disk_;
    std::optional<GarageFile> garage_;
    std::set<std::size_t> borders_;
};

bool names_one_of(const std::string& sentence, const std::set<std::size_t>& frames) {
    return std::ranges::any_of(frames, [&](std::size_t number) {
        return sentence.find("frame " + std::to_string(number) + ",") != std::string::npos;
    });
}

bool names_one_place_of(const std::string& sentence, const std::set<std::size_t>& places) {
    return std::ranges::any_of(places, [&](std::size_t place) {
        return sentence.find("at byte " + std::to_string(place) + ",") != std::string::npos;
    });
}

Result<GarageFile> open_bytes(MemoryDisk& disk, ByteView bytes) {
    disk.put(garage_path, bytes);
    static SeededRandom random("damage");
    return GarageFile::open(surroundings(disk, random), garage_path, ScanDepth::everything);
}

} // namespace

TEST_CASE("Promise 3: any changed bit is noticed, and its frame and entry are named", "[damage]") {
    const Bytes good = example_disk().bytes(garage_path);
    const Layout layout(good);
    REQUIRE(layout.borders().size() == 6);
    std::size_t tried = 0, unnoticed = 0, misplaced = 0;
    for (std::size_t bit = 0; bit < good.size() * 8; ++bit) {
        const auto at = bit / 8;
        auto bad = good;
        bad[at] = static_cast<std::uint8_t>(bad[at] ^ (1U << bit % 8));
        MemoryDisk disk = empty_disk();
        const auto opened = open_bytes(disk, bad);
        ++tried;
        if (opened || opened.error().kind != ProblemKind::damaged) ++unnoticed;
        if (opened) continue;
        const auto& sentence = opened.error().sentence;
        if (at < file_header_bytes) {
            const bool header = sentence.find("first 40 bytes") != std::string::npos ||
                                sentence.find("its first bytes") != std::string::npos;
            if (!header && ++misplaced == 1)
                WARN("byte " << at << ": " << sentence);
            continue;
        }
        const auto before = layout.entry_before(layout.action_of(at));
        const bool placed =
            names_one_place_of(sentence, layout.places_at(at)) && names_one_of(sentence, layout.frames_at(at)) &&
            (before.empty() || sentence.find("behind the entry " + before) != std::string::npos);
        if (!placed && ++misplaced == 1) WARN("byte " << at << ": " << sentence);
    }
    std::printf("damage: %zu bytes, %zu changed bits tried, %zu unnoticed, %zu not placed right\n",
                good.size(), tried, unnoticed, misplaced);
    CHECK(tried == good.size() * 8);
    CHECK(unnoticed == 0);
    CHECK(misplaced == 0);
}

TEST_CASE("Promise 3: every other value of every byte is noticed", "[damage]") {
    const Bytes good = example_disk().bytes(garage_path);
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

TEST_CASE("Promise 3: a cut file is noticed, or is an older state that says what it holds", "[damage]") {
    const Bytes good = example_disk().bytes(garage_path);
    const Layout layout(good);
    std::size_t wrong = 0;
    std::map<std::string, int> counts;
    for (std::size_t length = 0; length < good.size(); ++length) {
        MemoryDisk disk = empty_disk();
        const auto opened = open_bytes(disk, ByteView(good).first(length));
        if (length < file_header_bytes) {
            ++counts["inside the header"];
            if (opened || opened.error().kind != ProblemKind::damaged) ++wrong;
        } else if (layout.borders().contains(length)) { // only a fingerprint tells that there was more
            ++counts["between actions"];
            const bool fine = opened && opened->notices().empty() && opened->bytes() == length;
            if (!fine) {
                ++wrong;
                continue;
            }
            const auto count = opened->records().size();
            const auto& all = layout.garage().records();
            if (count > 0 && (opened->records().back().id != all[count - 1].id ||
                              opened->records().back().record != all[count - 1].record))
                ++wrong;
            if (count > 0 && count < all.size() && opened->records().back().id == all.back().id) ++wrong;
        } else {
            ++counts["torn"];
            const bool torn =
                opened && opened->notices().size() == 1 && opened->bytes() == layout.action_of(length) &&
                opened->notices()[0].find(std::to_string(length - opened->bytes()) + " bytes") !=
                    std::string::npos;
            if (!torn) ++wrong;
        }
    }
    std::printf(
        "damage: %zu shorter files: %d inside the header, %d torn, %d between actions; %zu judged wrong\n",
        good.size(), counts["inside the header"], counts["torn"], counts["between actions"], wrong);
    CHECK(counts["between actions"] == 5);
    CHECK(wrong == 0);
}

TEST_CASE("Promise 3: an action taken out of the middle is a finding", "[damage]") {
    MemoryDisk disk = empty_disk();
    SeededRandom random("middle");
    auto garage =
        GarageFile::create(surroundings(disk, random), garage_path, full_settings(), {1'700'000'000});
    REQUIRE(garage);
    for (int i = 0; i < 3; ++i)
        REQUIRE(garage->append({{subject_of(1), fuel_record(i)}}));
    const auto good = disk.bytes(garage_path);
    const Layout layout(good);
    const std::vector<std::size_t> ends(layout.borders().begin(), layout.borders().end());
    REQUIRE(ends.size() == 5);
    Bytes without(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(ends[2]));
    put_bytes(without, ByteView(good).subspan(ends[3]));
    const auto opened = open_bytes(disk, without);
    REQUIRE(opened);
    REQUIRE_FALSE(opened->findings().empty());
    CHECK(opened->findings().front().id == "frame-missing");
}

namespace {

using Hashes = std::set<Hash256>;

Hashes recovered(ByteView bytes) {
    MemoryDisk disk = empty_disk();
    disk.put(garage_path, bytes);
    SeededRandom random("recovered");
    const auto plan = plan_recovery(disk, random, garage_path, Patience{0});
    Hashes hashes;
    if (!plan) return hashes;
    for (const auto& frame : plan->set.frames())
        hashes.insert(frame.hash);
    return hashes;
}

/// Frames of the good file that stand wholly in front of `until` and do not hold byte `wrong`. An attachment
/// whose bytes are wrong is known by its hash all the same, so it is left out of `whole` and put into
/// `known`.
struct Expected {
    Hashes whole, known;
};
Expected expected(const Bytes& good, const ChainIndex& index, std::size_t until, std::size_t wrong) {
    Expected all;
    for (const auto& frame : index.frames()) {
        const auto end = frame.at + read_frame_start(ByteView(good).subspan(frame.at))->length;
        if (end > until) continue;
        const bool hit = frame.at <= wrong && wrong < end;
        if (!hit) all.whole.insert(frame.hash);
        if (!hit || frame.kind == FrameKind::attachment) all.known.insert(frame.hash);
    }
    return all;
}

} // namespace

TEST_CASE("Promise 3: recovery gives back every whole frame, whatever byte is wrong and wherever it ends",
          "[damage]") {
    const Bytes good = example_disk().bytes(garage_path);
    const Layout layout(good);
    const auto& index = layout.garage().index();
    std::size_t tried = 0, wrong = 0, shorter = 0;
    for (std::size_t at = file_header_bytes; at < good.size(); ++at) {
        auto bad = good;
        bad[at] = static_cast<std::uint8_t>(bad[at] ^ (1U << at % 8));
        const auto found = recovered(bad);
        const auto all = expected(good, index, good.size(), at);
        ++tried;
        if (found != all.whole && found != all.known && ++wrong == 1) WARN("byte " << at);
    }
    for (std::size_t length = file_header_bytes; length < good.size(); ++length) {
        const auto found = recovered(ByteView(good).first(length));
        const auto all = expected(good, index, length, good.size());
        ++shorter;
        const bool more = std::ranges::includes(found, all.whole) && found.size() == all.whole.size() + 1;
        const bool cut_attachment =
            more && length < good.size(); // known by its stored hash, its bytes cut off
        if (found != all.whole && !cut_attachment && ++wrong == 1) WARN("length " << length);
    }
    std::printf("recovery: %zu changed bytes and %zu shorter files, %zu wrong\n", tried, shorter, wrong);
    CHECK(wrong == 0);
}
