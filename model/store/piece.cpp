// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/piece.h"

#include "model/store/bodies.h"

#include <fmt/format.h>

namespace sumpbook::store {
namespace {

AttachmentSpot spot_of(const VerifiedFrame& verified, std::uint64_t at) {
    const auto& part = verified.frame.parts[attachment_slot];
    const std::size_t before = frame_unhashed_bytes + frame_header_bytes + hash_bytes + part_overhead_bytes;
    return {part.hash,   part.shown,                part.salt,
            at + before, verified.attachment_bytes, verified.body_checked};
}

std::optional<PieceFault> body_fault(const Frame& frame) {
    if (can_be_decoded(frame)) return std::nullopt;
    const auto decoded = decode_records(frame); // again, for the words
    return PieceFault{ProblemKind::damaged, fmt::format("holds as its entry {} what no version writes: {}",
                                                        decoded.error().index + 1, decoded.error().what)};
}

} // namespace

void Piece::clear() {
    frames.clear();
    fingerprints.clear();
    attachments.clear();
    bodies.clear();
}

std::optional<PieceFault> format_fault(const FrameHeader& header) {
    if (header.format <= body_format) return std::nullopt;
    return PieceFault{ProblemKind::newer_format, "was written by a later version of this program"};
}

CheckedFrame summary_of(const VerifiedFrame& verified, std::uint64_t at) {
    const auto& frame = verified.frame;
    CheckedFrame summary{.header = frame.header,
                         .hash = verified.hash,
                         .at = at,
                         .open_bytes =
                             static_cast<std::uint32_t>(frame.parts[slot_of(Part::open)].body.size()),
                         .shown = 0,
                         .ends_action = false};
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if (frame.exists(slot) && frame.parts[slot].shown)
            summary.shown = static_cast<std::uint8_t>(summary.shown | bit_of(slot));
    }
    return summary;
}

std::optional<PieceFault> add_frame(Piece& piece, BodyKeeper& keeper, const VerifiedFrame& verified,
                                    std::uint64_t at) {
    const auto summary = summary_of(verified, at);
    if (verified.frame.header.kind == FrameKind::attachment) {
        piece.attachments.push_back(spot_of(verified, at));
    } else if (summary.has_records()) {
        if (auto fault = body_fault(verified.frame)) return fault;
        keeper.keep(verified.frame, piece.bodies);
    }
    piece.frames.push_back(summary);
    return std::nullopt;
}

std::optional<PieceFault> add_fingerprint(Piece& piece, ByteView body) {
    auto record = read_fingerprint_record(body);
    if (!record)
        return PieceFault{ProblemKind::damaged,
                          "has in front of it a fingerprint record that no version writes"};
    piece.fingerprints.push_back(std::move(*record));
    return std::nullopt;
}

} // namespace sumpbook::store
