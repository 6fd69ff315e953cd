// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/store/attachment_spot.h"
#include "model/store/chain_index.h"
#include "model/store/piece.h"
#include "model/store/scan.h"

#include <span>
#include <string>
#include <vector>

namespace sumpbook::store {

/// Takes in what a scan finds and keeps the records, the chains and the fingerprint records of all good
/// actions. Records are kept as the bytes they were verified as, and made when they are first asked for.
class Loader final : public ScanHandler {
public:
    /// Why a frame that matches its seal cannot be used.
    struct Fault {
        ProblemKind kind = ProblemKind::damaged;
        std::uint64_t at = 0;
        std::size_t frame_number = 0; ///< Counted from 1 over the file.
        std::string what;
        bool operator==(const Fault&) const = default;
    };

    Loader() = default;
    /// For trying out an action alone: limits count as if it stood behind all that `before` holds.
    [[nodiscard]] static Loader behind(const Loader& before);

    /// How long the file is that is about to be scanned, only to set memory aside in large pieces; `files`,
    /// which lives longer than the loader, is told of them.
    void expect(std::uint64_t bytes, FileLayer* files = nullptr);

    void frame(const VerifiedFrame& frame, std::uint64_t at) override;
    void fingerprint_record(ByteView body) override;
    void action_done(bool good) override;

    /// Takes in whole good actions that were read apart, as if they had been scanned. Their bodies are in the
    /// memory of a keeper that is handed over later.
    void take(const Piece& piece);
    [[nodiscard]] BodyKeeper new_keeper() const;
    void take_memory(BodyKeeper keeper) { memory_.push_back(std::move(keeper)); }

    /// The first fault met in a good action.
    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }
    [[nodiscard]] const ChainIndex& index() const { return index_; }
    /// In file order, with their ids for people. Made at the first call and completed at later ones, so not
    /// to be called by two threads at once.
    [[nodiscard]] const std::vector<NamedRecord>& records() const;
    [[nodiscard]] std::size_t record_count() const { return record_count_; }
    /// The id for people of one record, without making any.
    [[nodiscard]] std::string record_id(std::size_t number) const;
    [[nodiscard]] const std::vector<FingerprintRecord>& fingerprints() const { return fingerprints_; }
    [[nodiscard]] const std::vector<AttachmentSpot>& attachments() const { return attachments_; }
    /// Entries of all frames, also of those whose open part is not here.
    [[nodiscard]] std::size_t entries() const { return entries_; }
    /// Parts that exist and are not in this file.
    [[nodiscard]] std::size_t withheld(Part part) const { return withheld_[slot_of(part)]; }

private:
    struct Totals {
        std::size_t entries = 0, records = 0;
        void add(const CheckedFrame& frame);
    };
    [[nodiscard]] static std::optional<PieceFault> limit_fault(const Totals& before,
                                                               const CheckedFrame& frame);
    [[nodiscard]] Totals totals() const { return {entries_, behind_records_ + record_count_}; }
    void set_fault(const PieceFault& fault, std::uint64_t at, std::size_t frames_before);
    void take_action(std::span<const CheckedFrame> frames);
    [[nodiscard]] FrameFault index_frame(const CheckedFrame& frame, std::size_t first_record);
    void count(const CheckedFrame& frame);
    void make_room(std::uint64_t at);
    void make_records() const;
    void name_records() const;
    [[nodiscard]] std::size_t frame_of_record(std::size_t number) const;

    ChainIndex index_;
    std::vector<FingerprintRecord> fingerprints_;
    std::vector<AttachmentSpot> attachments_;
    std::array<std::size_t, 3> withheld_{};
    std::size_t entries_ = 0;
    std::size_t record_count_ = 0;
    std::size_t behind_records_ = 0;
    std::uint64_t expected_bytes_ = 0;
    FileLayer* files_ = nullptr;
    std::optional<Fault> fault_;
    Runs bodies_;
    std::vector<BodyKeeper> memory_; ///< Of bodies that were read apart.

    // Of the action that is being read.
    BodyKeeper keeper_;
    BodyKeeper::Mark good_;
    Piece action_;
    Totals action_totals_;
    std::optional<Fault> action_fault_;

    /// What was made of the bodies so far.
    struct Made {
        std::vector<NamedRecord> records;
        BodyReader reader;
        std::size_t frames = 0;
        std::size_t named = 0, chains_when_named = 0;
    };
    mutable Made made_;
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
