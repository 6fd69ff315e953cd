// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"
#include "model/store/attachment_spot.h"
#include "model/store/fingerprint.h"
#include "model/store/kept_bodies.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::store {

/// A verified frame whose records can be read. Its bodies are kept apart.
struct CheckedFrame {
    FrameHeader header;
    Hash256 hash{};
    std::uint64_t at = 0;         ///< Place in the file.
    std::uint32_t open_bytes = 0; ///< Length of the open part; 0 where it is not shown.
    std::uint8_t shown = 0;       ///< One bit each part that is here.
    bool ends_action = false;
    /// Whether it holds records that can be read here.
    [[nodiscard]] bool has_records() const { return (shown & bit_of(slot_of(Part::open))) != 0; }
};

/// What a stretch of a file holds, as far as it can be known without what stands before it: whole actions.
struct Piece {
    std::vector<CheckedFrame> frames;
    std::vector<FingerprintRecord> fingerprints;
    std::vector<AttachmentSpot> attachments;
    Runs bodies; ///< Of the frames whose open part is shown.
    void clear();
};

/// Why something that matches its seal cannot be used; follows "Frame 7 of the garage file".
struct PieceFault {
    ProblemKind kind = ProblemKind::damaged;
    std::string what;
};

[[nodiscard]] CheckedFrame summary_of(const VerifiedFrame& frame, std::uint64_t at);
/// A frame of a later format cannot be looked into.
[[nodiscard]] std::optional<PieceFault> format_fault(const FrameHeader& header);
/// Adds a verified frame, unless its records cannot be read.
[[nodiscard]] std::optional<PieceFault> add_frame(Piece& piece, BodyKeeper& keeper,
                                                  const VerifiedFrame& frame, std::uint64_t at);
/// Adds a fingerprint record from its body, unless it cannot be read.
[[nodiscard]] std::optional<PieceFault> add_fingerprint(Piece& piece, ByteView body);

} // namespace sumpbook::store
