// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/bike_names.h"
#include "model/store/frame_set.h"
#include "model/store/scan.h"

#include <functional>

namespace sumpbook::store {

/// A whole frame that was found and not taken in.
struct FrameLeftOut {
    std::uint64_t at = 0;
    std::size_t entries = 0;
    std::string why; ///< "stands inside a damaged attachment"
};

/// All that verifies in a file, whole or broken.
struct Salvage {
    std::vector<SetFrame> frames; ///< In file order, perhaps twice the same.
    std::vector<FingerprintRecord> records;
    std::vector<Damage> broken; ///< In file order; `what` stands alone: "a frame that does not match its seal".
    std::vector<FrameLeftOut> left_out;
    std::set<SubjectId> with_settings; ///< Subjects that settings of a garage were recorded about.
    BikeNames names;
    std::size_t attachments_dropped = 0; ///< Frames kept without the damaged bytes of their attachment.
    bool later_version = false;          ///< A whole frame was written by a later version.
    std::optional<std::uint64_t> stopped; ///< Where the search was given up: a file made to be slow to search.
};

/// Takes a file apart from byte `from` on. Every frame that matches its seal is taken, wherever it stands, but
/// for those inside a damaged attachment: that may be an old garage file. Inside counts what stands between
/// the ends that the attachment's lengths agree on, an action within an action, and the actions behind a file
/// header that is not the file's own. Throws IoFailure.
[[nodiscard]] Salvage salvage(Window& window, std::uint64_t from, const FrameSource& source);

/// Whether the bytes from `at` on can be the first of an action with a whole frame or fingerprint record.
[[nodiscard]] bool action_starts_at(Window& window, std::uint64_t at);

} // namespace sumpbook::store
