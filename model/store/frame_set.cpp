// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/frame_set.h"

#include "model/store/action.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

auto place_of(const SetFrame& frame) {
    return std::tie(frame.header.subject, frame.header.chain, frame.header.sequence, frame.hash);
}
bool canonical_order(const SetFrame& a, const SetFrame& b) { return place_of(a) < place_of(b); }

/// The same frame from two places: present beats withheld.
void put_together(SetFrame& frame, const SetFrame& other) {
    if ((other.shown & ~frame.shown) == 0) return;
    if ((frame.shown & ~other.shown) == 0) {
        frame = other;
        return;
    }
    frame.shown |= other.shown;
    frame.copies.insert(frame.copies.end(), other.copies.begin(), other.copies.end());
}

/// `frames` sorted; of each frame one is left, with the parts of all.
void make_unique(std::vector<SetFrame>& frames) {
    std::size_t kept = 0;
    for (std::size_t i = 0; i < frames.size(); ++i) {
        if (kept > 0 && frames[kept - 1].hash == frames[i].hash) {
            put_together(frames[kept - 1], frames[i]);
            continue;
        }
        if (kept != i) frames[kept] = std::move(frames[i]);
        ++kept;
    }
    frames.resize(kept);
}

bool a_chain_has_two_subjects(const std::vector<SetFrame>& frames) {
    std::map<ChainId, SubjectId> subjects;
    const SetFrame* before = nullptr;
    for (const auto& frame : frames) {
        const bool new_chain = before == nullptr || before->header.chain != frame.header.chain ||
                               before->header.subject != frame.header.subject;
        if (new_chain && !subjects.emplace(frame.header.chain, frame.header.subject).second) return true;
        before = &frame;
    }
    return false;
}

FingerprintRecord bare(FingerprintRecord record) {
    for (auto& leaf : record.leaves)
        leaf = {.leaf = leaf.leaf, .subject = {}, .heads = {}};
    return record;
}

} // namespace

Result<FrameSet> FrameSet::of(const SubjectId& garage, std::vector<SetFrame> frames,
                              std::vector<FingerprintRecord> records,
                              std::vector<std::shared_ptr<const FrameSource>> sources) {
    FrameSet set(garage);
    std::ranges::sort(frames, canonical_order);
    make_unique(frames);
    if (const auto taken = set.take(frames); !taken) return pass_on(taken.error());
    for (const auto& record : records)
        set.take(record);
    set.sources_ = std::move(sources);
    return set;
}

const SetFrame* FrameSet::find(const SetFrame& like) const {
    const auto found = std::ranges::lower_bound(frames_, like, canonical_order);
    return found != frames_.end() && found->hash == like.hash ? &*found : nullptr;
}

std::vector<FingerprintRecord> FrameSet::fingerprints() const {
    std::vector<std::pair<Hash256, const FingerprintRecord*>> order;
    for (const auto& [key, record] : records_)
        order.emplace_back(fingerprint_record_hash(encode_fingerprint_record(record)), &record);
    std::ranges::sort(order);
    std::vector<FingerprintRecord> records;
    for (const auto& [hash, record] : order)
        records.push_back(*record);
    return records;
}

/// `frames` in canonical order, each once.
Result<void> FrameSet::take(const std::vector<SetFrame>& frames) {
    std::vector<SetFrame> all;
    all.reserve(frames_.size() + frames.size());
    std::ranges::merge(frames_, frames, std::back_inserter(all), canonical_order);
    make_unique(all);
    if (a_chain_has_two_subjects(all)) {
        return refuse("Two of these files use one chain of entries for different bikes. No program writes "
                      "that: one of them was made up or altered. Nothing was written.");
    }
    frames_ = std::move(all);
    return {};
}

void FrameSet::take(const FingerprintRecord& record) {
    const auto key = sha256({encode_fingerprint_record(bare(record))});
    auto& known = records_.emplace(key, record).first->second;
    for (std::size_t i = 0; i < known.leaves.size(); ++i) {
        if (known.leaves[i].heads.empty()) known.leaves[i] = record.leaves[i];
    }
}

void FrameSet::hide_erased() {
    if (erased_.empty()) return;
    for (auto& frame : frames_) {
        if (erased_.contains({frame.header.subject, frame.hash})) frame.shown = 0;
    }
}

void FrameSet::keep_erased(const std::set<EmptiedFrame>& erased) {
    erased_.insert(erased.begin(), erased.end());
    hide_erased();
}

void FrameSet::keep_open(const FrameSet& other) {
    for (const auto& source : other.sources_) {
        if (std::ranges::find(sources_, source) == sources_.end()) sources_.push_back(source);
    }
}

Result<void> FrameSet::unite(const FrameSet& other) {
    if (other.garage_ != garage_) {
        return refuse("These files belong to different garages, so they are not copies of one another. To "
                      "take bikes of one into the other, adopt them by name.");
    }
    if (const auto taken = take(other.frames_); !taken) return taken;
    for (const auto& [key, record] : other.records_)
        take(record);
    keep_erased(other.erased_);
    keep_open(other);
    return {};
}

Result<void> FrameSet::adopt(const FrameSet& other, const std::set<SubjectId>& subjects) {
    std::vector<SetFrame> chosen;
    std::ranges::copy_if(other.frames_, std::back_inserter(chosen),
                         [&](const SetFrame& frame) { return subjects.contains(frame.header.subject); });
    if (const auto taken = take(chosen); !taken) return taken;
    for (const auto& [key, record] : other.records_)
        take(record);
    std::set<EmptiedFrame> erased;
    std::ranges::copy_if(other.erased_, std::inserter(erased, erased.end()),
                         [&](const EmptiedFrame& frame) { return subjects.contains(frame.subject); });
    keep_erased(erased);
    keep_open(other);
    return {};
}

FrameSet FrameSet::hand_over(const SubjectId& subject, std::uint8_t withheld) const {
    FrameSet result(garage_);
    result.sources_ = sources_;
    result.erased_ = erased_;
    for (const auto& frame : frames_) {
        if (frame.header.subject != subject) continue;
        result.frames_.push_back(frame);
        result.frames_.back().shown = static_cast<std::uint8_t>(frame.shown & ~withheld);
    }
    for (auto [key, record] : records_) {
        for (auto& leaf : record.leaves) {
            if (leaf.subject != subject) leaf = {.leaf = leaf.leaf, .subject = {}, .heads = {}};
        }
        result.records_.emplace(key, std::move(record));
    }
    return result;
}

ChainIndex FrameSet::chains() const {
    ChainIndex index;
    index.reserve(frames_.size());
    for (const auto& frame : frames_) {
        IndexedFrame place;
        place.hash = frame.hash;
        static_cast<void>(index.add(frame.header, place)); // in order and each once: it can stand there
    }
    return index;
}

} // namespace sumpbook::store
