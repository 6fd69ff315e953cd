// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/fingerprint.h"

#include "model/store/subject_states.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace sumpbook::store {
namespace {

/// Searching every earlier state of a file takes time with states x subjects; past this it is left out.
constexpr std::size_t search_limit = 200'000'000;
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
    if (index.frames().size() * index.chains().size() > search_limit) return std::nullopt;
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
    std::optional<ChainId> fits_no_leaf; ///< A chain of a held subject that no leaf can be of.
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
    SavedState saved{.heads = heads_in(leaves), .subjects_not_held = 0, .fits_no_leaf = {}};
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
        if (bare.empty()) break;
        if (whole.contains(subject)) continue;
        const auto allowed = frames.size() + 2 + most_states / subjects.size();
        if (const auto state = state_with_leaf(index, frames, bare, allowed)) {
            saved.heads.insert(saved.heads.end(), state->heads.begin(), state->heads.end());
            bare.erase(state->leaf);
        } else if (!saved.fits_no_leaf) {
            saved.fits_no_leaf = index.chain_of(index.frames()[frames.front()]);
        }
    }
    saved.subjects_not_held = bare.size();
    if (bare.empty()) saved.fits_no_leaf.reset(); // every leaf is accounted for: it was not covered
    return saved;
}

/// What stands where in relation to the covered state.
class Coverage {
public:
    Coverage(const ChainIndex& index, std::vector<ChainHead> heads)
        : index_(index)
        , heads_(std::move(heads))
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
            if (covered_[i]) {
                check.covered_entries += frame.entry_count;
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
    }

private:
    void follow_back(const ChainHead& head, FingerprintCheck& check) {
        const auto* chain = index_.find(head.chain);
        const auto* frame = chain == nullptr ? nullptr : index_.at_sequence(*chain, head.sequence, head.hash);
        if (frame == nullptr) {
            const bool another = chain != nullptr && index_.has_sequence(*chain, head.sequence);
            return report(check, another ? FingerprintAnswer::changed : FingerprintAnswer::missing,
                          head.chain, head.sequence);
        }
        for (std::size_t i = index_of(*frame); !covered_[i];) {
            covered_[i] = true;
            const auto& here = index_.frames()[i];
            if (here.sequence == 0) return;
            if (!here.parent) return report_break(check, *chain, head.chain, here.sequence - 1);
            i = *here.parent;
        }
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
        check.place = fmt::format("frame {} of the entries {}-...", sequence + 1, index_.name_of(chain));
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
    std::vector<ChainHead> heads_;
    std::vector<bool> covered_;
    std::vector<bool> forked_;
    std::vector<bool> continues_; ///< Stands behind a covered end of its chain.
};

/// The first frame of the file, in its order, that is not what the frame behind it stands on; empty: none.
std::string first_break(const ChainIndex& index) {
    const auto broken = std::ranges::find_if(
        index.frames(), [](const IndexedFrame& frame) { return frame.sequence > 0 && !frame.parent; });
    if (broken == index.frames().end()) return {};
    return fmt::format("frame {} of the entries {}-...", broken->sequence,
                       index.name_of(index.chain_of(*broken)));
}

/// What the leaves of subjects not held here leave open of an answer.
void settle_bare_leaves(FingerprintCheck& check, const SavedState& state, const ChainIndex& index) {
    if (check.subjects_not_held == 0) return;
    if (state.heads.empty()) {
        check.answer = FingerprintAnswer::missing;
        check.place = "everything it covers";
    } else if (state.fits_no_leaf && check.answer != FingerprintAnswer::changed) {
        check.answer = FingerprintAnswer::changed;
        check.place = fmt::format("the entries {}-...", index.name_of(*state.fits_no_leaf));
    }
}

} // namespace

FingerprintCheck check_fingerprint(const TypedFingerprint& typed, const ChainIndex& index,
                                   const std::vector<FingerprintRecord>& records,
                                   const std::vector<RecordedTime>& recorded) {
    FingerprintCheck check;
    SavedState state;
    const auto saved = std::ranges::find_if(
        records, [&](const FingerprintRecord& record) { return typed.matches(record.fingerprint()); });
    if (saved != records.end()) {
        state = saved_state(leaves_together(records, saved->fingerprint()), index);
        check.printed = saved->printed;
        check.subjects_not_held = state.subjects_not_held;
    } else if (const auto now = leaves_of(index); typed.matches(fingerprint_of(now))) {
        state.heads = heads_in(now);
    } else if (auto earlier = earlier_state(typed, index)) {
        state.heads = *std::move(earlier);
    } else {
        check.place = first_break(index);
        return check;
    }
    Coverage coverage(index, state.heads);
    coverage.follow_back(check);
    coverage.count_others(check, recorded);
    settle_bare_leaves(check, state, index);
    return check;
}

} // namespace sumpbook::store
