// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/salvage.h"

#include "model/store/bodies.h"
#include "model/store/loader.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::size_t start_bytes = frame_unhashed_bytes + frame_header_bytes;

/// A frame that matches its seal.
struct Found {
    SetFrame frame;
    std::uint64_t end = 0;
    bool body_damaged = false; ///< Of an attachment.
    bool settings = false;     ///< One of its records is the settings of a garage.
    std::vector<std::pair<std::uint32_t, Record>> details; ///< Of bikes, with their places in the frame.
    std::string unreadable; ///< Why it cannot be used although it is whole; empty if it can.
};

/// Looks at single places of the file. The work is limited: a crafted file could make every byte worth
/// hashing half a megabyte.
class Probe {
public:
    /// Without a source: for looking only.
    Probe(Window& window, const FrameSource* source)
        : window_(&window)
        , source_(source)
        , budget_(16 * window.size() + (16U << 20U)) {}

    [[nodiscard]] std::uint64_t size() const { return window_->size(); }
    [[nodiscard]] bool spent() const { return spent_ > budget_; }
    [[nodiscard]] ByteView view(std::uint64_t at, std::size_t length) { return window_->view(at, length); }
    [[nodiscard]] bool holds(std::uint64_t at, std::size_t length) const {
        return at <= size() && length <= size() - at;
    }

    [[nodiscard]] std::optional<FrameStart> start_at(std::uint64_t at) {
        if (!holds(at, start_bytes)) return std::nullopt;
        const auto bytes = view(at, start_bytes);
        const bool can_be = all_zero(bytes.subspan(5, 3)) && bytes[11] == 0 && bytes[8] - 1U <= 1U;
        if (!can_be) return std::nullopt; // almost always, and quickly
        const auto start = read_frame_start(bytes);
        return start ? std::optional(*start) : std::nullopt;
    }

    [[nodiscard]] std::optional<Found> frame_at(std::uint64_t at, std::uint64_t limit) {
        const auto start = start_at(at);
        if (!start || start->length > limit - std::min(at, limit)) return std::nullopt;
        if (start->header.kind == FrameKind::attachment) return attachment_at(*start, at);
        spent_ += start->length;
        const auto verified = verify_frame(*start, view(at, start->length));
        if (!verified) return std::nullopt;
        auto found = found_at(*start, *verified, at);
        look_inside(verified->frame, found);
        return found;
    }

    [[nodiscard]] std::optional<ActionHeader> action_header_at(std::uint64_t at) {
        if (!holds(at, action_header_bytes)) return std::nullopt;
        return read_action_header(view(at, action_header_bytes));
    }

    [[nodiscard]] std::optional<Bytes> fingerprint_at(std::uint64_t at, const ActionHeader& header) {
        if (!holds(at, header.length)) return std::nullopt;
        spent_ += header.length;
        const auto action = view(at, header.length);
        if (!fingerprint_action_matches(action)) return std::nullopt;
        const auto body = fingerprint_body(action);
        return Bytes(body.begin(), body.end());
    }

    /// A heading with something whole right behind it.
    [[nodiscard]] std::optional<ActionHeader> action_at(std::uint64_t at) {
        const auto header = action_header_at(at);
        if (!header) return std::nullopt;
        const bool whole = header->kind == ActionKind::fingerprint
                               ? fingerprint_at(at, *header).has_value()
                               : frame_at(at + action_header_bytes, size()).has_value();
        return whole ? header : std::nullopt;
    }

