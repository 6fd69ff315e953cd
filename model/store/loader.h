// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/store/attachment_spot.h"
#include "model/store/chain_index.h"
#include "model/store/fingerprint.h"
#include "model/store/scan.h"

#include <string>
#include <vector>

namespace sumpbook::store {

/// Takes in what a scan finds and keeps the records, the chains and the fingerprint records of all good
/// actions.
class Loader final : public ScanHandler {
public:
    /// Why a frame that matches its seal cannot be used.
    struct Fault {
        ProblemKind kind = ProblemKind::damaged;
        std::uint64_t at = 0;
        std::size_t frame_number = 0; ///< Counted from 1 over the file.
        std::string what;
    };

    Loader() = default;
    /// For trying out an action alone: limits count as if it stood behind all that `before` holds.
    [[nodiscard]] static Loader behind(const Loader& before);

    /// How long the file is that is about to be scanned: only to set memory aside in one piece.
    void expect(std::uint64_t bytes) { expected_bytes_ = bytes; }

    void frame(const VerifiedFrame& frame, std::uint64_t at) override;
    void fingerprint_record(ByteView body) override;
    void action_done(bool good) override;

    /// The first fault met in a good action.
    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }
    [[nodiscard]] const ChainIndex& index() const { return index_; }
    /// In file order; ids are given by `name_records`.
    [[nodiscard]] const std::vector<NamedRecord>& records() const { return records_; }
    [[nodiscard]] const std::vector<FingerprintRecord>& fingerprints() const { return fingerprints_; }
    [[nodiscard]] const std::vector<AttachmentSpot>& attachments() const { return attachments_; }
    /// Entries of all frames, also of those whose open part is not here.
    [[nodiscard]] std::size_t entries() const { return entries_; }
    /// Parts that exist and are not in this file.
    [[nodiscard]] std::size_t withheld(Part part) const { return withheld_[slot_of(part)]; }

    /// Gives every record its id for people; again after every change, since a new chain can make the
    /// names of others longer.
    void name_records();

private:
    void set_fault(ProblemKind kind, std::uint64_t at, std::string what);
    void make_room(std::size_t more, std::uint64_t at);
    void index_frames();
    void forget_action();
    void take_attachment(const VerifiedFrame& frame, std::uint64_t at);
    void take_records(const VerifiedFrame& frame, IndexedFrame& indexed);

    ChainIndex index_;
    std::vector<NamedRecord> records_;
    std::vector<FingerprintRecord> fingerprints_;
    std::vector<AttachmentSpot> attachments_;
    std::array<std::size_t, 3> withheld_{};
    std::size_t entries_ = 0;
    std::size_t behind_records_ = 0;
    std::uint64_t expected_bytes_ = 0;
    std::vector<Record> decoded_; ///< Of one frame.
    std::optional<Fault> fault_;

    // Of the action that is being read.
    struct NewFrame {
        FrameHeader header;
        IndexedFrame place;
    };
    std::vector<NewFrame> frames_;
    std::optional<Fault> action_fault_;
    struct Counts {
        std::size_t records = 0, fingerprints = 0, attachments = 0, entries = 0;
        std::array<std::size_t, 3> withheld{};
    } good_;
    std::size_t named_records_ = 0;
    std::size_t named_chains_ = 0;
};

/// Memory that the records of a file take at most while they are collected, for each entry: the record,
/// and its place in the list before and after the list grows by an eighth. Texts come on top; they take
/// less for each of their bytes than the promise allows.
inline constexpr std::size_t memory_per_entry = sizeof(NamedRecord) * 17 / 8;
/// Whether so many entries, behind so many bytes of file, keep the promise that no file takes more memory
/// than 64 times its size and 64 MB. Files that programs write are far from it: 30 bytes an entry will do.
[[nodiscard]] constexpr std::size_t most_entries_in(std::uint64_t bytes) {
    constexpr std::uint64_t spare = 16 * 1024 * 1024;
    return static_cast<std::size_t>((64 * bytes + spare) / memory_per_entry);
}
[[nodiscard]] constexpr bool memory_fits(std::size_t entries, std::uint64_t bytes) {
    return entries <= most_entries_in(bytes);
}

/// Whether a file with `have` entries may hold `more`.
[[nodiscard]] constexpr bool entries_fit(std::size_t have, std::size_t more) {
    return have <= max_entries && more <= max_entries - have;
}

} // namespace sumpbook::store
