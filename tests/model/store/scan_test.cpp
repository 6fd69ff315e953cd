// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/scan.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// A sealed frame with an open part of `size` bytes; the scan does not look into bodies.
Bytes frame_of(std::uint8_t number, std::size_t size = 16) {
    const Bytes body(size, number);
    Frame frame;
    frame.header.parts_exist = 1;
    frame.header.entry_count = 1;
    frame.header.chain.bytes[0] = number;
    frame.parts[0] = shown_part(0, {}, body);
    return encode_frame(frame);
}

Bytes attachment_of(const Bytes& content) {
    Frame frame;
    frame.header.kind = FrameKind::attachment;
    frame.header.parts_exist = 8;
    frame.parts[3] = shown_part(3, {}, content);
    return encode_frame(frame);
}

Bytes joined(const std::vector<Bytes>& pieces) {
    Bytes all;
    for (const auto& piece : pieces)
        put_bytes(all, piece);
    return all;
}

struct Seen final : ScanHandler {
    std::vector<std::uint8_t> frames;
    std::size_t fingerprints = 0;
    void frame(const VerifiedFrame& verified, std::uint64_t /*at*/) override {
        now_.push_back(verified.frame.header.chain.bytes[0]);
    }
    void fingerprint_record(ByteView /*body*/) override { ++fingerprints; }
    void action_done(bool good) override {
        if (good) frames.insert(frames.end(), now_.begin(), now_.end());
        now_.clear();
    }

private:
    std::vector<std::uint8_t> now_;
};

struct Scanned {
    Scan scan;
    Seen seen;
};

Scanned scan_of(const Bytes& bytes, ScanDepth depth = ScanDepth::usual) {
    Scanned scanned;
    Window window(ByteView(bytes), 0);
    scanned.scan = scan_actions(window, 0, 0, depth, scanned.seen);
    return scanned;
}

const Bytes first = encode_action({frame_of(1), frame_of(2)});
const Bytes second = encode_action({frame_of(3)});
const Bytes third = encode_action({frame_of(4)});

} // namespace

TEST_CASE("Good actions are handed on in order", "[scan]") {
    const auto found = scan_of(joined({first, encode_fingerprint_action(Bytes{1}), second}));
    CHECK(found.scan.tail == Tail::whole);
    CHECK(found.seen.frames == std::vector<std::uint8_t>{1, 2, 3});
    CHECK(found.seen.fingerprints == 1);
    CHECK(found.scan.frames == 3);
    CHECK(scan_of({}).scan.tail == Tail::whole);
}

TEST_CASE("Damage followed by a good action is no tail", "[scan]") {
    for (const std::size_t at : {0U, 4U, 8U, 11U, 40U, 200U}) {
        auto bytes = joined({first, second, third});
        bytes[first.size() + std::min(at, second.size() - 1)] ^= 0x40;
        const auto found = scan_of(bytes);
        CHECK(found.scan.tail == Tail::whole);
        REQUIRE(found.scan.damages.size() == 1);
        CHECK(found.scan.damages[0].at == first.size());
        CHECK(found.scan.damages[0].until == first.size() + second.size());
        // With a wrong length or count it is the place behind the frame that is wrong.
        CHECK(found.scan.damages[0].frame_number == (at == 4 || at == 8 ? 4 : 3));
        CHECK(found.seen.frames == std::vector<std::uint8_t>{1, 2, 4});
    }
}

TEST_CASE("Of an action with one wrong frame nothing is handed on", "[scan]") {
    auto bytes = joined({first, second});
    bytes[first.size() - 1] ^= 1;
    const auto found = scan_of(bytes);
    REQUIRE(found.scan.damages.size() == 1);
    CHECK(found.scan.damages[0].frame_number == 2);
    CHECK(found.scan.damages[0].what == "does not match its seal");
    CHECK(found.seen.frames == std::vector<std::uint8_t>{3});
}