    /// The lengths inside an attachment's frame agree on where it ends.
    [[nodiscard]] bool lengths_agree(const FrameStart& start, std::uint64_t at) {
        const auto head = attachment_head_bytes(start);
        if (start.parts_shown == 0 || !holds(at, head)) return false;
        const auto body = get_number<std::uint32_t>(view(at, head), start_bytes + hash_bytes);
        return start.length == head + body + seal_bytes;
    }

private:
    void look_inside(const Frame& frame, Found& found) {
        if (frame.header.format > body_format || !frame.parts[slot_of(Part::open)].shown) return;
        if (!memory_fits(frame.header.entry_count, size())) {
            found.unreadable = "says that it holds more entries than a file of this size can";
            return;
        }
        const auto records = decode_records(frame);
        if (!records) {
            found.unreadable = "holds what no version writes: " + records.error().what;
            return;
        }
        for (std::uint32_t i = 0; i < records->size(); ++i) {
            const auto& content = (*records)[i].content;
            found.settings = found.settings || std::holds_alternative<GarageSettings>(content);
            if (std::holds_alternative<BikeDetails>(content)) found.details.emplace_back(i, (*records)[i]);
        }
    }

    Found found_at(const FrameStart& start, const VerifiedFrame& verified, std::uint64_t at) {
        const auto shown = start.parts_shown;
        Found found;
        found.frame = {verified.hash,
                       start.header,
                       shown,
                       {FrameCopy{source_, at, static_cast<std::uint32_t>(start.length), shown}}};
        found.end = at + start.length;
        return found;
    }

    std::optional<Found> attachment_at(const FrameStart& start, std::uint64_t at) {
        const auto head = attachment_head_bytes(start);
        if (start.length < head + seal_bytes) return std::nullopt;
        spent_ += start.length > Window::usual_bytes ? 2 * Window::usual_bytes : head;
        const auto seal_view = view(at + start.length - seal_bytes, seal_bytes);
        const Bytes seal(seal_view.begin(), seal_view.end());
        const auto verified = verify_attachment(start, view(at, head), seal);
        if (!verified) return std::nullopt;
        auto found = found_at(start, *verified, at);
        const auto& part = verified->frame.parts[attachment_slot];
        spent_ += verified->attachment_bytes;
        found.body_damaged =
            part.shown && !attachment_body_matches(*window_, at + head, verified->attachment_bytes, part);
        return found;
    }

    Window* window_;
    const FrameSource* source_;
    std::uint64_t budget_;
    std::uint64_t spent_ = 0;
};

class Salvager {
public:
    Salvager(Window& window, const FrameSource& source)
        : probe_(window, &source) {}

    Salvage run(std::uint64_t from) {
        for (std::uint64_t at = from; at < probe_.size();) {
            if (const auto end = whole_action(at)) {
                at = *end;
            } else {
                at = broken_action(at);
            }
        }
        return std::move(result_);
    }

private:
    enum class What { nothing, frame, action };
    struct Place {
        What what = What::nothing;
        std::uint64_t at = 0;
    };

    // Good actions.

    /// Takes in the action that starts here, if all of it is right; where it ends.
    std::optional<std::uint64_t> whole_action(std::uint64_t at) {
        const auto header = probe_.action_header_at(at);
        if (!header || !probe_.holds(at, header->length)) return std::nullopt;
        if (header->kind == ActionKind::fingerprint) {
            const auto body = probe_.fingerprint_at(at, *header);
            if (body) take_fingerprint(*body, at);
            return body ? std::optional(at + header->length) : std::nullopt;
        }
        auto frames = frames_of(at, *header);
        if (!frames) return std::nullopt;
        for (auto& frame : *frames)
            take(std::move(frame));
        return at + header->length;
    }

    /// All frames of a whole action.
    std::optional<std::vector<Found>> frames_of(std::uint64_t at, const ActionHeader& header) {
        const std::uint64_t end = at + header.length;
        std::vector<Found> frames;
        at += action_header_bytes;
        while (frames.size() < header.frame_count) {
            auto found = probe_.frame_at(at, end);
            if (!found || found->body_damaged) return std::nullopt;
            at = found->end;
            frames.push_back(*std::move(found));
        }
        return at == end ? std::optional(std::move(frames)) : std::nullopt;
    }

