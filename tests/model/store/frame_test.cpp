// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/frame.h"

#include "tests/catch.h"
#include "tests/model/store/example_records.h"

#include <functional>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Salt salt_of(std::uint8_t number) {
    Salt salt;
    salt.fill(number);
    return salt;
}

const Bytes open_body{10, 11, 12, 13, 14, 15, 16, 17};
const Bytes money_body{20, 21};

Frame example_frame() {
    Frame frame;
    frame.header.parts_exist = 1 | 2;
    frame.header.entry_count = 1;
    frame.header.subject = subject_of(0x51);
    frame.header.chain.bytes.fill(0x52);
    frame.header.sequence = 3;
    frame.header.previous.fill(0x53);
    frame.parts[0] = shown_part(0, salt_of(1), open_body);
    frame.parts[1] = shown_part(1, salt_of(2), money_body);
    return frame;
}

tl::expected<VerifiedFrame, FrameFault> verify(const Bytes& bytes) {
    const auto start = read_frame_start(bytes);
    if (!start) return tl::unexpected<FrameFault>(start.error());
    if (start->length != bytes.size()) return tl::unexpected<FrameFault>("has another length");
    return verify_frame(*start, bytes);
}

std::string fault_of(const Bytes& bytes) {
    const auto verified = verify(bytes);
    return verified ? "" : verified.error();
}

std::string fault_with(const std::function<void(Frame&)>& change) {
    auto frame = example_frame();
    change(frame);
    return fault_of(encode_frame(frame));
}

} // namespace

TEST_CASE("A frame has the bytes that the guide states", "[frame]") {
    const auto frame = example_frame();
    const auto bytes = encode_frame(frame);
    REQUIRE(bytes.size() == 8 + 76 + (20 + 8) + (20 + 2) + 16);
    CHECK(get_number<std::uint32_t>(bytes, 0) == bytes.size());
    CHECK(Bytes(bytes.begin() + 4, bytes.begin() + 12) == Bytes{3, 0, 0, 0, 1, 1, 3, 0});
    CHECK(get_number<std::uint32_t>(bytes, 12) == 1); // entries
    CHECK(get_array<16>(bytes, 16) == subject_of(0x51).bytes);
    CHECK(get_array<16>(bytes, 32) == frame.header.chain.bytes);
    CHECK(get_number<std::uint32_t>(bytes, 48) == 3);
    CHECK(get_array<32>(bytes, 52) == frame.header.previous);
    CHECK(get_number<std::uint32_t>(bytes, 84) == 8);
    CHECK(get_array<16>(bytes, 88) == salt_of(1));
    CHECK(get_array<8>(bytes, 104) == get_array<8>(open_body, 0));
    CHECK(get_number<std::uint32_t>(bytes, 112) == 2);
    const auto hash = frame_hash(frame);
    CHECK(get_array<16>(bytes, bytes.size() - 16) == get_array<16>(hash, 0));
}

TEST_CASE("Part and frame hashes are what the guide says they are", "[frame]") {
    const auto frame = example_frame();
    const Bytes open_number{1}, money_number{2};
    CHECK(part_hash(0, salt_of(1), open_body) == sha256({open_number, salt_of(1), open_body}));
    const auto bytes = encode_frame(frame);
    CHECK(frame_hash(frame) ==
          sha256({as_bytes("sbframe1"), ByteView(bytes).subspan(8, 76), part_hash(0, salt_of(1), open_body),
                  sha256({money_number, salt_of(2), money_body})}));
}

TEST_CASE("A frame reads back with its parts", "[frame]") {
    const auto bytes = encode_frame(example_frame());
    const auto verified = verify(bytes);
    REQUIRE(verified);
    CHECK(verified->frame.header == example_frame().header);
    CHECK(verified->hash == frame_hash(example_frame()));
    CHECK(Bytes(verified->frame.parts[0].body.begin(), verified->frame.parts[0].body.end()) == open_body);
    CHECK(verified->frame.parts[1].salt == salt_of(2));
}

TEST_CASE("A frame without a part that was withheld keeps its hash", "[frame]") {
    auto frame = example_frame();
    const auto hash = frame_hash(frame);
    frame.parts[1] = withheld_part(frame.parts[1].hash);
    const auto bytes = encode_frame(frame);
    CHECK(bytes.size() == 8 + 76 + 28 + 32 + 16);
    const auto verified = verify(bytes);
    REQUIRE(verified);
    CHECK(verified->hash == hash);
    CHECK_FALSE(verified->frame.parts[1].shown);
    CHECK(verified->frame.exists(1));
    CHECK_FALSE(verified->frame.exists(2));
}

