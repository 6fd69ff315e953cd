// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/action.h"
#include "model/store/frame.h"
#include "model/store/window.h"

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::store {

/// Receives what a scan finds, action by action. Frames of an action that turns out wrong or unfinished
/// are followed by action_done(false) and must be forgotten.
class ScanHandler {
public:
    virtual ~ScanHandler() = default;
    /// The parts of `frame` are valid during the call only. `at`: place of the frame in the file.
    virtual void frame(const VerifiedFrame& frame, std::uint64_t at) = 0;
    virtual void fingerprint_record(ByteView body) = 0;
    virtual void action_done(bool good) = 0;
};

/// One stretch of the file that does not verify.
struct Damage {
    std::uint64_t at = 0;              ///< First byte of the action that is not right.
    std::uint64_t wrong_at = 0;        ///< First byte of the frame in it that is not right, or of itself.
    std::uint64_t until = 0;           ///< First byte of the next good action, or the end of the file.
    std::size_t frame_number = 0;      ///< Counted from 1 over the whole file, as far as it verified.
    std::string what;                  ///< Follows "frame 7": "does not match its seal".
    std::optional<FrameHeader> header; ///< Of the frame that is wrong, as it stands there; not to be trusted.
};

/// How the file ends.
enum class Tail {
    whole,  ///< With a good action.
    torn,   ///< With an action that was never written completely.
    damaged ///< With an action that is all there and not right.
};

struct Scan {
    std::uint64_t good_end = 0; ///< End of the last good action before the tail.
    Tail tail = Tail::whole;
    std::optional<Damage> tail_damage; ///< Set unless the tail is whole.
    std::vector<Damage> damages;       ///< Each followed by a good action.
    std::size_t frames = 0;            ///< That verified.
};

/// `usual` leaves out the bodies of attachments that do not stand in the last action.
enum class ScanDepth { usual, everything };

/// Whether the content of a shown attachment, `length` bytes from `at`, matches its hash. Throws IoFailure.
[[nodiscard]] bool attachment_body_matches(Window& window, std::uint64_t at, std::size_t length,
                                           const PartView& part);

/// Walks whole actions from byte `from` (the end of the header or of an action) to the end of the window.
/// `frames_before`: frames in front of `from`, for their numbers. Throws IoFailure.
[[nodiscard]] Scan scan_actions(Window& window, std::uint64_t from, std::size_t frames_before,
                                ScanDepth depth, ScanHandler& handler);

/// How far whole good actions reach.
struct GoodActions {
    std::uint64_t end = 0;  ///< Of the last one; `from` if there is none.
    std::size_t frames = 0; ///< In them.
};
/// Hands on whole good actions one after the other, from byte `from` on, as scan_actions does; stops at
/// `until` and at the first that is not good, of which action_done(false) is told. Throws IoFailure.
[[nodiscard]] GoodActions walk_good_actions(Window& window, std::uint64_t from, std::uint64_t until,
                                            ScanDepth depth, ScanHandler& handler);

} // namespace sumpbook::store
