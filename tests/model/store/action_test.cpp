// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/action.h"

#include "model/store/hash.h"
#include "tests/catch.h"
#include "tests/model/store/example_records.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// A header with these bytes from 8 on and a right check.
Bytes header_with(std::uint16_t format, std::uint8_t reserved) {
    auto bytes = encode_file_header(subject_of(7));
    bytes[8] = static_cast<std::uint8_t>(format);
    bytes[9] = static_cast<std::uint8_t>(format >> 8U);
    bytes[12] = reserved;
    const auto check = sha256({ByteView(bytes).first(32)});
    std::copy_n(check.begin(), 8, bytes.begin() + 32);
    return bytes;
}

} // namespace

TEST_CASE("The file header has the bytes that the guide states", "[action]") {
    const auto bytes = encode_file_header(subject_of(7));
    REQUIRE(bytes.size() == 40);
    CHECK(Bytes(bytes.begin(), bytes.begin() + 16) ==
          Bytes{0x9D, 'S', 'M', 'P', 'B', '\r', '\n', 0x1A, 1, 0, 0, 0, 0, 0, 0, 0});
    CHECK(get_array<16>(bytes, 16) == subject_of(7).bytes);
    CHECK(read_file_header(bytes, "g") == subject_of(7));
}

TEST_CASE("A header that was changed is damage, one of a later format is not", "[action]") {
    CHECK(read_file_header(header_with(2, 0), "g").error().kind == ProblemKind::newer_format);
    CHECK(read_file_header(header_with(2, 0), "g").error().sentence.find("format 2") != std::string::npos);
    CHECK(read_file_header(header_with(65'535, 9), "g").error().kind == ProblemKind::newer_format);
    CHECK(read_file_header(header_with(0, 0), "g").error().kind == ProblemKind::damaged);
    CHECK(read_file_header(header_with(1, 1), "g").error().kind == ProblemKind::damaged);
    const auto good = encode_file_header(subject_of(7));
    for (std::size_t bit = 0; bit < good.size() * 8; ++bit) {
        auto bad = good;
        bad[bit / 8] = static_cast<std::uint8_t>(bad[bit / 8] ^ (1U << bit % 8));
        const auto read = read_file_header(bad, "g");
        CHECK((!read && read.error().kind == ProblemKind::damaged));
    }
    for (std::size_t length = 0; length < good.size(); ++length)
        CHECK_FALSE(read_file_header(ByteView(good).first(length), "g"));
}

TEST_CASE("An action states its length and its frames", "[action]") {
    const auto bytes = encode_action({Bytes{1, 2}, Bytes{3}});
    CHECK(bytes == Bytes{0xA7, 'a', 'c', 't', 15, 0, 0, 0, 2, 0, 0, 0, 1, 2, 3});
    const auto header = read_action_header(bytes);
    REQUIRE(header);
    CHECK(header->length == 15);
    CHECK(header->frame_count == 2);
    CHECK(header->kind == ActionKind::frames);
}

TEST_CASE("An action of one under, exactly and one over 65535 frames", "[action]") {
    // What is written into the header; what writing refuses is tested with make_action.
    for (const auto count : {max_frames_in_action - 1, max_frames_in_action}) {
        const auto header = read_action_header(encode_action(std::vector<Bytes>(count, Bytes{1})));
        REQUIRE(header);
        CHECK(header->frame_count == count);
        CHECK(header->length == action_header_bytes + count);
    }
    // Two bytes have no number for one more; what they would hold is no action.
    CHECK_FALSE(read_action_header(encode_action(std::vector<Bytes>(max_frames_in_action + 1, Bytes{1}))));
}

TEST_CASE("Action headers that cannot be are not taken for one", "[action]") {
    const auto with_length = [](std::size_t length) {
        Bytes bytes{0xA7, 'a', 'c', 't'};
        put_number(bytes, static_cast<std::uint32_t>(length));
        put_bytes(bytes, Bytes{1, 0, 0, 0});
        return read_action_header(bytes).has_value();
    };
    CHECK(with_length(max_action_bytes - 1));
    CHECK(with_length(max_action_bytes));
    CHECK_FALSE(with_length(max_action_bytes + 1));
    CHECK_FALSE(read_action_header(Bytes{0xA7, 'a', 'c', 't', 15, 0, 0, 0, 0, 0, 0, 0}));
    CHECK_FALSE(read_action_header(Bytes{0xA7, 'a', 'c', 't', 15, 0, 0, 0, 1, 0, 0, 1}));
    CHECK_FALSE(read_action_header(Bytes{0xA7, 'a', 'c', 's', 15, 0, 0, 0, 1, 0, 0, 0}));
}

TEST_CASE("A fingerprint record carries its own seal", "[action]") {
    const Bytes body{5, 6, 7};
    const auto bytes = encode_fingerprint_action(body);
    REQUIRE(bytes.size() == 12 + 3 + 16);
    const auto header = read_action_header(bytes);
    REQUIRE(header);
    CHECK(header->kind == ActionKind::fingerprint);
    CHECK(header->length == bytes.size());
    const auto found = fingerprint_body(bytes);
    CHECK(Bytes(found.begin(), found.end()) == body);
    CHECK(fingerprint_action_matches(bytes));
    auto bad = bytes;
    bad[13] ^= 1;
    CHECK_FALSE(fingerprint_action_matches(bad));
    const auto with_length = [](std::size_t length) {
        Bytes head{0xA7, 'f', 'p', 'r'};
        put_number(head, static_cast<std::uint32_t>(length));
        put_bytes(head, Bytes{0, 0, 0, 0});
        return read_action_header(head).has_value();
    };
    CHECK_FALSE(with_length(27));
    CHECK(with_length(28));
    CHECK(with_length(max_fingerprint_record_bytes - 1));
    CHECK(with_length(max_fingerprint_record_bytes));
    CHECK_FALSE(with_length(max_fingerprint_record_bytes + 1));
}