    void take(Found&& found) {
        auto& frame = found.frame;
        const auto at = frame.copies.front().at;
        if (frame.header.format > body_format) result_.later_version = true;
        const auto subject = subject_of_.emplace(frame.header.chain, frame.header.subject).first->second;
        if (subject != frame.header.subject && found.unreadable.empty())
            found.unreadable = "is about another bike than the rest of its chain";
        if (!found.unreadable.empty()) return leave_out(found, found.unreadable);
        if (found.body_damaged) {
            frame.shown = 0;
            ++result_.attachments_dropped;
            damage(at, found.end, "an attachment whose bytes do not match their hash", frame.header);
        }
        for (const auto& [index, record] : found.details)
            result_.names.note(subject, {frame.hash, index}, record);
        if (found.settings) result_.with_settings.insert(subject);
        result_.frames.push_back(std::move(frame));
    }

    void take_fingerprint(ByteView body, std::uint64_t at) {
        if (auto record = read_fingerprint_record(body)) {
            result_.records.push_back(*std::move(record));
        } else {
            damage(at, at + action_header_bytes + body.size() + seal_bytes,
                   "a fingerprint record that no version writes", {});
        }
    }

    void leave_out(const Found& found, std::string why) {
        result_.left_out.push_back(
            {found.frame.copies.front().at, found.frame.header.entry_count, std::move(why)});
    }

    void damage(std::uint64_t at, std::uint64_t until, std::string what, std::optional<FrameHeader> header) {
        result_.broken.push_back({.at = at,
                                  .until = until,
                                  .frame_number = result_.frames.size() + 1,
                                  .what = std::move(what),
                                  .header = header});
    }

    // Broken ones.

    /// What starts here is no whole action: takes in the whole frames of it. Where to go on.
    std::uint64_t broken_action(std::uint64_t at) {
        const auto header = probe_.action_header_at(at);
        const auto damages = result_.broken.size();
        const std::uint64_t stated = header ? at + header->length : 0;
        const bool ends_there = header && ends_at(stated);
        if (header && header->kind == ActionKind::fingerprint) {
            if (!ends_there) return broken_frames(at, probe_.size(), false, 0);
            damage(at, stated, "a fingerprint record that does not match its seal", {});
            return stated;
        }
        const auto first = header ? at + action_header_bytes : at;
        const auto end = broken_frames(first, ends_there ? stated : probe_.size(), ends_there, stated);
        if (result_.broken.size() == damages) // the frames are all right, so it is what stands before them
            damage(at, first, "the heading of a save that does not fit what it holds", {});
        return end;
    }

    /// Whether an action can end here: there the file ends, or the next begins.
    bool ends_at(std::uint64_t at) { return at == probe_.size() || probe_.action_at(at).has_value(); }

    /// Whether a frame can end here.
    bool frame_ends_at(std::uint64_t at, std::uint64_t stated_end) {
        return at == stated_end || ends_at(at) || probe_.frame_at(at, probe_.size()).has_value();
    }

    /// The frames from `at` on, up to the end of their action where that is `known`, else to the next action.
    std::uint64_t broken_frames(std::uint64_t at, std::uint64_t limit, bool known, std::uint64_t stated_end) {
        while (at < limit) {
            if (!known && probe_.action_at(at)) return at;
            if (auto found = probe_.frame_at(at, limit)) {
                const auto end = found->end;
                if (found->body_damaged) list_frames(at, end);
                take(*std::move(found));
                at = end;
            } else {
                at = broken_frame(at, limit, known, stated_end);
            }
        }
        return at;
    }

    /// What stands here is no whole frame. Where it ends, as far as that can be known.
    std::uint64_t broken_frame(std::uint64_t at, std::uint64_t limit, bool known, std::uint64_t stated_end) {
        const auto start = probe_.start_at(at);
        if (start && start->length <= limit - at && frame_ends_at(at + start->length, stated_end)) {
            const auto end = at + start->length;
            damage(at, end, "a frame that does not match its seal", start->header);
            if (start->header.kind == FrameKind::attachment && probe_.lengths_agree(*start, at))
                list_frames(at, end);
            return end;
        }
        const auto next = search(at, limit, known);
        if (probe_.spent() && !result_.stopped) result_.stopped = next.at;
        const auto until = result_.stopped ? probe_.size() : next.at;
        damage(at, until, what_is_lost(start, at, until),
               start ? std::optional(start->header) : std::nullopt);
        return until;
    }

