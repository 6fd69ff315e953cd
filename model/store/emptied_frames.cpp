// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/emptied_frames.h"

#include "model/store/scan.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

Bytes without_parts(Frame frame) {
    for (auto& part : frame.parts)
        part = withheld_part(part.hash);
    return encode_frame(frame);
}

class Withholder final : public ScanHandler {
public:
    Withholder(const std::set<Hash256>& frames, const std::set<Hash256>& attachments)
        : frames_(frames)
        , attachments_(attachments) {}

    void frame(const VerifiedFrame& verified, std::uint64_t at) override {
        if (length_ == 0) start_ = at - action_header_bytes;
        const auto length = encoded_length(verified);
        length_ += length;
        const bool attachment = verified.frame.header.kind == FrameKind::attachment;
        const bool meant = attachment ? attachments_.contains(verified.frame.parts[attachment_slot].hash)
                                      : frames_.contains(verified.hash);
        if (!meant) return;
        found_.frames.insert(verified.hash);
        if (attachment) ++found_.attachments;
        if (!attachment && verified.frame.parts_shown() != verified.frame.header.parts_exist) found_.incomplete.insert(verified.hash);
        of_action_.push_back({at, length, without_parts(verified.frame)});
    }
    void fingerprint_record(ByteView /*body*/) override {}
    void action_done(bool good) override {
        if (good && !of_action_.empty()) add_action();
        of_action_.clear();
        length_ = 0;
    }
    [[nodiscard]] EmptiedFrames take() && { return std::move(found_); }

private:
    void add_action() {
        std::uint64_t length = action_header_bytes + length_;
        for (const auto& patch : of_action_)
            length = length - patch.length + patch.bytes.size();
        Bytes number;
        put_number(number, static_cast<std::uint32_t>(length));
        constexpr std::size_t length_at = 4; // behind the action's magic
        found_.patches.push_back({start_ + length_at, number.size(), std::move(number)});
        std::ranges::move(of_action_, std::back_inserter(found_.patches));
    }

    const std::set<Hash256>& frames_;
    const std::set<Hash256>& attachments_;
    EmptiedFrames found_;
    // Of the action that is being read.
    std::uint64_t start_ = 0;
    std::uint64_t length_ = 0;
    std::vector<Patch> of_action_;
};

/// Collects those of the frames that show nothing.
class EmptyOnes final : public ScanHandler {
public:
    explicit EmptyOnes(const std::set<Hash256>& frames)
        : frames_(frames) {}

    void frame(const VerifiedFrame& verified, std::uint64_t /*at*/) override {
        if (!frames_.contains(verified.hash)) return;
        if (verified.frame.parts_shown() != 0) shown_ = true;
        seen_.insert(verified.hash);
    }
    void fingerprint_record(ByteView /*body*/) override {}
    void action_done(bool /*good*/) override {}
    [[nodiscard]] bool all() const { return !shown_ && seen_ == frames_; }

private:
    const std::set<Hash256>& frames_;
    std::set<Hash256> seen_;
    bool shown_ = false;
};

bool is_good(const Scan& scan) { return scan.tail == Tail::whole && scan.damages.empty(); }

} // namespace

EmptiedFrames empty_frames(Window& window, std::uint64_t from, const std::set<Hash256>& frames,
                  const std::set<Hash256>& attachments) {
    Withholder handler(frames, attachments);
    const auto scan = scan_actions(window, from, 0, ScanDepth::usual, handler);
    auto found = std::move(handler).take();
    found.complete = is_good(scan) && std::ranges::includes(found.frames, frames);
    return found;
}

bool are_emptied(Window& window, std::uint64_t from, const std::set<Hash256>& frames) {
    EmptyOnes handler(frames);
    return is_good(scan_actions(window, from, 0, ScanDepth::usual, handler)) && handler.all();
}

namespace {

/// Writes one piece after the other at the end of a file.
class Writer {
public:
    explicit Writer(const OpenFile& to)
        : to_(to) {}
    [[nodiscard]] Io<void> add(ByteView bytes) {
        auto written = write_fully(to_, end_, bytes);
        if (written) end_ += bytes.size();
        return written;
    }
    [[nodiscard]] Io<void> copy(const OpenFile& from, std::uint64_t at, std::uint64_t until) {
        constexpr std::uint64_t at_once = 256 * 1024;
        Bytes piece;
        for (; at < until; at += piece.size()) {
            piece.resize(static_cast<std::size_t>(std::min(at_once, until - at)));
            const auto read = read_fully(from, at, piece);
            if (!read) return tl::unexpected<IoError>(read.error());
            if (*read != piece.size()) return io_fail(IoFault::ended, 0);
            if (auto written = add(piece); !written) return written;
        }
        return {};
    }
    [[nodiscard]] std::uint64_t end() const { return end_; }

private:
    const OpenFile& to_;
    std::uint64_t end_ = 0;
};

} // namespace

Io<std::uint64_t> copy_patched(const OpenFile& from, std::uint64_t size, const std::vector<Patch>& patches,
                               const OpenFile& to) {
    Writer writer(to);
    std::uint64_t at = 0;
    for (const auto& patch : patches) {
        if (const auto copied = writer.copy(from, at, patch.at); !copied)
            return tl::unexpected<IoError>(copied.error());
        if (const auto written = writer.add(patch.bytes); !written)
            return tl::unexpected<IoError>(written.error());
        at = patch.at + patch.length;
    }
    if (const auto copied = writer.copy(from, at, size); !copied)
        return tl::unexpected<IoError>(copied.error());
    return writer.end();
}

} // namespace sumpbook::store
