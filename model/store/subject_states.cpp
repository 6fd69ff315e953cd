// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/subject_states.h"

#include <algorithm>
#include <ranges>

namespace sumpbook::store {
namespace {

/// Heads, as places in the index.
using State = std::vector<std::size_t>;
/// The states of a part of the forest that the frames of a subject are; the last is the empty one.
using States = std::vector<State>;

/// Heads hashed in all while a file grows; past this the search is left out (DESIGN: about a second).
constexpr std::size_t most_heads_hashed = 20'000'000;

ChainHead head_of(const ChainIndex& index, const IndexedFrame& frame) {
    return {index.chain_of(frame), frame.sequence, frame.hash};
}

FingerprintLeaf leaf_of(const SubjectId& subject, std::vector<ChainHead> heads) {
    std::ranges::sort(heads);
    const Hash256 leaf = leaf_hash(subject, heads);
    return {leaf, subject, std::move(heads)};
}

/// Every state of the one with every state of the other. False: that would be too many.
bool combine(States& all, States&& more, std::size_t most_states) {
    if (all.size() == 1) { // only the empty one: nothing to multiply, and long chains stay cheap
        all = std::move(more);
        return true;
    }
    if (all.size() > most_states / more.size()) return false;
    States product;
    product.reserve(all.size() * more.size());
    for (const auto& one : all) {
        for (const auto& other : more) {
            product.push_back(one);
            product.back().insert(product.back().end(), other.begin(), other.end());
        }
    }
    all = std::move(product);
    return true;
}

/// Every state of the subject and the empty one, the latest of a chain first; absent: too many.
std::optional<States> all_states(const ChainIndex& index, const std::vector<std::size_t>& frames,
                                 std::size_t most_states) {
    std::map<std::size_t, States> behind; // by frame: the states of what follows it
    States whole{{}};
    for (const auto place : std::views::reverse(frames)) { // what follows a frame stands behind it
        States states{{}};
        if (auto found = behind.find(place); found != behind.end()) {
            states = std::move(found->second);
            behind.erase(found);
        }
        states.back() = {place}; // nothing of what follows: the frame itself is the head
        states.emplace_back();
        const auto& parent = index.frames()[place].parent;
        States& with = parent ? behind.try_emplace(*parent, States{{}}).first->second : whole;
        if (!combine(with, std::move(states), most_states)) return std::nullopt;
    }
    return whole;
}

std::optional<FingerprintLeaf> among_all(const ChainIndex& index, const States& states,
                                         const SubjectId& subject, const std::set<Hash256>& leaves) {
    for (const auto& state : states) {
        if (state.empty()) continue;
        std::vector<ChainHead> heads;
        for (const auto place : state)
            heads.push_back(head_of(index, index.frames()[place]));
        auto leaf = leaf_of(subject, std::move(heads));
        if (leaves.contains(leaf.leaf)) return leaf;
    }
    return std::nullopt;
}

std::optional<FingerprintLeaf> as_it_grew(const ChainIndex& index, const std::vector<std::size_t>& frames,
                                          const SubjectId& subject, const std::set<Hash256>& leaves) {
    std::set<ChainHead> heads;
    std::size_t hashed = 0;
    for (const auto place : frames) {
        const auto& frame = index.frames()[place];
        if (frame.parent) heads.erase(head_of(index, index.frames()[*frame.parent]));
        heads.insert(head_of(index, frame));
        hashed += heads.size();
        if (hashed > most_heads_hashed) return std::nullopt;
        auto leaf = leaf_of(subject, {heads.begin(), heads.end()});
        if (leaves.contains(leaf.leaf)) return leaf;
    }
    return std::nullopt;
}

} // namespace

std::map<SubjectId, std::vector<std::size_t>> frames_by_subject(const ChainIndex& index) {
    std::map<SubjectId, std::vector<std::size_t>> frames;
    for (std::size_t place = 0; place < index.frames().size(); ++place)
        frames[index.subject_of(index.frames()[place])].push_back(place);
    return frames;
}

StateSearch state_with_leaf(const ChainIndex& index, const std::vector<std::size_t>& frames,
                            const std::set<Hash256>& leaves, std::size_t most_states) {
    if (frames.empty() || leaves.empty()) return {};
    const auto& subject = index.subject_of(index.frames()[frames.front()]);
    if (const auto states = all_states(index, frames, most_states))
        return {.found = among_all(index, *states, subject, leaves), .all = true};
    return {.found = as_it_grew(index, frames, subject, leaves), .all = false};
}

} // namespace sumpbook::store
