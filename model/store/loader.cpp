// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/loader.h"

#include "model/store/bodies.h"

#include <algorithm>
#include <functional>
#include <stdexcept>
#include <utility>

namespace sumpbook::store {

Loader Loader::behind(const Loader& before) {
    Loader loader;
    loader.entries_ = before.entries_;
    loader.behind_records_ = before.record_count_;
    loader.keeper_ = BodyKeeper(BodyKeeper::small_block);
    return loader;
}

void Loader::expect(std::uint64_t bytes, FileLayer* files) {
    expected_bytes_ = bytes;
    files_ = files;
    if (index_.frames().empty()) keeper_ = new_keeper();
}

BodyKeeper Loader::new_keeper() const {
    const bool is_long = expected_bytes_ > 2 * BodyKeeper::large_block;
    return BodyKeeper(is_long ? BodyKeeper::large_block : BodyKeeper::usual_block, files_);
}

void Loader::Totals::add(const CheckedFrame& frame) {
    entries += frame.header.entry_count;
    if (frame.has_records()) records += frame.header.entry_count;
}

std::optional<PieceFault> Loader::limit_fault(const Totals& before, const CheckedFrame& frame) {
    if (!entries_fit(before.entries, frame.header.entry_count))
        return PieceFault{ProblemKind::refused, "is past the limit of 16 million entries"};
    const std::size_t more = frame.has_records() ? frame.header.entry_count : 0;
    if (memory_fits(before.records + more, frame.at + frame.open_bytes)) return std::nullopt;
    return PieceFault{ProblemKind::refused, "says that it holds more entries than a file of this size can"};
}

void Loader::frame(const VerifiedFrame& verified, std::uint64_t at) {
    if (fault_ || action_fault_) return;
    const auto before = action_.frames.size();
    if (const auto fault = format_fault(verified.frame.header)) return set_fault(*fault, at, before);
    if (const auto fault = limit_fault(action_totals_, summary_of(verified, at)))
        return set_fault(*fault, at, before);
    if (const auto fault = add_frame(action_, keeper_, verified, at)) return set_fault(*fault, at, before);
    action_totals_.add(action_.frames.back());
}

void Loader::fingerprint_record(ByteView body) {
    if (const auto fault = add_fingerprint(action_, body)) set_fault(*fault, 0, 0);
}

void Loader::set_fault(const PieceFault& fault, std::uint64_t at, std::size_t frames_before) {
    if (!action_fault_)
        action_fault_ = Fault{fault.kind, at, index_.frames().size() + frames_before + 1, fault.what};
}

void Loader::action_done(bool good) {
    if (good && !fault_ && action_fault_) fault_ = action_fault_;
    if (good && !fault_) {
        if (!action_.frames.empty()) action_.frames.back().ends_action = true;
        take(action_);
        good_ = keeper_.mark();
    } else {
        keeper_.back_to(good_);
    }
    action_.clear();
    action_fault_.reset();
    action_totals_ = totals();
}

void Loader::take(const Piece& piece) {
    for (const auto& run : piece.bodies)
        add_run(bodies_, run);
    for (auto first = piece.frames.begin(); first != piece.frames.end() && !fault_;) {
        const auto last = std::find_if(first, piece.frames.end(), std::mem_fn(&CheckedFrame::ends_action));
        take_action({first, last + 1});
        first = last + 1;
    }
    if (fault_) return;
    fingerprints_.insert(fingerprints_.end(), piece.fingerprints.begin(), piece.fingerprints.end());
    attachments_.insert(attachments_.end(), piece.attachments.begin(), piece.attachments.end());
}

/// All of its frames, or a fault.
void Loader::take_action(std::span<const CheckedFrame> frames) {
    Totals before = totals();
    for (std::size_t i = 0; i < frames.size() && !action_fault_; ++i) {
        if (const auto fault = limit_fault(before, frames[i])) set_fault(*fault, frames[i].at, i);
        before.add(frames[i]);
    }
    std::size_t first_record = record_count_;
    for (std::size_t i = 0; i < frames.size() && !action_fault_; ++i) {
        if (const auto fault = index_frame(frames[i], first_record))
            set_fault({ProblemKind::damaged, fault}, frames[i].at, 0);
        if (frames[i].has_records()) first_record += frames[i].header.entry_count;
    }
    fault_ = std::exchange(action_fault_, std::nullopt);
    if (!fault_) std::ranges::for_each(frames, [this](const CheckedFrame& frame) { count(frame); });
}

FrameFault Loader::index_frame(const CheckedFrame& frame, std::size_t first_record) {
    make_room(frame.at);
    IndexedFrame indexed;
    indexed.hash = frame.hash;
    indexed.at = frame.at;
    indexed.first_record = static_cast<std::uint32_t>(first_record);
    indexed.record_count = frame.has_records() ? frame.header.entry_count : 0;
    indexed.left_out = static_cast<std::uint8_t>(frame.header.parts_exist & ~frame.shown);
    return index_.add(frame.header, indexed);
}

void Loader::count(const CheckedFrame& frame) {
    entries_ += frame.header.entry_count;
    if (frame.has_records()) record_count_ += frame.header.entry_count;
    for (std::size_t slot = 0; slot < withheld_.size(); ++slot) {
        const bool exists = (frame.header.parts_exist & bit_of(slot)) != 0;
        if (exists && (frame.shown & bit_of(slot)) == 0) ++withheld_[slot];
    }
}

/// Room for as many frames as the rest of the file holds if it goes on as so far: growing again and again
/// would touch every page of memory anew.
void Loader::make_room(std::uint64_t at) {
    const std::size_t have = index_.frames().size();
    if (have < index_.frames().capacity()) return;
    constexpr std::uint64_t enough_to_guess = 64 * 1024;
    std::size_t room = have + have / 2 + 64;
    if (at > enough_to_guess && expected_bytes_ > at) {
        const auto guess =
            static_cast<double>(have) * static_cast<double>(expected_bytes_) / static_cast<double>(at);
        room = std::max(have + have / 8, static_cast<std::size_t>(guess * 1.02) + 64);
    }
    index_.reserve(room);
    const auto& frames = index_.frames();
    const ByteView memory{reinterpret_cast<const std::uint8_t*>(frames.data()), // NOLINT: only its address
                          frames.capacity() * sizeof(IndexedFrame)};
    if (files_ != nullptr && memory.size() >= BodyKeeper::large_block) files_->will_fill(memory);
}

const std::vector<NamedRecord>& Loader::records() const {
    make_records();
    name_records();
    return made_.records;
}

void Loader::make_records() const {
    auto& [records, reader, frames, named, chains_when_named] = made_;
    if (records.size() == record_count_) return;
    if (records.capacity() < record_count_)
        records.reserve(records.empty() ? record_count_ : record_count_ + record_count_ / 8);
    for (; records.size() < record_count_; ++frames) {
        const auto& frame = index_.frames()[frames];
        if (frame.record_count == 0) continue;
        const std::size_t first = records.size();
        records.resize(first + frame.record_count);
        for (std::size_t i = 0; i < frame.record_count; ++i) {
            records[first + i].name = {frame.hash, static_cast<std::uint32_t>(i)};
            records[first + i].subject = index_.subject_of(frame);
        }
        const auto decoded =
            decode_records_into(reader.next(bodies_, frame.record_count),
                                [&](std::size_t i) -> Record& { return records[first + i].record; });
        if (!decoded) throw std::logic_error("a body that was found good cannot be read");
    }
}

/// Again for all of them after a new chain: it can make the names of others longer.
void Loader::name_records() const {
    auto& [records, reader, frames, named, chains_when_named] = made_;
    if (index_.chains().size() != chains_when_named) named = 0;
    chains_when_named = index_.chains().size();
    for (std::size_t at = frame_of_record(named); named < records.size(); ++at) {
        const auto& frame = index_.frames()[at];
        for (std::size_t i = 0; i < frame.record_count; ++i)
            records[named++].id = index_.entry_id(frame, i);
    }
}

/// Which frame of the index holds it; behind the last record: the number of frames.
std::size_t Loader::frame_of_record(std::size_t number) const {
    const auto& frames = index_.frames();
    if (number >= record_count_) return frames.size();
    // The last frame that begins at or in front of it and holds any.
    auto after = std::ranges::upper_bound(frames, number, {}, &IndexedFrame::first_record);
    do
        --after;
    while (after->record_count == 0);
    return static_cast<std::size_t>(after - frames.begin());
}

std::string Loader::record_id(std::size_t number) const {
    const auto& frame = index_.frames()[frame_of_record(number)];
    return index_.entry_id(frame, number - frame.first_record);
}

} // namespace sumpbook::store
