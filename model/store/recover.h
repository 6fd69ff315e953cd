// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/random_source.h"
#include "model/store/salvage.h"
#include "model/store/write_out.h"

namespace sumpbook::store {

/// A stretch of the file that does not verify.
struct BrokenStretch {
    std::uint64_t at = 0;
    std::uint64_t until = 0;
    std::string what;    ///< "a frame that does not match its seal"
    std::string heading; ///< "by its heading the entry k7-12": as it stands there, not to be trusted; or empty.
};

/// Frames that must have been there: others name them as the one before.
struct MissingFrames {
    std::string chain; ///< For people: "k7".
    SubjectId subject;
    std::string bike;             ///< Its name; empty for the garage itself and where none is known.
    std::uint32_t first = 0;      ///< Sequence in the chain, from 0.
    std::uint32_t last = 0;       ///< The same when one is missing.
};

/// Where the garage's own id was found.
enum class GarageKnown {
    header,   ///< In the header, as it should be.
    mended,   ///< One byte of the header was wrong, and its check tells which.
    settings, ///< From the only subject whose frames hold settings of a garage.
    nowhere,  ///< A new one was made: the file cannot be merged with other copies, but they can adopt its bikes.
};

struct RecoverPlan {
    FrameSet set;
    GarageKnown garage = GarageKnown::header;
    std::uint32_t mode = 0; ///< Permissions of the file.
    std::size_t entries = 0;
    std::vector<BrokenStretch> broken; ///< In file order.
    std::vector<FrameLeftOut> left_out;
    std::vector<MissingFrames> missing;
    std::size_t attachments_dropped = 0; ///< Whose bytes are damaged: their frames are kept, withheld.
    /// Set where a file made to be slow to search was not searched to its end: from this byte on.
    std::optional<std::uint64_t> search_stopped;
    [[nodiscard]] bool whole() const { return broken.empty() && garage == GarageKnown::header; }
};

/// Everything of a file that verifies: every whole frame, also of broken actions, and every fingerprint
/// record. The file is only read. Problems: io, locked, newer_format, refused (nothing in it verifies).
/// `random` is used only for GarageKnown::nowhere.
[[nodiscard]] Result<RecoverPlan> plan_recovery(FileLayer& files, RandomSource& random,
                                                const std::string& path, Patience patience);

// A plan is written with write_out(files, plan.set, new_file, plan.mode).

} // namespace sumpbook::store
