// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/scan.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

enum class State {
    good,
    incomplete,        ///< Cut off by the end of the file.
    cut_in_attachment, ///< So, inside the body of an attachment whose lengths agree.
    wrong,
};

struct Verdict {
    State state = State::good;
    std::uint64_t end = 0;  ///< Of a good action.
    std::uint64_t at = 0;   ///< Of what is not good: a frame, or the action itself.
    std::size_t frames = 0; ///< That verified before it ended or went wrong.
    std::string what;
    std::optional<FrameHeader> header;
};

class Ignore final : public ScanHandler {
public:
    void frame(const VerifiedFrame& /*frame*/, std::uint64_t /*at*/) override {}
    void fingerprint_record(ByteView /*body*/) override {}
    void action_done(bool /*good*/) override {}
};

/// Verifies one action that starts at `start`.
class ActionCheck {
public:
    ActionCheck(Window& window, std::uint64_t start, ScanDepth depth, ScanHandler& handler)
        : window_(window)
        , start_(start)
        , looked_at_(start)
        , depth_(depth)
        , handler_(handler) {}

    Verdict run() {
        auto verdict = judged();
        verdict.at = looked_at_;
        return verdict;
    }

private:
    Verdict judged() {
        const std::uint64_t left = window_.size() - start_;
        if (left < action_header_bytes)
            return {.state = State::incomplete, .end = 0, .frames = 0, .what = "is cut off", .header = {}};
        const auto header = read_action_header(window_.view(start_, action_header_bytes));
        if (!header)
            return {.state = State::wrong,
                    .end = 0,
                    .frames = 0,
                    .what = "is not introduced as a frame is",
                    .header = {}};
        end_ = start_ + header->length;
        cut_ = end_ > window_.size();
        if (header->kind == ActionKind::fingerprint) return fingerprint(header->length);
        return frames(header->frame_count);
    }

    Verdict fingerprint(std::size_t length) {
        if (cut_) return cut_fingerprint();
        const auto action = window_.view(start_, length);
        if (!fingerprint_action_matches(action))
            return wrong("is a fingerprint record that does not match its seal", {});
        handler_.fingerprint_record(fingerprint_body(action));
        return {.state = State::good, .end = end_, .frames = 0, .what = {}, .header = {}};
    }

    /// Whole up to the end of the file: then only its length was changed.
    Verdict cut_fingerprint() {
        const auto left = static_cast<std::size_t>(window_.size() - start_);
        auto verdict = wrong("is cut off", {});
        if (left >= action_header_bytes + seal_bytes &&
            fingerprint_action_matches(window_.view(start_, left))) {
            verdict = {.state = State::wrong,
                       .end = 0,
                       .frames = 0,
                       .what = "is a fingerprint record with a wrong length",
                       .header = {}};
        }
        return verdict;
    }

    Verdict frames(std::size_t count) {
        std::uint64_t at = start_ + action_header_bytes;
        for (; done_ < count; ++done_) {
            looked_at_ = at;
            if (at + frame_unhashed_bytes + frame_header_bytes > std::min(end_, window_.size()))
                return wrong("is cut off", {});
            const auto start = read_frame_start(window_.view(at, frame_unhashed_bytes + frame_header_bytes));
            if (!start) return wrong(start.error(), {});
            if (at + start->length > end_) return wrong("reaches past the end of its action", start->header);
            if (at + start->length > window_.size()) return cut_frame(*start);
            const auto fault = one_frame(*start, at);
            if (fault != nullptr) return wrong(fault, start->header);
            at += start->length;
        }
        looked_at_ = start_;
        if (at == end_)
            return {.state = State::good, .end = end_, .frames = done_, .what = {}, .header = {}};
        return {.state = State::wrong,
                .end = 0,
                .frames = done_,
                .what = "is not where its action says",
                .header = {}};
    }

    FrameFault one_frame(const FrameStart& start, std::uint64_t at) {
        if (start.header.kind == FrameKind::attachment) return one_attachment(start, at);
        const auto verified = verify_frame(start, window_.view(at, start.length));
        if (!verified) return verified.error();
        handler_.frame(*verified, at);
        return nullptr;
    }

    FrameFault one_attachment(const FrameStart& start, std::uint64_t at) {
        const auto seal_view = window_.view(at + start.length - seal_bytes, seal_bytes);
        const Bytes seal(seal_view.begin(), seal_view.end());
        const std::size_t head = attachment_head_bytes(start);
        auto verified = verify_attachment(start, window_.view(at, head), seal);
        if (!verified) return verified.error();
        const auto& part = verified->frame.parts[attachment_slot];
        const bool last = end_ == window_.size();
        verified->body_checked = part.shown && (last || depth_ == ScanDepth::everything);
        if (verified->body_checked &&
            !attachment_body_matches(window_, at + head, start.length - head - seal_bytes, part)) {
            return "is an attachment whose bytes do not match their hash";
        }
        handler_.frame(*verified, at);
        return nullptr;
    }

    Verdict cut_frame(const FrameStart& start) {
        auto verdict = wrong("is cut off", start.header);
        if (start.header.kind == FrameKind::attachment) verdict.state = State::cut_in_attachment;
        return verdict;
    }

    /// An action that ends behind the end of the file and is not whole was cut off, whatever else is wrong.
    Verdict wrong(std::string what, std::optional<FrameHeader> header) const {
        return {.state = cut_ ? State::incomplete : State::wrong,
                .end = 0,
                .frames = done_,
                .what = std::move(what),
                .header = header};
    }

