// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry_parts.h"
#include "model/garage/ids.h"
#include "model/store/hash.h"

#include <optional>

namespace sumpbook::store {

// One frame, byte by byte (all numbers lowest byte first):
//   length of the whole frame 4, parts shown 1, zero 3                                   not hashed
//   kind 1, body format 1, parts that exist 1, zero 1, entry count 4, subject 16,
//   chain 16, sequence 4, hash of the chain's previous frame 32                          hashed, 76 bytes
//   each existing part, in order of its bit                                              through its hash
//     shown:      length of the body 4, salt 16, body
//     withheld:   its hash 32
//     attachment: its hash 32, and when shown length 4, salt 16, body
//   seal: the first 16 bytes of the frame hash

inline constexpr std::size_t frame_unhashed_bytes = 8;
inline constexpr std::size_t frame_header_bytes = 76;
inline constexpr std::size_t seal_bytes = 16;
inline constexpr std::size_t salt_bytes = 16;
inline constexpr std::size_t hash_bytes = 32;
inline constexpr std::size_t part_overhead_bytes = 4 + salt_bytes;

/// Longest body of one part of a records frame, and of an attachment.
inline constexpr std::size_t max_part_bytes = 1024 * 1024;
inline constexpr std::size_t max_attachment_bytes = 64 * 1024 * 1024;
/// An entry takes at least so many bytes of the open part; a frame that claims more entries is refused
/// before anything is set aside for them.
inline constexpr std::size_t min_entry_bytes = 8;
/// Most entries of one garage file.
inline constexpr std::size_t max_entries = 16'000'000;

enum class FrameKind : std::uint8_t { records = 1, attachment = 2 };
/// The encoding of the bodies. A frame with a higher number was written by a later version.
inline constexpr std::uint8_t body_format = 1;

/// Which hashed piece of a frame: bit 1, 2, 4 for the parts of its records, 8 for an attachment.
inline constexpr std::size_t part_slots = 4;
inline constexpr std::size_t attachment_slot = 3;
[[nodiscard]] constexpr std::size_t slot_of(Part part) { return static_cast<std::size_t>(part); }
[[nodiscard]] constexpr std::uint8_t bit_of(std::size_t slot) {
    return static_cast<std::uint8_t>(1U << slot);
}

using Salt = std::array<std::uint8_t, salt_bytes>;

struct FrameHeader {
    FrameKind kind = FrameKind::records;
    std::uint8_t format = body_format;
    std::uint8_t parts_exist = 0;
    std::uint32_t entry_count = 0; ///< 0 for an attachment.
    SubjectId subject;
    ChainId chain;
    std::uint32_t sequence = 0; ///< In the chain, from 0.
    Hash256 previous{};         ///< Zeros at sequence 0.
    bool operator==(const FrameHeader&) const = default;
};

/// One part of a frame. Withheld: only the hash is there. The body is a view into bytes held elsewhere.
struct PartView {
    bool shown = false;
    Hash256 hash{};
    Salt salt{};
    ByteView body;
};

struct Frame {
    FrameHeader header;
    std::array<PartView, part_slots> parts; ///< Only those of header.parts_exist mean anything.
    [[nodiscard]] bool exists(std::size_t slot) const { return (header.parts_exist & bit_of(slot)) != 0; }
    /// The bits of the parts that are shown.
    [[nodiscard]] std::uint8_t parts_shown() const;
};

/// Why a frame is not right, in words that follow "it": "does not match its seal".
using FrameFault = const char*;

/// SHA-256(bit of the part, salt, body).
[[nodiscard]] Hash256 part_hash(std::size_t slot, const Salt& salt, ByteView body);
/// SHA-256(tag, the 76 header bytes, the hashes of the existing parts in order).
[[nodiscard]] Hash256 frame_hash(const Frame& frame);

/// The frame's bytes. Shown parts must carry their hash already (`shown_part` computes it).
[[nodiscard]] Bytes encode_frame(const Frame& frame);
[[nodiscard]] PartView shown_part(std::size_t slot, const Salt& salt, ByteView body);
[[nodiscard]] PartView withheld_part(const Hash256& hash);

/// What can be known from the first 8 + 76 bytes.
struct FrameStart {
    std::size_t length = 0;
    std::uint8_t parts_shown = 0;
    FrameHeader header;
};
/// `bytes` holds at least the first 84 bytes. Checks everything these bytes can show to be wrong.
[[nodiscard]] tl::expected<FrameStart, FrameFault> read_frame_start(ByteView bytes);

/// A frame that matches its seal.
struct VerifiedFrame {
    Frame frame;
    Hash256 hash{};
    std::size_t attachment_bytes = 0; ///< Length of a shown attachment, whose body is not looked at here.
};
/// How many bytes it takes in a file.
[[nodiscard]] std::size_t encoded_length(const VerifiedFrame& frame);
/// `bytes` is exactly the frame. The parts of the result are views into it. For an attachment that is
/// shown, only the 32 + 20 bytes before its body are needed: pass the frame without the body and seal and
/// the seal by itself; the body is verified by `attachment_matches` when it is used.
[[nodiscard]] tl::expected<VerifiedFrame, FrameFault> verify_frame(const FrameStart& start, ByteView bytes);
[[nodiscard]] tl::expected<VerifiedFrame, FrameFault> verify_attachment(const FrameStart& start,
                                                                        ByteView head, ByteView seal);
/// Bytes in front of an attachment's body.
[[nodiscard]] std::size_t attachment_head_bytes(const FrameStart& start);

} // namespace sumpbook::store
