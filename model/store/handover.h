// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/write_out.h"

namespace sumpbook::store {

/// Parts of a bike's history that stay with the owner.
struct Withheld {
    bool money = false;
    bool personal = false; ///< Notes, names, places, addresses.
    bool attachments = false;
};

/// What a hand-over shows and what can still be seen of the rest (rule: say it before it is given away).
struct HandOverPreview {
    std::string bike;
    std::size_t entries = 0;
    std::size_t attachments = 0; ///< Files, shown or not.
    // Of withheld parts it can still be seen that they exist; for a batch not which of its entries has one.
    std::size_t entries_with_money = 0;   ///< In frames with a money part, when money is withheld.
    std::size_t entries_with_private = 0; ///< In frames with a private part, when that is withheld.
    std::size_t entries_showing_money = 0; ///< In frames with a money part that goes along.
    std::size_t entries_showing_private = 0;
    bool shows_plate = false; ///< The number plate goes along.
    std::size_t attachments_withheld = 0;
    std::size_t already_withheld = 0; ///< Parts that the garage file itself does not show.
    std::optional<RecordedTime> first_recorded; ///< The times of recording stay in the open part.
    std::optional<RecordedTime> last_recorded;
    std::size_t fingerprints = 0;      ///< With the time of printing and how many entries the garage held then.
    std::size_t entries_not_covered = 0; ///< Of the bike, recorded since the last fingerprint.
    /// Most other subjects (bikes, and the garage itself) that one fingerprint speaks of: their number shows,
    /// and which of them changed between two fingerprints.
    std::size_t other_subjects = 0;
};

struct HandOverPlan {
    FrameSet set;
    HandOverPreview preview;
    std::uint32_t mode = 0; ///< Permissions of the garage file.
    std::vector<std::string> notices;
};

/// One bike with its whole history. The settings of the garage, which are another subject, stay out of it;
/// so does every other bike but for the hashes that fingerprints need. It verifies against fingerprints that
/// were printed, and so recorded, in the garage before: print one right before, to cover everything. Merged
/// back into the garage it changes nothing. Refused: a bike that the file does not hold.
[[nodiscard]] Result<HandOverPlan> plan_hand_over(FileLayer& files, const std::string& path,
                                                  const SubjectId& bike, const Withheld& withheld,
                                                  Patience patience);

// A plan is written with write_out(files, plan.set, out, plan.mode).

} // namespace sumpbook::store
