// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/fuzz/change_garage.h"

#include "model/store/archive.h"
#include "model/store/bodies.h"
#include "tests/fuzz/garage_draft.h"
#include "tests/fuzz/targets.h"
#include "tests/model/store/record_maker.h"

#include <algorithm>
#include <random>

namespace sumpbook::fuzz {

using namespace store;

namespace {

constexpr std::size_t most_frames = 64; ///< More only make a run slow.
/// A frame that claims to hold more gets no records behind its own: each takes a byte at least.
constexpr std::uint32_t most_entries = 1000;

class Changer {
public:
    Changer(GarageDraft& draft, std::size_t most, std::uint32_t seed, const ChangeBytes& change)
        : draft_(draft)
        , most_(most)
        , random_(seed)
        , change_(change) {}

    void run() {
        for (auto left = 1 + below(3); left > 0; --left)
            one();
    }

private:
    std::uint32_t below(std::size_t limit) { return static_cast<std::uint32_t>(random_() % limit); }

    void one() {
        const auto frames = frames_of(draft_);
        if (frames.empty() || frames.size() > most_frames) return rest();
        auto& frame = *frames[below(frames.size())];
        switch (below(18)) {
        case 0:
            return heading(frame, *frames[below(frames.size())]);
        case 1:
            return count(frame);
        case 2:
            return parts(frame);
        case 3:
            return frames.size() < most_frames ? more_frames() : fewer_actions();
        case 4:
            return fewer_actions();
        case 5:
            return swap_actions();
        case 6:
            return fingerprint();
        case 7:
            return rest();
        case 8:
        case 9:
            return made_up(frame);
        case 10:
            return next_in_chain(frame);
        case 11:
        case 12:
        case 13:
        case 14:
            return text(frame);
        default:
            return body(frame);
        }
    }

    void body(DraftFrame& frame) {
        auto& part = frame.parts[below(part_slots)];
        if (part.shown) change_(part.body, most_);
    }

    /// A text in a body gets another length, and the number in front of it follows.
    void text(DraftFrame& frame) {
        std::vector<DraftFrame::Part*> shown;
        for (std::size_t slot = 0; slot < 3; ++slot) {
            if (frame.parts[slot].shown) shown.push_back(&frame.parts[slot]);
        }
        if (shown.empty()) return;
        auto& part = *shown[below(shown.size())];
        const auto places = texts_in(part.body);
        if (places.empty()) return;
        const auto at = part.body.begin() + static_cast<std::ptrdiff_t>(places[below(places.size())]);
        const std::string now(below(4) == 0 ? below(300) : below(40), static_cast<char>('a' + below(26)));
        Bytes written;
        OutArchive(written) << now;
        const auto behind = part.body.erase(at, at + 1 + *at);
        part.body.insert(behind, written.begin(), written.end());
    }

    /// Where a number stands that can be the length of the text behind it.
    static std::vector<std::size_t> texts_in(const Bytes& body) {
        std::vector<std::size_t> places;
        for (std::size_t at = 0; at < body.size(); ++at) {
            const std::size_t length = body[at];
            if (length == 0 || length > 127 || at + 1 + length > body.size()) continue;
            const auto text = ByteView(body).subspan(at + 1, length);
            if (std::ranges::all_of(text, [](std::uint8_t byte) { return byte >= ' '; })) places.push_back(at);
        }
        return places;
    }

    void heading(DraftFrame& frame, const DraftFrame& other) {
        auto& header = frame.header;
        switch (below(8)) {
        case 0:
            header.chain = other.header.chain;
            break;
        case 1:
            header.subject = other.header.subject;
            break;
        case 2:
            header.sequence = below(4) == 0 ? static_cast<std::uint32_t>(random_()) : below(4);
            break;
        case 3:
            header.previous = other.was;
            break;
        case 4:
            header.chain.bytes[below(16)] ^= static_cast<std::uint8_t>(1U << below(8));
            break;
        case 5:
            header.subject.bytes[below(16)] ^= static_cast<std::uint8_t>(1U << below(8));
            break;
        case 6:
            header.format = static_cast<std::uint8_t>(below(3));
            break;
        default:
            header.kind = static_cast<FrameKind>(below(4));
        }
        if (header.sequence == 0 && below(8) != 0) header.previous = {};
    }