    std::string what_is_lost(const std::optional<FrameStart>& start, std::uint64_t at, std::uint64_t until) {
        if (start && until == probe_.size() && start->length > until - at) return "a frame that is cut off";
        if (start) return "a frame that is not right";
        if (only_zeros(at, until)) return "zeros only";
        return "bytes that are no frame";
    }

    bool only_zeros(std::uint64_t at, std::uint64_t until) {
        while (at < until) {
            const auto length =
                static_cast<std::size_t>(std::min<std::uint64_t>(Window::usual_bytes, until - at));
            if (!all_zero(probe_.view(at, length))) return false;
            at += length;
        }
        return true;
    }

    // Byte by byte.

    /// The next whole frame or action from `at` on. Inside an action whose end is `known` an action is the
    /// content of an attachment; so is what follows another garage's file header.
    Place search(std::uint64_t at, std::uint64_t limit, bool known) {
        while (at < limit && !probe_.spent()) {
            const std::uint8_t first = probe_.view(at, 1)[0];
            if (first == 0x9D && is_file_header(at) && !result_.frames.empty()) {
                at = list_actions(at + file_header_bytes, another_file);
            } else if (first == 0xA7 && probe_.action_at(at)) {
                if (!known) return {What::action, at};
                at = list_actions(at, inside);
            } else if (probe_.frame_at(at, limit)) {
                return {What::frame, at};
            } else {
                ++at;
            }
        }
        return {What::nothing, std::min(at, limit)};
    }

    bool is_file_header(std::uint64_t at) {
        return probe_.holds(at, file_header_bytes) &&
               read_file_header(probe_.view(at, file_header_bytes), {}).has_value();
    }

    /// Lists the frames of a run of actions, up to the first that is not whole; where the last whole frame
    /// ends, one byte on at least.
    std::uint64_t list_actions(std::uint64_t at, const char* why) {
        const auto first = at;
        while (const auto header = probe_.action_header_at(at)) {
            const auto end = at + header->length;
            if (header->kind == ActionKind::frames) {
                at = list_run(at + action_header_bytes, std::min(end, probe_.size()), why);
            } else if (probe_.fingerprint_at(at, *header)) {
                at = end;
            }
            if (at != end) break;
        }
        return std::max(at, first + 1);
    }

    /// Lists whole frames one behind the other; where the last ends.
    std::uint64_t list_run(std::uint64_t at, std::uint64_t limit, const char* why) {
        while (const auto found = probe_.frame_at(at, limit)) {
            leave_out(*found, why);
            at = found->end;
        }
        return at;
    }

    /// Lists the whole frames inside the frame of a damaged attachment.
    void list_frames(std::uint64_t at, std::uint64_t end) {
        for (++at; at < end && !probe_.spent();) {
            const auto found = probe_.frame_at(at, end);
            if (found) leave_out(*found, inside);
            at = found ? found->end : at + 1;
        }
    }

    static constexpr const char* another_file =
        "stands behind the header of another garage file, perhaps an old one that was attached";
    static constexpr const char* inside =
        "stands inside a damaged attachment, which may be an old garage file";

    Probe probe_;
    Salvage result_;
    std::map<ChainId, SubjectId> subject_of_;
};

} // namespace

Salvage salvage(Window& window, std::uint64_t from, const FrameSource& source) {
    return Salvager(window, source).run(from);
}

bool action_starts_at(Window& window, std::uint64_t at) {
    return Probe(window, nullptr).action_at(at).has_value();
}

} // namespace sumpbook::store
