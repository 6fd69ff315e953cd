// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/fingerprint.h"

#include "model/store/subject_states.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace sumpbook::store {
namespace {

/// States of all subjects together, besides one for each frame, that are matched with bare leaves.
constexpr std::size_t most_states = 200'000;

std::vector<ChainHead> heads_in(const std::vector<FingerprintLeaf>& leaves) {
    std::vector<ChainHead> heads;
    for (const auto& leaf : leaves)
        heads.insert(heads.end(), leaf.heads.begin(), leaf.heads.end());
    return heads;
}

/// The state of a file as it grew, frame by frame.
class GrowingState {
public:
    void add(const ChainIndex& index, const IndexedFrame& frame) {
        const auto& subject = index.subject_of(frame);
        auto& heads = heads_[subject];
        if (frame.parent) {
            const auto& parent = index.frames()[*frame.parent];
            heads.erase({index.chain_of(parent), parent.sequence, parent.hash});
        }
        heads.insert({index.chain_of(frame), frame.sequence, frame.hash});
        auto& leaf = leaf_of_[subject];
        leaves_.erase(leaf);
        leaf = leaf_hash(subject, {heads.begin(), heads.end()});
        leaves_.insert(leaf);
    }

    [[nodiscard]] Hash256 fingerprint() const {
        std::vector<FingerprintLeaf> leaves;
        for (const auto& leaf : leaves_)
            leaves.push_back({leaf, {}, {}});
        return fingerprint_of(leaves);
    }

    [[nodiscard]] std::vector<ChainHead> heads() const {
        std::vector<ChainHead> all;
        for (const auto& [subject, heads] : heads_)
            all.insert(all.end(), heads.begin(), heads.end());
        return all;
    }

private:
    std::map<SubjectId, std::set<ChainHead>> heads_;
    std::map<SubjectId, Hash256> leaf_of_;
    std::set<Hash256> leaves_;
};

std::optional<std::vector<ChainHead>> earlier_state(const TypedFingerprint& typed, const ChainIndex& index) {
    GrowingState state;
    for (const auto& frame : index.frames()) {
        state.add(index, frame);
        if (typed.matches(state.fingerprint())) return state.heads();
    }
    return std::nullopt;
}

/// What a saved record says about this file.
struct SavedState {
    std::vector<ChainHead> heads;
    std::size_t subjects_not_held = 0;
    std::vector<SubjectId> fits_no_leaf; ///< Held subjects that no leaf can be of.
    bool by_heads = false;               ///< It names the heads of a held subject.
    bool searched = true;                ///< Every state of those in fits_no_leaf was tried.
};

/// Records of one fingerprint have the same leaves; what one of them knows of a leaf is known.
std::vector<FingerprintLeaf> leaves_together(const std::vector<FingerprintRecord>& records,
                                             const Hash256& fingerprint) {
    std::map<Hash256, FingerprintLeaf> leaves;
    for (const auto& record : records) {
        if (record.fingerprint() != fingerprint) continue;
        for (const auto& leaf : record.leaves) {
            auto& known = leaves[leaf.leaf];
            if (known.heads.empty()) known = leaf;
        }
    }
    std::vector<FingerprintLeaf> together;
    for (auto& [hash, leaf] : leaves)
        together.push_back(std::move(leaf));
    return together;
}

SavedState saved_state(const std::vector<FingerprintLeaf>& leaves, const ChainIndex& index) {
    SavedState saved;
    saved.heads = heads_in(leaves);
    std::set<SubjectId> whole;
    std::set<Hash256> bare;
    for (const auto& leaf : leaves) {
        if (leaf.heads.empty())
            bare.insert(leaf.leaf);
        else
            whole.insert(leaf.subject);
    }
    const auto subjects = frames_by_subject(index);
    for (const auto& [subject, frames] : subjects) {
        if (whole.contains(subject)) {
            saved.by_heads = true;
            continue;
        }
        if (bare.empty()) continue;
        const auto allowed = frames.size() + 2 + most_states / subjects.size();
        const auto search = state_with_leaf(index, frames, bare, allowed);
        if (search.found) {
            saved.heads.insert(saved.heads.end(), search.found->heads.begin(), search.found->heads.end());
            bare.erase(search.found->leaf);
        } else {
            saved.fits_no_leaf.push_back(subject);
            saved.searched = saved.searched && search.all;
        }
    }
    saved.subjects_not_held = bare.size();
    if (bare.empty()) { // every leaf is accounted for: they were not covered
        saved.fits_no_leaf.clear();
        saved.searched = true;
    }
    return saved;
}

/// Keeps of a state what is about one subject. A bare leaf that is left over may be this one's.
void keep_only(SavedState& state, const std::vector<FingerprintLeaf>& leaves, const ChainIndex& index,
               const SubjectId& only) {
    std::set<ChainId> chains;
    for (const auto& leaf : leaves) {
        if (leaf.subject != only) continue;
        for (const auto& head : leaf.heads)
            chains.insert(head.chain);
    }
    bool held = false;
    for (const auto& [id, chain] : index.chains()) {
        if (chain.subject != only) continue;
        chains.insert(id);
        held = true;
    }
    std::erase_if(state.heads, [&](const ChainHead& head) { return !chains.contains(head.chain); });
    const bool open = state.heads.empty() && state.subjects_not_held > 0;
    const bool untold = std::ranges::find(state.fits_no_leaf, only) != state.fits_no_leaf.end();
    state.searched = state.searched || !untold;
    state.fits_no_leaf.clear();
    if (open && held) state.fits_no_leaf = {only};
    if (!open) state.subjects_not_held = 0;
}

/// "frame 12 of the entries k7-..."; where the frame in front of it is known and holds entries, also behind
/// which.
std::string place_of(const ChainIndex& index, const ChainId& id, std::uint32_t sequence) {
    auto place = fmt::format("frame {} of the entries {}-...", sequence + 1, index.name_of(id));
    const auto* chain = index.find(id);
    if (chain == nullptr || chain->branches > 1) return place; // of a fork either side may be the one
    const auto* before = index.frame_before(id, sequence);
    if (before == nullptr || before->entry_count == 0) return place;
    return place + ", behind the entry " + index.entry_id(*before, before->entry_count - 1);
}

/// What stands where in relation to the covered state.
class Coverage {
public:
    Coverage(const ChainIndex& index, const SavedState& state, const std::optional<SubjectId>& only)
        : index_(index)
        , only_(only)
        , heads_(state.heads)
        , untold_(state.fits_no_leaf.begin(), state.fits_no_leaf.end())
        , not_here_(index.chains().size())
        , covered_(index.frames().size())
        , forked_(index.frames().size())
        , continues_(index.frames().size()) {
        std::ranges::sort(heads_);
    }

