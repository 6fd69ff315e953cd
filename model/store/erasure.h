// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/chain_index.h"
#include "model/store/new_action.h"

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::store {

// Erasing takes the parts of whole frames out of the file and leaves their hashes, so that the chain and
// every fingerprint go on verifying. What was saved together with the erased entry is recorded again first.
// A withdrawal says what was erased: it names every version of the entry and, with the index `no_version`, every
// frame that was emptied. Readers that know nothing of it see a withdrawn entry.

/// What has to be done to erase an entry; places are those in the list of records.
struct Erasure {
    SubjectId subject;
    std::vector<std::size_t> versions;     ///< Of the entry, its withdrawals among them.
    std::set<Hash256> frames;              ///< To be emptied.
    std::set<Hash256> attachments;         ///< Part hashes that nothing else refers to.
    std::vector<std::size_t> earlier;      ///< Of other things: versions in those frames that were replaced.
    std::vector<std::size_t> current;      ///< Of other things: versions that nothing replaces.
    [[nodiscard]] std::size_t copies() const { return earlier.size() + current.size(); }
};
/// Refused where the record is neither a version of an entry nor its withdrawal, or all is erased already.
[[nodiscard]] Result<Erasure> plan_erasure(const std::vector<NamedRecord>& records, const RecordName& entry);

/// The withdrawal, then copies of `earlier`: all that can be named before anything is written.
[[nodiscard]] std::vector<NewRecord> first_copies(const Erasure& erasure,
                                                  const std::vector<NamedRecord>& records,
                                                  const std::set<Hash256>& emptied,
                                                  std::optional<std::string> reason, RecordedTime now);
/// Copies of `current`, which stand for the old versions and the copies of `earlier` (their new names, in
/// order). A copy keeps the time its record was made.
[[nodiscard]] std::vector<NewRecord> second_copies(const Erasure& erasure,
                                                   const std::vector<NamedRecord>& records,
                                                   const std::vector<RecordName>& earlier);

/// A frame that a record of the same subject says was emptied: nobody erases what another bike's records hold.
struct EmptiedFrame {
    SubjectId subject;
    Hash256 hash{};
    auto operator<=>(const EmptiedFrame&) const = default;
};
/// Every frame that a record here says was erased.
[[nodiscard]] std::set<EmptiedFrame> erased_frames(const std::vector<NamedRecord>& records);

/// Whether it is a copy of what had been saved together with an erased entry: it keeps the time of its record.
/// `erased`: all erased frames.
[[nodiscard]] bool is_recorded_again(const NamedRecord& record, const std::set<EmptiedFrame>& erased);

/// One record whose frame was emptied.
struct ErasedRecord {
    std::string id; ///< For people, as it was before.
    SubjectId subject;
    /// What stands for it: the withdrawal of an erased entry, or the copy of one that was saved with it.
    /// Null: nothing in this file says; another copy may.
    const NamedRecord* by = nullptr;
    bool for_itself = false; ///< And not only because it was saved together with what was erased.
};
/// In the order of the file; `by` points into `records`.
[[nodiscard]] std::vector<ErasedRecord> erased_records(const ChainIndex& index,
                                                       const std::vector<NamedRecord>& records);

/// When the earlier version that this record stands for was taken out of the file because it had been saved
/// together with an erased entry; absent for records that are no such copies.
[[nodiscard]] std::optional<RecordedTime> recorded_again_on(const NamedRecord& record,
                                                            const std::vector<NamedRecord>& records);

} // namespace sumpbook::store