TEST_CASE("An action cut off by the end of the file is torn, at every length", "[scan]") {
    for (std::size_t length = 1; length < first.size(); ++length) {
        const Bytes cut(first.begin(), first.begin() + static_cast<std::ptrdiff_t>(length));
        const auto found = scan_of(joined({second, cut}));
        CHECK(found.scan.tail == Tail::torn);
        CHECK(found.scan.good_end == second.size());
        CHECK(found.seen.frames == std::vector<std::uint8_t>{3});
    }
}

TEST_CASE("Zeros at the end are torn", "[scan]") {
    for (const std::size_t length : {1U, 11U, 12U, 13U, 5000U})
        CHECK(scan_of(joined({second, Bytes(length, 0)})).scan.tail == Tail::torn);
}

TEST_CASE("A last action that is all there and not right is damaged and not torn", "[scan]") {
    for (std::size_t bit = 0; bit < first.size() * 8; ++bit) {
        auto bytes = joined({second, first});
        bytes[second.size() + bit / 8] =
            static_cast<std::uint8_t>(bytes[second.size() + bit / 8] ^ (1U << bit % 8));
        const auto found = scan_of(bytes);
        CHECK(found.scan.tail == Tail::damaged);
        CHECK(found.scan.tail_damage->at == second.size());
    }
}

TEST_CASE("A last action whose end was never written is damaged when its length is there", "[scan]") {
    for (std::size_t zeros = 1; zeros < first.size(); ++zeros) {
        auto bytes = joined({second, first});
        std::fill(bytes.end() - static_cast<std::ptrdiff_t>(zeros), bytes.end(), std::uint8_t{0});
        const auto found = scan_of(bytes);
        CHECK(found.scan.tail != Tail::whole);
        CHECK(found.scan.good_end == second.size());
    }
}

TEST_CASE("A fingerprint record is judged like an action", "[scan]") {
    const auto print = encode_fingerprint_action(Bytes{1, 2, 3, 4, 5, 6, 7, 8});
    for (std::size_t length = 1; length < print.size(); ++length) {
        const Bytes cut(print.begin(), print.begin() + static_cast<std::ptrdiff_t>(length));
        CHECK(scan_of(joined({second, cut})).scan.tail == Tail::torn);
    }
    for (std::size_t bit = 0; bit < print.size() * 8; ++bit) {
        auto bad = print;
        bad[bit / 8] = static_cast<std::uint8_t>(bad[bit / 8] ^ (1U << bit % 8));
        CHECK(scan_of(joined({second, bad})).scan.tail == Tail::damaged);
        CHECK(scan_of(joined({second, bad, third})).scan.damages.size() == 1);
    }
}

TEST_CASE("An attachment that is not in the last action is verified only when asked for", "[scan]") {
    const auto attached = encode_action({attachment_of(Bytes(100, 7))});
    auto bytes = joined({attached, second});
    bytes[12 + 136 + 50] ^= 1;
    CHECK(scan_of(bytes).scan.damages.empty());
    CHECK(scan_of(bytes, ScanDepth::everything).scan.damages.size() == 1);
    auto last = joined({second, attached});
    last[second.size() + 12 + 136 + 50] ^= 1;
    CHECK(scan_of(last).scan.tail == Tail::damaged);
}

TEST_CASE("A torn attachment that holds a whole garage file is torn, not damage", "[scan]") {
    const auto attached = encode_action({attachment_of(joined({first, second, third}))});
    auto bytes = joined({second, attached});
    bytes.resize(bytes.size() - 20);
    const auto found = scan_of(bytes);
    CHECK(found.scan.tail == Tail::torn);
    CHECK(found.scan.damages.empty());
}

TEST_CASE("Actions longer than the window are read", "[scan]") {
    const auto long_action = encode_action(
        {frame_of(1, max_part_bytes), frame_of(2, max_part_bytes), attachment_of(Bytes(3'000'000, 5))});
    const auto found = scan_of(joined({long_action, second}), ScanDepth::everything);
    CHECK(found.scan.tail == Tail::whole);
    CHECK(found.seen.frames == std::vector<std::uint8_t>{1, 2, 0, 3});
}
