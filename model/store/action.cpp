// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/action.h"

#include "model/store/frame.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

// The first byte is no text and the last four notice a transfer that rewrote line ends.
constexpr std::array<std::uint8_t, 8> file_magic{0x9D, 'S', 'M', 'P', 'B', '\r', '\n', 0x1A};
constexpr std::array<std::uint8_t, 4> action_magic{0xA7, 'a', 'c', 't'};
constexpr std::array<std::uint8_t, 4> fingerprint_magic{0xA7, 'f', 'p', 'r'};
constexpr std::string_view fingerprint_tag = "sbprint1";
constexpr std::size_t checked_bytes = 32;
constexpr std::size_t check_bytes = 8;

Problem problem(ProblemKind kind, std::string sentence, const std::string& path) {
    return {kind, std::move(sentence), Place{.file = path, .line = {}, .column = {}, .text = {}}};
}

} // namespace

Bytes encode_file_header(const SubjectId& garage) {
    Bytes out(file_magic.begin(), file_magic.end());
    put_number(out, file_format);
    out.resize(16, 0);
    put_bytes(out, garage.bytes);
    put_bytes(out, ByteView(sha256({out})).first(check_bytes));
    return out;
}

Result<SubjectId> read_file_header(ByteView bytes, const std::string& path) {
    if (bytes.size() < file_header_bytes || !std::ranges::equal(bytes.first(file_magic.size()), file_magic)) {
        return pass_on(problem(
            ProblemKind::damaged,
            "This is not a garage file, or its first bytes were lost: it does not start as one.", path));
    }
    const Hash256 check = sha256({bytes.first(checked_bytes)});
    if (!std::ranges::equal(bytes.subspan(checked_bytes, check_bytes), ByteView(check).first(check_bytes))) {
        return pass_on(problem(ProblemKind::damaged,
                               "The garage file is damaged in its first 40 bytes, before the first frame.",
                               path));
    }
    const auto format = get_number<std::uint16_t>(bytes, 8);
    if (format > file_format) {
        return pass_on(problem(
            ProblemKind::newer_format,
            fmt::format("The garage file has format {}, written by a later version of this program. This "
                        "version reads formats up to {}. The file was left untouched.",
                        format, file_format),
            path));
    }
    if (format == 0 || !all_zero(bytes.subspan(10, 6))) {
        return pass_on(problem(ProblemKind::damaged,
                               "The first 40 bytes of the garage file say what no version writes.", path));
    }
    return SubjectId{get_array<16>(bytes, 16)};
}

std::optional<ActionHeader> read_action_header(ByteView bytes) {
    const ByteView magic = bytes.first(4);
    ActionHeader header{.kind = ActionKind::frames,
                        .length = get_number<std::uint32_t>(bytes, 4),
                        .frame_count = get_number<std::uint16_t>(bytes, 8)};
    if (!all_zero(bytes.subspan(10, 2))) return std::nullopt;
    if (std::ranges::equal(magic, action_magic)) {
        if (header.frame_count == 0 || header.length > max_action_bytes) return std::nullopt;
        return header;
    }
    if (!std::ranges::equal(magic, fingerprint_magic) || header.frame_count != 0) return std::nullopt;
    if (header.length < action_header_bytes + seal_bytes || header.length > max_fingerprint_record_bytes)
        return std::nullopt;
    header.kind = ActionKind::fingerprint;
    return header;
}

Bytes encode_action_header(std::size_t frame_bytes, std::size_t frame_count) {
    Bytes out(action_magic.begin(), action_magic.end());
    put_number(out, static_cast<std::uint32_t>(action_header_bytes + frame_bytes));
    put_number(out, static_cast<std::uint16_t>(frame_count));
    put_number(out, std::uint16_t{0});
    return out;
}

Bytes encode_action(const std::vector<Bytes>& frames) {
    std::size_t length = 0;
    for (const auto& frame : frames)
        length += frame.size();
    Bytes out = encode_action_header(length, frames.size());
    out.reserve(action_header_bytes + length);
    for (const auto& frame : frames)
        put_bytes(out, frame);
    return out;
}

Bytes encode_fingerprint_action(ByteView body) {
    Bytes out(fingerprint_magic.begin(), fingerprint_magic.end());
    put_number(out, static_cast<std::uint32_t>(action_header_bytes + body.size() + seal_bytes));
    put_number(out, std::uint32_t{0});
    put_bytes(out, body);
    put_bytes(out, ByteView(fingerprint_record_hash(body)).first(seal_bytes));
    return out;
}

ByteView fingerprint_body(ByteView action) {
    return action.subspan(action_header_bytes, action.size() - action_header_bytes - seal_bytes);
}

Hash256 fingerprint_record_hash(ByteView body) { return sha256({as_bytes(fingerprint_tag), body}); }

bool fingerprint_action_matches(ByteView action) {
    const Hash256 seal = fingerprint_record_hash(fingerprint_body(action));
    return std::ranges::equal(action.last(seal_bytes), ByteView(seal).first(seal_bytes));
}

} // namespace sumpbook::store