    void follow_back(FingerprintCheck& check) {
        check.answer = FingerprintAnswer::unchanged;
        for (const auto& head : heads_)
            follow_back(head, check);
    }

    void count_others(FingerprintCheck& check, const std::vector<RecordedTime>& recorded) {
        for (std::size_t i = 0; i < covered_.size(); ++i) {
            const auto& frame = index_.frames()[i];
            const auto& subject = index_.subject_of(frame);
            if (only_ && subject != *only_) continue;
            if (covered_[i]) {
                tested_.insert(subject);
                check.covered_entries += frame.entry_count;
                continue;
            }
            if (untold_.contains(subject) || frame.sequence < not_here_[frame.chain]) {
                check.entries_untold += frame.entry_count;
                continue;
            }
            if (frame.parent) {
                const bool behind_head = is_head(index_.frames()[*frame.parent]);
                forked_[i] = covered_[*frame.parent] ? !behind_head : forked_[*frame.parent];
                continues_[i] = covered_[*frame.parent] ? behind_head : continues_[*frame.parent];
            }
            if (forked_[i]) check.forked_before += frame.entry_count;
            const auto earlier = earlier_entries(frame, check.printed, continues_[i], recorded);
            check.recorded_earlier += earlier;
            check.recorded_later += frame.entry_count - earlier;
        }
        check.tested = {tested_.begin(), tested_.end()};
    }

private:
    void follow_back(const ChainHead& head, FingerprintCheck& check) {
        const auto* chain = index_.find(head.chain);
        const auto* frame = chain == nullptr ? nullptr : index_.at_sequence(*chain, head.sequence, head.hash);
        if (frame == nullptr) {
            if (chain != nullptr) miss(*chain, head.sequence);
            const bool another = chain != nullptr && index_.has_sequence(*chain, head.sequence);
            return report(check, another ? FingerprintAnswer::changed : FingerprintAnswer::missing,
                          head.chain, head.sequence);
        }
        for (std::size_t i = index_of(*frame); !covered_[i];) {
            covered_[i] = true;
            const auto& here = index_.frames()[i];
            if (here.sequence == 0) return;
            if (!here.parent) {
                miss(*chain, here.sequence - 1);
                return report_break(check, *chain, head.chain, here.sequence - 1);
            }
            i = *here.parent;
        }
    }

    /// A covered frame is not here: what it stood on is not known.
    void miss(const Chain& chain, std::uint32_t sequence) {
        not_here_[chain.number] = std::max(not_here_[chain.number], sequence);
    }

    /// The frame at `sequence` that the covered ones stand on is not here. What stands in front of it may be
    /// broken too: the first break of the chain is named.
    void report_break(FingerprintCheck& check, const Chain& chain, const ChainId& id,
                      std::uint32_t sequence) const {
        for (const auto i : chain.frames) {
            const auto& frame = index_.frames()[i];
            if (frame.sequence > 0 && !frame.parent) sequence = std::min(sequence, frame.sequence - 1);
        }
        report(check,
               index_.has_sequence(chain, sequence) ? FingerprintAnswer::changed : FingerprintAnswer::missing,
               id, sequence);
    }

