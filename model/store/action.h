// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/ids.h"
#include "model/quantity/problem.h"
#include "model/store/bytes.h"
#include "model/store/hash.h"

#include <optional>

namespace sumpbook::store {

// File header: magic 8, format 2, zero 6, garage subject 16, check 8 (first bytes of SHA-256 of the 32
// before). This header keeps its shape in every later format, so that an old program can tell "newer"
// from "damaged".
inline constexpr std::size_t file_header_bytes = 40;
inline constexpr std::uint16_t file_format = 1;

// Action: magic 4, whole length 4, frame count 2, zero 2, frames.
// Fingerprint record: magic 4, whole length 4, zero 4, body, seal (first 16 bytes of SHA-256(tag, body)).
inline constexpr std::size_t action_header_bytes = 12;
inline constexpr std::size_t max_frames_in_action = 65'535;
/// Longest action; one attachment and its entry always fit.
inline constexpr std::size_t max_action_bytes = 1024 * 1024 * 1024;
inline constexpr std::size_t max_fingerprint_record_bytes = 16 * 1024 * 1024;

[[nodiscard]] Bytes encode_file_header(const SubjectId& garage);
/// `bytes` is the start of the file, as much as there is of the 40. Problems: refused (not a garage
/// file), damaged, newer_format.
[[nodiscard]] Result<SubjectId> read_file_header(ByteView bytes, const std::string& path);

enum class ActionKind { frames, fingerprint };

struct ActionHeader {
    ActionKind kind = ActionKind::frames;
    std::size_t length = 0;
    std::size_t frame_count = 0;
};
/// `bytes` holds the 12; absent when they cannot start an action.
[[nodiscard]] std::optional<ActionHeader> read_action_header(ByteView bytes);

/// The 12 bytes in front of frames that take so many bytes together.
[[nodiscard]] Bytes encode_action_header(std::size_t frame_bytes, std::size_t frame_count);
/// The frames, already encoded, as one action.
[[nodiscard]] Bytes encode_action(const std::vector<Bytes>& frames);
[[nodiscard]] Bytes encode_fingerprint_action(ByteView body);
/// What fingerprint records are sorted by in written-out files; their seal is its first bytes.
[[nodiscard]] Hash256 fingerprint_record_hash(ByteView body);
/// Whether a whole fingerprint action, header included, matches its seal.
[[nodiscard]] bool fingerprint_action_matches(ByteView action);
[[nodiscard]] ByteView fingerprint_body(ByteView action);

} // namespace sumpbook::store
