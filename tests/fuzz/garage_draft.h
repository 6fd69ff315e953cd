// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/action.h"
#include "model/store/fingerprint.h"
#include "model/store/frame.h"

#include <vector>

namespace sumpbook::fuzz {

/// A frame that owns its bytes and may be changed at will.
struct DraftFrame {
    store::FrameHeader header;
    struct Part {
        bool shown = false;
        store::Hash256 hash{}; ///< Of a withheld part.
        store::Salt salt{};
        store::Bytes body;
    };
    std::array<Part, store::part_slots> parts;
    store::Hash256 was{}; ///< Its hash when it was read; zeros for one that was made.
    [[nodiscard]] bool exists(std::size_t slot) const {
        return (header.parts_exist & store::bit_of(slot)) != 0;
    }
};

struct DraftAction {
    std::vector<DraftFrame> frames;
    store::Bytes fingerprint; ///< Its body, where there are no frames.
};

/// A garage file taken apart as far as its lengths can be followed, whatever its seals say. For changing
/// what is inside: seals, hashes of parts, lengths and links are made right again when it is written, so that a
/// change is met by the code behind the seals and not only by the seals.
struct GarageDraft {
    SubjectId garage;
    std::vector<DraftAction> actions;
    store::Bytes rest; ///< What could not be followed.
};

[[nodiscard]] GarageDraft read_draft(store::ByteView bytes);
/// Where the hash of a frame has changed, the frames, records and fingerprint heads that name it follow.
[[nodiscard]] store::Bytes write_draft(const GarageDraft& draft);

/// Every frame of the draft.
[[nodiscard]] std::vector<DraftFrame*> frames_of(GarageDraft& draft);

} // namespace sumpbook::fuzz