    Window& window_;
    std::uint64_t start_;
    std::uint64_t looked_at_; ///< The frame, or the action itself.
    ScanDepth depth_;
    ScanHandler& handler_;
    std::uint64_t end_ = 0;
    bool cut_ = false;
    std::size_t done_ = 0;
};

/// Looks for good actions behind damage. A crafted file could make every place worth hashing, so the work
/// is limited; past the limit the answer is "there may be one", which cuts nothing.
class Search {
public:
    explicit Search(Window& window)
        : window_(window)
        , budget_(16 * window.size() + (16U << 20U)) {}

    enum class Answer { none, found, given_up };
    struct Found {
        Answer answer = Answer::none;
        std::uint64_t at = 0;
    };

    Found from(std::uint64_t at) {
        const std::uint64_t viewed_before = window_.bytes_viewed();
        Found found{.answer = Answer::none, .at = window_.size()};
        for (; at + action_header_bytes <= window_.size(); ++at) {
            at = next_candidate(at);
            if (at + action_header_bytes > window_.size()) break;
            Ignore ignore;
            if (ActionCheck(window_, at, ScanDepth::usual, ignore).run().state == State::good) {
                found = {.answer = Answer::found, .at = at};
                break;
            }
            if (spent_ + window_.bytes_viewed() - viewed_before > budget_) {
                found.answer = Answer::given_up;
                break;
            }
        }
        spent_ += window_.bytes_viewed() - viewed_before;
        return found;
    }

private:
    /// The next place whose 12 bytes can be an action header.
    std::uint64_t next_candidate(std::uint64_t at) {
        constexpr std::size_t step = 4096;
        while (at + action_header_bytes <= window_.size()) {
            const auto length = static_cast<std::size_t>(std::min<std::uint64_t>(step, window_.size() - at));
            const auto piece = window_.view(at, length);
            for (std::size_t i = 0; i + action_header_bytes <= length; ++i) {
                if (read_action_header(piece.subspan(i, action_header_bytes))) return at + i;
            }
            at += length - action_header_bytes + 1;
        }
        return window_.size();
    }

    Window& window_;
    std::uint64_t budget_;
    std::uint64_t spent_ = 0;
};

bool zeros_to_the_end(Window& window, std::uint64_t at) {
    while (at < window.size()) {
        const auto length =
            static_cast<std::size_t>(std::min<std::uint64_t>(Window::usual_bytes, window.size() - at));
        if (!all_zero(window.view(at, length))) return false;
        at += length;
    }
    return true;
}

Damage damage_of(const Verdict& verdict, std::uint64_t at, std::uint64_t until, std::size_t frames_before) {
    return {.at = at,
            .wrong_at = verdict.at,
            .until = until,
            .frame_number = frames_before + verdict.frames + 1,
            .what = verdict.what,
            .header = verdict.header};
}

/// Rule: behind the last good action stands something that is no good action and is followed by none.
Tail judge_tail(Window& window, std::uint64_t at, const Verdict& verdict) {
    if (verdict.state != State::wrong || zeros_to_the_end(window, at)) return Tail::torn;
    return Tail::damaged;
}

} // namespace

bool attachment_body_matches(Window& window, std::uint64_t at, std::size_t length, const PartView& part) {
    Sha256 hasher;
    const std::array<std::uint8_t, 1> number{bit_of(attachment_slot)};
    hasher.add(number);
    hasher.add(part.salt);
    for (std::size_t done = 0; done < length;) {
        const std::size_t piece = std::min(length - done, Window::usual_bytes);
        hasher.add(window.view(at + done, piece));
        done += piece;
    }
    return hasher.finish() == part.hash;
}

Scan scan_actions(Window& window, std::uint64_t from, std::size_t frames_before, ScanDepth depth,
                  ScanHandler& handler) {
    Scan scan{.good_end = from, .tail = Tail::whole, .tail_damage = {}, .damages = {}, .frames = 0};
    Search search(window);
    std::uint64_t at = from;
    while (at < window.size()) {
        const auto verdict = ActionCheck(window, at, depth, handler).run();
        handler.action_done(verdict.state == State::good);
        if (verdict.state == State::good) {
            scan.frames += verdict.frames;
            at = scan.good_end = verdict.end;
            continue;
        }
        auto next = Search::Found{.answer = Search::Answer::none, .at = window.size()};
        if (verdict.state != State::cut_in_attachment) next = search.from(at + 1);
        const auto damage = damage_of(verdict, at, next.at, frames_before + scan.frames);
        if (next.answer == Search::Answer::none) {
            scan.tail = judge_tail(window, at, verdict);
            scan.tail_damage = damage;
            break;
        }
        scan.damages.push_back(damage);
        at = next.at;
    }
    return scan;
}

GoodActions walk_good_actions(Window& window, std::uint64_t from, std::uint64_t until, ScanDepth depth,
                              ScanHandler& handler) {
    GoodActions walked{.end = from, .frames = 0};
    while (walked.end < until) {
        const auto verdict = ActionCheck(window, walked.end, depth, handler).run();
        handler.action_done(verdict.state == State::good);
        if (verdict.state != State::good) break;
        walked.end = verdict.end;
        walked.frames += verdict.frames;
    }
    return walked;
}

} // namespace sumpbook::store
