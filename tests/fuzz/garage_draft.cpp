// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/fuzz/garage_draft.h"

#include <algorithm>
#include <map>
#include <optional>

namespace sumpbook::fuzz {

using namespace store;

namespace {

constexpr std::size_t parts_at = frame_unhashed_bytes + frame_header_bytes;

/// Takes bytes off the front; stays empty-handed once there are too few.
class Cutter {
public:
    explicit Cutter(ByteView bytes)
        : left_(bytes) {}
    std::optional<ByteView> take(std::size_t length) {
        if (length > left_.size()) return std::nullopt;
        const auto taken = left_.first(length);
        left_ = left_.subspan(length);
        return taken;
    }
    [[nodiscard]] ByteView left() const { return left_; }

private:
    ByteView left_;
};

bool read_part(Cutter& cutter, bool with_hash, DraftFrame::Part& part) {
    if (with_hash || !part.shown) {
        const auto hash = cutter.take(hash_bytes);
        if (!hash) return false;
        part.hash = get_array<hash_bytes>(*hash, 0);
    }
    if (!part.shown) return true;
    const auto head = cutter.take(part_overhead_bytes);
    if (!head) return false;
    part.salt = get_array<salt_bytes>(*head, 4);
    const auto body = cutter.take(get_number<std::uint32_t>(*head, 0));
    if (body) part.body.assign(body->begin(), body->end());
    return body.has_value();
}

Frame frame_of(const DraftFrame& draft) {
    Frame frame{.header = draft.header, .parts = {}};
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        const auto& part = draft.parts[slot];
        if (!frame.exists(slot)) continue;
        frame.parts[slot] = part.shown ? shown_part(slot, part.salt, part.body) : withheld_part(part.hash);
    }
    return frame;
}

std::optional<DraftFrame> read_frame(ByteView bytes) {
    const auto start = read_frame_start(bytes);
    if (!start) return std::nullopt;
    DraftFrame frame;
    frame.header = start->header;
    Cutter cutter(bytes.subspan(parts_at));
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if (!frame.exists(slot)) continue;
        frame.parts[slot].shown = (start->parts_shown & bit_of(slot)) != 0;
        if (!read_part(cutter, slot == attachment_slot, frame.parts[slot])) return std::nullopt;
    }
    if (cutter.left().size() != seal_bytes) return std::nullopt;
    frame.was = frame_hash(frame_of(frame));
    return frame;
}

std::optional<DraftAction> read_action(const ActionHeader& header, ByteView action) {
    DraftAction draft;
    if (header.kind == ActionKind::fingerprint) {
        const auto body = fingerprint_body(action);
        draft.fingerprint.assign(body.begin(), body.end());
        return draft;
    }
    Cutter cutter(action.subspan(action_header_bytes));
    for (std::size_t i = 0; i < header.frame_count; ++i) {
        if (cutter.left().size() < parts_at) return std::nullopt;
        const auto bytes = cutter.take(get_number<std::uint32_t>(cutter.left(), 0));
        auto frame = bytes && bytes->size() >= parts_at ? read_frame(*bytes) : std::nullopt;
        if (!frame) return std::nullopt;
        draft.frames.push_back(*std::move(frame));
    }
    return cutter.left().empty() ? std::optional(std::move(draft)) : std::nullopt;
}

/// What each changed hash has become.
using Renamed = std::map<Hash256, Hash256>;

void rename_in(Bytes& bytes, const Renamed& renamed) {
    for (std::size_t at = 0; at + hash_bytes <= bytes.size(); ++at) {
        for (const auto& [was, now] : renamed) {
            if (bytes[at] != was[0] || !std::equal(was.begin(), was.end(), &bytes[at])) continue;
            std::ranges::copy(now, &bytes[at]);
            at += hash_bytes - 1;
            break;
        }
    }
}

/// Leaves follow their heads.
Bytes proved_again(const Bytes& body, const Renamed& renamed) {
    auto record = renamed.empty() ? std::nullopt : read_fingerprint_record(body);
    if (!record) return body;
    for (auto& leaf : record->leaves) {
        for (auto& head : leaf.heads) {
            const auto found = renamed.find(head.hash);
            if (found != renamed.end()) head.hash = found->second;
        }
        std::ranges::sort(leaf.heads);
        if (!leaf.heads.empty()) leaf.leaf = leaf_hash(leaf.subject, leaf.heads);
    }
    std::ranges::sort(record->leaves, {}, &FingerprintLeaf::leaf);
    return encode_fingerprint_record(*record);
}

Bytes write_frame(DraftFrame frame, Renamed& renamed) {
    const auto previous = renamed.find(frame.header.previous);
    if (previous != renamed.end()) frame.header.previous = previous->second;
    if (!renamed.empty() && frame.header.kind == FrameKind::records) {
        for (auto& part : frame.parts)
            rename_in(part.body, renamed);
    }
    const auto whole = frame_of(frame);
    const auto hash = frame_hash(whole);
    if (frame.was != Hash256{} && hash != frame.was) renamed[frame.was] = hash;
    return encode_frame(whole);
}

} // namespace

GarageDraft read_draft(ByteView bytes) {
    GarageDraft draft;
    Cutter cutter(bytes);
    const auto header = cutter.take(file_header_bytes);
    if (header) draft.garage.bytes = get_array<16>(*header, 16);
    while (cutter.left().size() >= action_header_bytes) {
        const auto start = read_action_header(cutter.left());
        if (!start || start->length > cutter.left().size() || start->length < action_header_bytes) break;
        auto action = read_action(*start, cutter.left().first(start->length));
        if (!action) break;
        static_cast<void>(cutter.take(start->length));
        draft.actions.push_back(*std::move(action));
    }
    draft.rest.assign(cutter.left().begin(), cutter.left().end());
    return draft;
}

Bytes write_draft(const GarageDraft& draft) {
    Bytes out = encode_file_header(draft.garage);
    Renamed renamed;
    for (const auto& action : draft.actions) {
        if (action.frames.empty()) {
            put_bytes(out, encode_fingerprint_action(proved_again(action.fingerprint, renamed)));
            continue;
        }
        std::vector<Bytes> frames;
        for (const auto& frame : action.frames)
            frames.push_back(write_frame(frame, renamed));
        put_bytes(out, encode_action(frames));
    }
    put_bytes(out, draft.rest);
    return out;
}

std::vector<DraftFrame*> frames_of(GarageDraft& draft) {
    std::vector<DraftFrame*> frames;
    for (auto& action : draft.actions) {
        for (auto& frame : action.frames)
            frames.push_back(&frame);
    }
    return frames;
}

} // namespace sumpbook::fuzz
