// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/frame.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook::store {

/// Something that does not stop work but that the owner should know: a stable identifier in small letters
/// and a sentence.
struct Finding {
    std::string id;
    std::string sentence;
    bool operator==(const Finding&) const = default;
};

/// One verified frame of the file and its place in its chain. A million of them are kept, so they are small:
/// what the frames of a chain share is kept once, with the chain.
struct IndexedFrame {
    Hash256 hash{};
    std::uint64_t at = 0;             ///< Place in the file.
    std::uint32_t entries_before = 0; ///< Entries of its chain in front of it.
    std::uint32_t first_record = 0;   ///< Of the records read from the file, in file order.
    std::uint32_t record_count = 0;   ///< 0 also where the open part is withheld.
    std::uint32_t entry_count = 0;    ///< As its header says; 0 for an attachment.
    std::uint32_t sequence = 0;       ///< In its chain.
    std::optional<std::uint32_t>
        parent; ///< Index of the frame before; absent: the first, or it is missing here.
    std::uint32_t branch = 1; ///< 2 and up: the chain forked before it.
    std::uint32_t chain = 0;  ///< Which chain, for ChainIndex::chain_of and subject_of.
    FrameKind kind = FrameKind::records;
    std::uint8_t left_out = 0; ///< One bit each part that exists and is not shown in this file.
    bool has_child = false;
};

/// The frames of one installation about one subject, in order of sequence and hash.
struct Chain {
    SubjectId subject;
    std::uint32_t number = 0; ///< In order of first appearance in the file, from 0.
    /// What people call it: its first symbols in base 32, as few (two at least) as tell it apart.
    std::string name;
    std::vector<std::uint32_t> frames; ///< Indices into the frames of the ChainIndex.
    std::uint32_t branches = 1;
    std::uint64_t missing = 0; ///< Places where the frame before is not in this file.
};

/// All chains of a file, computed from its frames, never stored.
class ChainIndex {
public:
    /// Adds a verified frame that stands behind all others in the file. Returns why the frame cannot stand
    /// there (a chain of two subjects, out of order, twice the same): the file is damaged or made up.
    [[nodiscard]] FrameFault add(const FrameHeader& header, IndexedFrame frame);

    void reserve(std::size_t frames) { frames_.reserve(frames); }

    [[nodiscard]] const std::vector<IndexedFrame>& frames() const { return frames_; }
    [[nodiscard]] const std::map<ChainId, Chain>& chains() const { return chains_; }
    [[nodiscard]] const Chain* find(const ChainId& id) const;
    [[nodiscard]] const ChainId& chain_of(const IndexedFrame& frame) const { return ids_[frame.chain]; }
    [[nodiscard]] const SubjectId& subject_of(const IndexedFrame& frame) const {
        return chains_.at(chain_of(frame)).subject;
    }
    /// Frames that no other follows, in order of sequence and hash; more than one: the chain forked.
    [[nodiscard]] std::vector<const IndexedFrame*> heads(const Chain& chain) const;
    /// This frame of a chain, if it is here.
    [[nodiscard]] const IndexedFrame* at_sequence(const Chain& chain, std::uint32_t sequence,
                                                  const Hash256& hash) const;
    /// A frame of the chain that stands directly in front of this sequence, if it is here.
    [[nodiscard]] const IndexedFrame* frame_before(const ChainId& id, std::uint32_t sequence) const;
    /// Whether the chain has any frame of this sequence here.
    [[nodiscard]] bool has_sequence(const Chain& chain, std::uint32_t sequence) const;
    /// The name of a chain, also of one that has no frame here.
    [[nodiscard]] std::string name_of(const ChainId& id) const;

    /// "k7-142", or "k7-142/2" behind a fork; `index` counts the entries of the frame from 0.
    [[nodiscard]] std::string entry_id(const IndexedFrame& frame, std::size_t index) const;
    /// `frame-missing`, `chain-forked`.
    [[nodiscard]] std::vector<Finding> findings() const;

private:
    [[nodiscard]] const IndexedFrame* not_before(const Chain& chain, std::uint32_t sequence,
                                                 const Hash256& hash) const;
    [[nodiscard]] const IndexedFrame* last_before(const Chain& chain, std::uint32_t sequence) const;
    using Place = std::map<ChainId, Chain>::iterator;
    void link(IndexedFrame& frame, Chain& chain, const Hash256& previous);
    void name(Place place);
    void name_with_neighbours(Place place);

    std::vector<IndexedFrame> frames_;
    std::map<ChainId, Chain> chains_;
    std::vector<ChainId> ids_; ///< In order of first appearance in the file.
};

} // namespace sumpbook::store
