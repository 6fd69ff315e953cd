// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/garage_file.h"
#include "tests/model/store/memory_disk.h"

#include <iosfwd>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::store {

/// One thing that happens to one of the copies of a garage. The numbers pick from what there is.
struct HistoryStep {
    enum Kind { add, correct, withdraw, settle, settings, attach, print, merge, hand_over, clone_writer, erase };
    Kind kind = add;
    unsigned copy = 0;
    unsigned pick = 0;
};

void showValue(const HistoryStep& step, std::ostream& out);

/// Copies of one garage, each with an installation of its own, on a disk in memory, and what happened to them.
class GarageHistory {
public:
    GarageHistory(unsigned copies, const std::string& seed);
    void play(const HistoryStep& step);

    /// Every record that was acknowledged, in any copy, and the versions it replaced.
    struct Written {
        SubjectId subject;
        Record record;
    };
    [[nodiscard]] const std::map<RecordName, Written>& written() const { return written_; }
    [[nodiscard]] const std::set<Hash256>& attachments() const { return attachments_; }
    [[nodiscard]] const std::set<Hash256>& fingerprints() const { return fingerprints_; }
    /// Frames of records that an erasure emptied in some copy.
    [[nodiscard]] const std::set<Hash256>& emptied() const { return emptied_; }
    /// Notes of every version of an entry that was erased, as far as the copy it was erased in knew them.
    [[nodiscard]] const std::set<std::string>& erased_notes() const { return erased_notes_; }
    [[nodiscard]] unsigned copies() const { return copies_; }
    [[nodiscard]] std::string copy(unsigned number) const;
    [[nodiscard]] const std::vector<std::string>& hand_overs() const { return hand_overs_; }
    /// Copies that the image of another computer took the place of.
    [[nodiscard]] const std::vector<std::string>& set_aside() const { return set_aside_; }

    /// The union of the files, written canonically as a new file; its name.
    std::string merged(const std::vector<std::string>& paths);
    [[nodiscard]] GarageFile open(unsigned number);
    [[nodiscard]] GarageFile open(const std::string& path);

    MemoryDisk disk;

private:
    void append(unsigned number, const SubjectId& subject, Record record,
                const std::vector<NewAttachment>& attachments = {});
    void append_together(unsigned number, const SubjectId& subject);
    void note_last(const GarageFile& garage, std::size_t count);
    void replace_one(unsigned number, unsigned pick, bool withdraw);
    void settle_one(unsigned number);
    void attach_one(unsigned number, unsigned pick);
    void merge_in(unsigned number, unsigned other);
    void erase_one(unsigned number, unsigned pick);
    void hand_over_one(unsigned number, unsigned pick);
    void clone_writer(unsigned number, unsigned other);
    [[nodiscard]] Record fuel();
    [[nodiscard]] Surroundings around(unsigned number);
    [[nodiscard]] RecordedTime now() { return {clock_ += 1 - clock_ % 3 / 2}; } // some in the same second

    unsigned copies_;
    SeededRandom random_;
    SubjectId garage_;
    std::int64_t clock_ = 1'700'000'000;
    int entries_ = 0;
    int files_ = 0;
    std::map<RecordName, Written> written_;
    std::set<Hash256> attachments_;
    std::set<Hash256> emptied_;
    std::set<std::string> erased_notes_;
    std::set<Hash256> fingerprints_;
    std::vector<std::string> hand_overs_;
    std::vector<std::string> set_aside_;
};

} // namespace sumpbook::store