    void count(DraftFrame& frame) {
        auto& count = frame.header.entry_count;
        constexpr std::array<std::uint32_t, 6> claims{0, 1, 2, 131'072, 20'000'000, 0xFFFFFFFF};
        count = below(2) == 0 ? count + below(3) - 1 : claims[below(claims.size())];
    }

    void parts(DraftFrame& frame) {
        const auto slot = below(part_slots);
        auto& part = frame.parts[slot];
        if (below(2) == 0) {
            frame.header.parts_exist ^= bit_of(slot);
            part.shown = frame.exists(slot);
        } else {
            if (part.shown) part.hash = part_hash(slot, part.salt, part.body);
            part.shown = frame.exists(slot) && !part.shown;
        }
    }

    void more_frames() {
        auto action = draft_.actions[below(draft_.actions.size())];
        auto& to = draft_.actions[below(draft_.actions.size())];
        if (below(2) == 0 || action.frames.empty() || to.frames.empty())
            draft_.actions.insert(draft_.actions.begin() + below(draft_.actions.size() + 1), action);
        else
            to.frames.insert(to.frames.end(), action.frames.begin(), action.frames.end());
    }

    void fewer_actions() { draft_.actions.erase(draft_.actions.begin() + below(draft_.actions.size())); }

    void swap_actions() {
        std::swap(draft_.actions[below(draft_.actions.size())],
                  draft_.actions[below(draft_.actions.size())]);
    }

    /// One of this very file, or another with changed bytes, or with bare leaves.
    void fingerprint() {
        ChainIndex index;
        for (const auto* frame : frames_of(draft_)) {
            IndexedFrame place;
            place.hash = frame->was;
            static_cast<void>(index.add(frame->header, place));
        }
        FingerprintRecord record{.printed = {below(2'000'000'000)}, .entries = below(9), .leaves = leaves_of(index)};
        for (auto& leaf : record.leaves) {
            if (below(4) == 0) leaf = {leaf.leaf, {}, {}};
        }
        DraftAction action{.frames = {}, .fingerprint = encode_fingerprint_record(record)};
        if (below(3) == 0) change_(action.fingerprint, most_);
        draft_.actions.insert(draft_.actions.begin() + below(draft_.actions.size() + 1), action);
    }

    void rest() { change_(draft_.rest, most_); }

    /// One to three records that an archive could have written, in place of those of the frame or behind
    /// them.
    void made_up(DraftFrame& frame) {
        RecordMaker maker(random_());
        std::vector<Record> records;
        for (auto left = 1 + below(3); left > 0; --left)
            records.push_back(maker.record());
        const auto batches = encode_records(records);
        if (!batches || batches->size() != 1) return;
        const bool behind = below(2) == 0 && frame.header.kind == FrameKind::records &&
                            frame.parts[0].shown && frame.header.entry_count <= most_entries;
        if (!behind) {
            frame.parts = {};
            frame.header.kind = FrameKind::records;
            frame.header.parts_exist = 0;
            frame.header.entry_count = 0;
        }
        for (std::size_t slot = 0; slot < 3; ++slot)
            add_part(frame, slot, batches->front());
        frame.header.entry_count += batches->front().count;
    }

    static void add_part(DraftFrame& frame, std::size_t slot, const Batch& batch) {
        auto& part = frame.parts[slot];
        const auto& body = batch.parts[slot];
        if (!frame.exists(slot) && body.empty()) return;
        if (frame.exists(slot) && !part.shown) return;
        if (!frame.exists(slot)) part.body.resize(frame.header.entry_count); // nothing about those before
        frame.header.parts_exist |= bit_of(slot);
        part.shown = true;
        put_bytes(part.body, body);
        if (body.empty()) part.body.resize(part.body.size() + batch.count);
    }

    /// A copy of the frame at the end, one further in its chain, in an action of its own.
    void next_in_chain(const DraftFrame& frame) {
        DraftFrame next = frame;
        ++next.header.sequence;
        next.header.previous = frame.was;
        next.was = {};
        next.parts[0].salt[0] ^= static_cast<std::uint8_t>(1 + below(255));
        draft_.actions.push_back({.frames = {std::move(next)}, .fingerprint = {}});
    }

    GarageDraft& draft_;
    std::size_t most_;
    std::mt19937 random_;
    const ChangeBytes& change_;
};

Bytes cut_to(Bytes bytes, std::size_t most) {
    if (bytes.size() > most) bytes.resize(most);
    return bytes;
}

} // namespace

Bytes changed_garage(ByteView bytes, std::size_t most, std::uint32_t seed, const ChangeBytes& change) {
    if (seed % 8 == 0) {
        Bytes raw(bytes.begin(), bytes.end());
        change(raw, most);
        return raw;
    }
    auto draft = read_draft(bytes);
    Changer(draft, most, seed, change).run();
    return cut_to(write_draft(draft), most);
}

Bytes changed_merge(ByteView bytes, std::size_t most, std::uint32_t seed, const ChangeBytes& change) {
    if (bytes.size() < merge_head_bytes) return changed_garage(bytes, most, seed, change);
    std::mt19937 random(seed);
    auto [first, second] = files_of_merge(bytes);
    const std::size_t half = (most - merge_head_bytes) / 2;
    Bytes a(first.begin(), first.end()), b(second.begin(), second.end());
    const auto inner = static_cast<std::uint32_t>(random());
    auto withheld = bytes[4];
    switch (random() % 8) {
    case 0:
        b = changed_garage(a, half, inner, change);
        break;
    case 1:
        withheld ^= static_cast<std::uint8_t>(2U << random() % 3);
        break;
    case 2:
        b = crossed_garages(a, b, half, inner);
        break;
    case 3:
    case 4:
        a = changed_garage(a, half, inner, change);
        break;
    default:
        b = changed_garage(b, half, inner, change);
    }
    return bytes_of_merge(cut_to(std::move(a), half), cut_to(std::move(b), half), withheld);
}

Bytes crossed_garages(ByteView a, ByteView b, std::size_t most, std::uint32_t seed) {
    std::mt19937 random(seed);
    auto draft = read_draft(a);
    for (auto& action : read_draft(b).actions) {
        if (random() % 2 == 0) draft.actions.push_back(std::move(action));
    }
    std::erase_if(draft.actions, [&](const DraftAction& /*action*/) { return random() % 8 == 0; });
    return cut_to(write_draft(draft), most);
}

} // namespace sumpbook::fuzz
