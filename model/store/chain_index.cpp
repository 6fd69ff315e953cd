// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/chain_index.h"

#include "model/store/base32.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::size_t id_symbols = 26; // 128 bits

std::pair<std::uint32_t, Hash256> order_in_chain(const IndexedFrame& frame) {
    return {frame.sequence, frame.hash};
}

} // namespace

FrameFault ChainIndex::add(const FrameHeader& header, IndexedFrame frame) {
    frame.kind = header.kind;
    frame.sequence = header.sequence;
    frame.entry_count = header.entry_count;
    auto found = chains_.find(header.chain);
    if (found != chains_.end()) {
        const auto& chain = found->second;
        const auto& last = frames_[chain.frames.back()];
        if (chain.subject != header.subject) return "is about another bike than the rest of its chain";
        if (frame.hash == last.hash) return "stands in the file twice";
        if (order_in_chain(frame) < order_in_chain(last)) return "stands behind a later frame of its chain";
    } else {
        found = chains_.emplace(header.chain, Chain()).first;
        found->second.subject = header.subject;
        found->second.number = static_cast<std::uint32_t>(ids_.size());
        ids_.push_back(header.chain);
        name_with_neighbours(found);
    }
    frame.chain = found->second.number;
    link(frame, found->second, header.previous);
    found->second.frames.push_back(static_cast<std::uint32_t>(frames_.size()));
    frames_.push_back(frame);
    return nullptr;
}

void ChainIndex::name(Place place) {
    const std::string text = base32_text(place->first.bytes, id_symbols);
    std::size_t length = 2;
    const auto tell_apart_from = [&](const ChainId& other) {
        const std::string theirs = base32_text(other.bytes, id_symbols);
        length = std::max(
            length, static_cast<std::size_t>(std::ranges::mismatch(text, theirs).in1 - text.begin()) + 1);
    };
    // In a sorted map only the neighbours can share the longest beginning.
    if (std::next(place) != chains_.end()) tell_apart_from(std::next(place)->first);
    if (place != chains_.begin()) tell_apart_from(std::prev(place)->first);
    place->second.name = text.substr(0, length);
}

void ChainIndex::name_with_neighbours(Place place) {
    name(place);
    if (std::next(place) != chains_.end()) name(std::next(place));
    if (place != chains_.begin()) name(std::prev(place));
}

void ChainIndex::link(IndexedFrame& frame, Chain& chain, const Hash256& previous) {
    const auto sequence = frame.sequence;
    const IndexedFrame* parent = sequence == 0 ? nullptr : at_sequence(chain, sequence - 1, previous);
    if (sequence > 0 && parent == nullptr) ++chain.missing;
    // Behind a gap the nearest earlier frame of the chain counts as the one before.
    const IndexedFrame* before = parent != nullptr ? parent : last_before(chain, sequence);
    const bool has_twin = !chain.frames.empty() && frames_[chain.frames.back()].sequence == sequence;
    const bool forks = before != nullptr ? before->has_child || (parent == nullptr && has_twin) : has_twin;
    frame.entries_before = before == nullptr ? 0 : before->entries_before + before->entry_count;
    frame.branch = forks ? ++chain.branches : before != nullptr ? before->branch : 1;
    frame.has_child = false;
    frame.parent.reset();
    if (parent == nullptr) return;
    frame.parent = static_cast<std::uint32_t>(parent - frames_.data());
    frames_[*frame.parent].has_child = true;
}

/// The last frame of a lower sequence.
const IndexedFrame* ChainIndex::last_before(const Chain& chain, std::uint32_t sequence) const {
    const auto sequence_of = [this](std::uint32_t index) { return frames_[index].sequence; };
    const auto found = std::ranges::lower_bound(chain.frames, sequence, {}, sequence_of);
    return found == chain.frames.begin() ? nullptr : &frames_[*std::prev(found)];
}

const Chain* ChainIndex::find(const ChainId& id) const {
    const auto found = chains_.find(id);
    return found == chains_.end() ? nullptr : &found->second;
}

std::vector<const IndexedFrame*> ChainIndex::heads(const Chain& chain) const {
    std::vector<const IndexedFrame*> heads;
    // As nearly all chains are; every save asks.
    if (chain.branches == 1 && chain.missing == 0 && !chain.frames.empty())
        return {&frames_[chain.frames.back()]};
    for (const auto index : chain.frames) {
        if (!frames_[index].has_child) heads.push_back(&frames_[index]);
    }
    return heads;
}

const IndexedFrame* ChainIndex::not_before(const Chain& chain, std::uint32_t sequence,
                                           const Hash256& hash) const {
    const auto order = [this](std::uint32_t index) { return order_in_chain(frames_[index]); };
    const auto found = std::ranges::lower_bound(chain.frames, std::pair(sequence, hash), {}, order);
    return found == chain.frames.end() ? nullptr : &frames_[*found];
}

const IndexedFrame* ChainIndex::at_sequence(const Chain& chain, std::uint32_t sequence,
                                            const Hash256& hash) const {
    const IndexedFrame* frame = chain.frames.empty() ? nullptr : &frames_[chain.frames.back()];
    const bool is_last = frame != nullptr && frame->sequence == sequence && frame->hash == hash;
    if (!is_last) frame = not_before(chain, sequence, hash); // almost always it is
    return frame != nullptr && frame->sequence == sequence && frame->hash == hash ? frame : nullptr;
}

bool ChainIndex::has_sequence(const Chain& chain, std::uint32_t sequence) const {
    const auto* frame = not_before(chain, sequence, Hash256{});
    return frame != nullptr && frame->sequence == sequence;
}

const IndexedFrame* ChainIndex::frame_before(const ChainId& id, std::uint32_t sequence) const {
    const auto* chain = find(id);
    if (chain == nullptr || sequence == 0) return nullptr;
    const auto* frame = not_before(*chain, sequence - 1, Hash256{});
    return frame != nullptr && frame->sequence == sequence - 1 ? frame : nullptr;
}

std::string ChainIndex::name_of(const ChainId& id) const {
    const auto* chain = find(id);
    return chain != nullptr ? chain->name : base32_text(id.bytes, 8);
}

std::string ChainIndex::entry_id(const IndexedFrame& frame, std::size_t index) const {
    std::string id = chains_.at(chain_of(frame)).name;
    id += '-';
    id += std::to_string(frame.entries_before + index + 1);
    if (frame.branch > 1) id += '/' + std::to_string(frame.branch);
    return id;
}

std::vector<Finding> ChainIndex::findings() const {
    std::vector<Finding> findings;
    for (const auto& [id, chain] : chains_) {
        if (chain.missing > 0) {
            findings.push_back({"frame-missing",
                                fmt::format("In {} of the entries {}-... earlier frames are missing "
                                            "from this file. Another copy may have them: merge it.",
                                            chain.missing == 1 ? std::string("1 place")
                                                               : fmt::format("{} places", chain.missing),
                                            chain.name)});
        }
        if (chain.branches > 1) {
            findings.push_back(
                {"chain-forked",
                 fmt::format("The entries {}-... were continued in {} different ways, from copies of "
                             "one installation. All are kept.",
                             chain.name, chain.branches)});
        }
    }
    return findings;
}

} // namespace sumpbook::store
