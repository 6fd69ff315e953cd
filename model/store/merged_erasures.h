// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/bike_names.h"
#include "model/store/frame_set.h"

#include <cstddef>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::store {

/// What a merge takes away of one bike, because one of the files says that it was erased.
struct LostToErasing {
    SubjectId subject;
    std::string bike;            ///< Its name; empty for the garage itself, and where no file names it.
    std::size_t entries = 0;     ///< Records whose frame is emptied, which a file still shows.
    std::size_t attachments = 0; ///< The same of attached files.
    std::vector<std::string> by; ///< Ids in the result of the records that say so, sorted.
    /// Of those entries: ids of the ones that neither a withdrawal names nor a later record stands for. No
    /// program writes that: the record that says so empties more than was erased.
    std::vector<std::string> unaccounted;
};

/// A thing that was erased in one file and of which another holds a later version: corrected there, or
/// recorded again because of what was saved with it.
struct ErasedAndStillHere {
    std::vector<std::string> ids; ///< In the result, of the versions that are shown, by the time recorded.
    SubjectId subject;
    std::string bike;
    std::string erased_in; ///< File.
    std::string held_in;   ///< File; the same one where an earlier merge brought both together.
};

/// The records of some files that say something of other versions: all that erasing leaves to be followed.
class FollowedRecords {
public:
    void note(const std::vector<NamedRecord>& records, const std::string& path);
    /// Without what they say; each once.
    [[nodiscard]] const std::vector<NamedRecord>& records() const { return records_; }
    /// The first file that shows the record, by its place among `records`.
    [[nodiscard]] const std::string& held_in(std::size_t place) const { return paths_[place]; }

private:
    std::vector<NamedRecord> records_;
    std::vector<std::string> paths_;
    std::set<RecordName> known_;
};

/// Frames that `before` shows and `after`, which is a union with it, does not: they were erased.
void note_emptied(const FrameSet& before, const FrameSet& after, std::set<Hash256>& emptied);

/// By bike, in the order of `after`.
[[nodiscard]] std::vector<LostToErasing> lost_to_erasing(const FrameSet& after,
                                                         const std::set<Hash256>& emptied,
                                                         const FollowedRecords& followed,
                                                         const BikeNames& names);
[[nodiscard]] std::vector<ErasedAndStillHere> erased_and_still_here(const FrameSet& after,
                                                                    const FollowedRecords& followed,
                                                                    const BikeNames& names);

} // namespace sumpbook::store
