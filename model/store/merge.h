// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/merged_erasures.h"
#include "model/store/write_out.h"

namespace sumpbook::store {

/// What merging brings, by chain: what one installation wrote about one bike.
struct MergedChain {
    std::string name;      ///< For people, as in the result: "k7".
    SubjectId subject;     ///< The garage's own, or a bike.
    std::string bike;      ///< Its name; empty for the garage itself, and where no file names it.
    std::size_t frames = 0;  ///< In the result.
    std::size_t entries = 0; ///< In the result.
    std::size_t new_frames = 0; ///< That the first file does not have.
    std::size_t new_entries = 0;
    std::size_t filled_files = 0; ///< Of filled_parts: attachments.
    std::size_t filled_parts = 0; ///< Parts that the first file withholds and another shows.
    bool forked = false;          ///< Continued in different ways; all are kept.
    bool gap = false;             ///< Frames are missing in all files.
};

/// A merge that is worked out and not written yet: shown to the owner first.
struct MergePlan {
    FrameSet set;
    std::vector<MergedChain> chains; ///< In canonical order, those without news too.
    std::size_t fingerprints = 0;
    std::size_t new_fingerprints = 0; ///< Not in the first file.
    std::uint32_t mode = 0;           ///< Permissions of the first file.
    std::vector<LostToErasing> lost;             ///< Held by a file, and erased in the result.
    std::vector<ErasedAndStillHere> still_here;  ///< Erased in one file, and a later version held by another.
    std::vector<std::string> notices;
    [[nodiscard]] std::size_t new_frames() const;
    [[nodiscard]] std::size_t new_entries() const;
    [[nodiscard]] bool brings_news() const;
};

/// The union of copies of one garage, in any order. Every file is verified to the last byte first. Refused:
/// files of different garages.
[[nodiscard]] Result<MergePlan> plan_merge(FileLayer& files, const std::vector<std::string>& paths,
                                           Patience patience);

/// Bikes of another garage, taken into the first with their whole history, and the other's fingerprint
/// records. `bikes` by their names there. Refused: a name it does not have; a file of the same garage, which
/// is merged instead.
[[nodiscard]] Result<MergePlan> plan_adoption(FileLayer& files, const std::string& into,
                                              const std::string& from, const std::vector<std::string>& bikes,
                                              Patience patience);

// A plan is written with write_out(files, plan.set, out, plan.mode).

} // namespace sumpbook::store