    /// A changed frame says more than a missing one; otherwise the first found stands.
    void report(FingerprintCheck& check, FingerprintAnswer answer, const ChainId& chain,
                std::uint32_t sequence) const {
        if (check.answer == FingerprintAnswer::changed || check.answer == answer) return;
        check.answer = answer;
        check.place = place_of(index_, chain, sequence);
    }

    /// In the second of the printing itself what `continues` a covered end was written after it.
    static std::uint64_t earlier_entries(const IndexedFrame& frame,
                                         const std::optional<RecordedTime>& printed, bool continues,
                                         const std::vector<RecordedTime>& recorded) {
        if (!printed) return 0;
        const auto first = recorded.begin() + static_cast<std::ptrdiff_t>(frame.first_record);
        return static_cast<std::uint64_t>(std::count_if(
            first, first + static_cast<std::ptrdiff_t>(frame.record_count),
            [&](const RecordedTime& time) { return continues ? time < *printed : time <= *printed; }));
    }

    [[nodiscard]] std::size_t index_of(const IndexedFrame& frame) const {
        return static_cast<std::size_t>(&frame - index_.frames().data());
    }

    [[nodiscard]] bool is_head(const IndexedFrame& frame) const {
        return std::ranges::binary_search(heads_,
                                          ChainHead{index_.chain_of(frame), frame.sequence, frame.hash});
    }

    const ChainIndex& index_;
    std::optional<SubjectId> only_;
    std::vector<ChainHead> heads_;
    std::set<SubjectId> untold_;
    std::set<SubjectId> tested_;
    std::vector<std::uint32_t> not_here_; ///< By chain: sequence of the last covered frame that is not here.
    std::vector<bool> covered_;
    std::vector<bool> forked_;
    std::vector<bool> continues_; ///< Stands behind a covered end of its chain.
};

/// The first frame of the file, in its order, that is not what the frame behind it stands on; empty: none.
std::string first_break(const ChainIndex& index) {
    const auto broken = std::ranges::find_if(
        index.frames(), [](const IndexedFrame& frame) { return frame.sequence > 0 && !frame.parent; });
    if (broken == index.frames().end()) return {};
    return place_of(index, index.chain_of(*broken), broken->sequence - 1);
}

/// What the leaves of subjects not held here leave open of an answer.
void settle_bare_leaves(FingerprintCheck& check, const SavedState& state, bool only) {
    if (check.subjects_not_held == 0) return;
    if (state.heads.empty() && !only) {
        check.answer = FingerprintAnswer::missing;
        check.place = "everything it covers";
    } else if (!check.untold.empty() && check.answer == FingerprintAnswer::unchanged) {
        check.answer = only ? FingerprintAnswer::cannot_tell : FingerprintAnswer::partly;
    }
}

} // namespace

bool FingerprintCheck::lines_up() const {
    return answer == FingerprintAnswer::unchanged ||
           (answer == FingerprintAnswer::partly && known_by_heads);
}

FingerprintCheck check_fingerprint(const TypedFingerprint& typed, const ChainIndex& index,
                                   const std::vector<FingerprintRecord>& records,
                                   const std::vector<RecordedTime>& recorded,
                                   const std::optional<SubjectId>& only, std::size_t search_limit) {
    FingerprintCheck check;
    SavedState state;
    std::vector<FingerprintLeaf> leaves;
    const auto saved = std::ranges::find_if(
        records, [&](const FingerprintRecord& record) { return typed.matches(record.fingerprint()); });
    if (saved != records.end()) {
        leaves = leaves_together(records, saved->fingerprint());
        state = saved_state(leaves, index);
        check.printed = saved->printed;
    } else if (const auto now = leaves_of(index); typed.matches(fingerprint_of(now))) {
        state.heads = heads_in(now);
    } else {
        check.searched = index.frames().size() * index.chains().size() <= search_limit;
        auto earlier = check.searched ? earlier_state(typed, index) : std::nullopt;
        if (!earlier) {
            check.place = first_break(index);
            return check;
        }
        state.heads = *std::move(earlier);
    }
    if (only) keep_only(state, leaves, index, *only);
    check.subjects_not_held = state.subjects_not_held;
    check.untold = state.fits_no_leaf;
    check.searched = state.searched;
    check.known_by_heads = state.by_heads;
    Coverage coverage(index, state, only);
    coverage.follow_back(check);
    coverage.count_others(check, recorded);
    settle_bare_leaves(check, state, only.has_value());
    if (only && state.heads.empty() && check.answer == FingerprintAnswer::unchanged)
        check.answer = FingerprintAnswer::not_covered;
    return check;
}

} // namespace sumpbook::store