TEST_CASE("Every flipped bit of a frame is noticed", "[frame]") {
    const auto good = encode_frame(example_frame());
    std::size_t unnoticed = 0;
    for (std::size_t bit = 0; bit < good.size() * 8; ++bit) {
        auto bad = good;
        bad[bit / 8] = static_cast<std::uint8_t>(bad[bit / 8] ^ (1U << bit % 8));
        if (fault_of(bad).empty()) ++unnoticed;
    }
    CHECK(unnoticed == 0);
}

TEST_CASE("A frame with a right seal and a wrong header is refused", "[frame]") {
    CHECK(fault_with([](Frame&) {}).empty());
    CHECK(fault_with([](Frame& f) { f.header.kind = static_cast<FrameKind>(3); }) ==
          "is of a kind that does not exist");
    CHECK(fault_with([](Frame& f) { f.header.format = 0; }) == "has an encoding that does not exist");
    CHECK(fault_with([](Frame& f) { f.header.entry_count = 0; }) == "says that it holds no entry");
    CHECK(fault_with([](Frame& f) { f.header.sequence = 0; }) == "is a first frame with one before it");
    CHECK(fault_with([](Frame& f) { f.header.parts_exist = 2; }) == "names parts that do not exist");
    CHECK(fault_with([](Frame& f) { f.header.entry_count = 2; }) ==
          "says that it holds more entries than fit");
}

TEST_CASE("A part of one under, exactly and one over 1 MiB", "[frame]") {
    for (const std::size_t size : {max_part_bytes - 1, max_part_bytes, max_part_bytes + 1}) {
        const Bytes body(size, 7);
        auto frame = example_frame();
        frame.parts[1] = shown_part(1, salt_of(2), body);
        const auto fault = fault_of(encode_frame(frame));
        CHECK(fault.empty() == (size <= max_part_bytes));
    }
}

TEST_CASE("Entry counts: one under, at and one over what the open part can hold", "[frame]") {
    const Bytes body(80, 7);
    for (const std::uint32_t count : {9U, 10U, 11U}) {
        auto frame = example_frame();
        frame.parts[0] = shown_part(0, salt_of(1), body);
        frame.header.entry_count = count;
        CHECK(fault_of(encode_frame(frame)).empty() == (count <= 10));
    }
    const auto withheld = [](std::uint32_t count) {
        return fault_with([&](Frame& f) {
            f.parts[0] = withheld_part(f.parts[0].hash);
            f.header.entry_count = count;
        });
    };
    CHECK(withheld(max_part_bytes / min_entry_bytes - 1).empty());
    CHECK(withheld(max_part_bytes / min_entry_bytes).empty());
    CHECK(withheld(max_part_bytes / min_entry_bytes + 1) == "says that it holds more entries than fit");
    CHECK(withheld(UINT32_MAX) == "says that it holds more entries than fit");
}

TEST_CASE("An attachment verifies without its body, which is verified when used", "[frame]") {
    const Bytes content{'p', 'd', 'f'};
    Frame frame;
    frame.header.kind = FrameKind::attachment;
    frame.header.parts_exist = 8;
    frame.header.chain.bytes.fill(1);
    frame.parts[3] = shown_part(3, salt_of(9), content);
    const auto bytes = encode_frame(frame);
    REQUIRE(bytes.size() == 8 + 76 + 32 + 20 + 3 + 16);
    const auto start = read_frame_start(bytes);
    REQUIRE(start);
    REQUIRE(attachment_head_bytes(*start) == 136);
    const auto verified = verify_attachment(*start, ByteView(bytes).first(136), ByteView(bytes).last(16));
    REQUIRE(verified);
    CHECK(verified->hash == frame_hash(frame));
    CHECK(verified->attachment_bytes == 3);
    CHECK(verified->frame.parts[3].hash == part_hash(3, salt_of(9), content));

    frame.parts[3] = withheld_part(frame.parts[3].hash);
    const auto without = encode_frame(frame);
    const auto short_start = read_frame_start(without);
    REQUIRE(short_start);
    REQUIRE(attachment_head_bytes(*short_start) == 116);
    const auto bare =
        verify_attachment(*short_start, ByteView(without).first(116), ByteView(without).last(16));
    REQUIRE(bare);
    CHECK(bare->hash == verified->hash);
}

TEST_CASE("An attachment of one under, exactly and one over 64 MiB", "[frame]") {
    for (const std::size_t size :
         {max_attachment_bytes - 1, max_attachment_bytes, max_attachment_bytes + 1}) {
        // The lengths alone decide; no content is needed for that.
        Frame frame;
        frame.header.kind = FrameKind::attachment;
        frame.header.parts_exist = 8;
        frame.parts[3] = {.shown = true, .hash = {}, .salt = {}, .body = {}};
        auto bytes = encode_frame(frame);
        Bytes length;
        put_number(length, static_cast<std::uint32_t>(bytes.size() + size));
        std::ranges::copy(length, bytes.begin());
        CHECK(read_frame_start(bytes).has_value() == (size <= max_attachment_bytes));
    }
}
