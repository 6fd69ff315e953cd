// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/chain_index.h"
#include "model/store/file_layer.h"

namespace sumpbook::store {

/// The last frame of a chain as an installation knows it.
struct ChainEnd {
    std::uint32_t sequence = 0;
    Hash256 hash{};
    bool operator==(const ChainEnd&) const = default;
};

/// What an installation remembers of a chain of its own, outside the garage: the frame it last wrote, and
/// the one it was about to write when it may have been interrupted.
struct ChainNote {
    ChainId chain;
    SubjectId subject;
    std::optional<ChainEnd> written;
    std::optional<ChainEnd> about_to_write;
    bool operator==(const ChainNote&) const = default;
};

/// The notes of one garage: a small text file, GARAGE.chains, in the state folder; one line a chain:
///   chain ID subject ID written SEQUENCE HASH about SEQUENCE HASH check CHECK     (- for none)
/// All lines are of one length, so that writing over them in place, which costs next to nothing, moves none;
/// the check, the first 8 bytes of the hash of what stands before it, tells a line that was half written
/// over. A copied or restored installation is found out by it: its chain then ends at neither place.
[[nodiscard]] std::string text_of(const std::vector<ChainNote>& notes);
/// Lines that cannot be read are passed over: a lost note only means that a new chain is begun.
[[nodiscard]] std::vector<ChainNote> read_chain_notes(std::string_view text);

[[nodiscard]] std::string chain_notes_path(const std::string& state_folder, const SubjectId& garage);
[[nodiscard]] Io<std::vector<ChainNote>> load_chain_notes(FileLayer& layer, const std::string& path);
[[nodiscard]] Io<std::vector<ChainNote>> load_chain_notes(const OpenFile& file);
/// Writes over the notes in place; not synced, since a lost note does no harm.
[[nodiscard]] Io<void> save_chain_notes(const OpenFile& file, const std::vector<ChainNote>& notes);
/// The same where `before` was read from the file or written to it: only the lines that differ are written.
[[nodiscard]] Io<void> save_changed_notes(const OpenFile& file, const std::vector<ChainNote>& before,
                                          const std::vector<ChainNote>& notes);

/// Where the next frame about a subject goes.
struct ChainPlace {
    bool is_new = false; ///< The caller makes a random chain id.
    ChainId chain;
    std::uint32_t sequence = 0;
    Hash256 previous{};
    std::string reason; ///< Why a new chain is begun although this installation had one; empty otherwise.
};
[[nodiscard]] ChainPlace choose_chain(const std::vector<ChainNote>& notes, const ChainIndex& index,
                                      const SubjectId& subject);

/// `not-written-here`: frames at the end of this installation's own chains that it did not write.
[[nodiscard]] std::vector<Finding> chain_note_findings(const std::vector<ChainNote>& notes,
                                                       const ChainIndex& index);

} // namespace sumpbook::store
