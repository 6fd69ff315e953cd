// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/loader.h"

#include "model/store/bodies.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {

Loader Loader::behind(const Loader& before) {
    Loader loader;
    loader.entries_ = loader.good_.entries = before.entries_;
    loader.behind_records_ = before.records_.size();
    return loader;
}

void Loader::frame(const VerifiedFrame& verified, std::uint64_t at) {
    if (fault_ || action_fault_) return;
    const auto& header = verified.frame.header;
    if (header.format > body_format) {
        return set_fault(ProblemKind::newer_format, at, "was written by a later version of this program");
    }
    if (!entries_fit(entries_, header.entry_count))
        return set_fault(ProblemKind::refused, at, "is past the limit of 16 million entries");
    const auto& open = verified.frame.parts[slot_of(Part::open)];
    const std::size_t held = behind_records_ + records_.size() + (open.shown ? header.entry_count : 0);
    if (!memory_fits(held, at + open.body.size())) {
        return set_fault(ProblemKind::refused, at,
                         "says that it holds more entries than a file of this size can");
    }
    IndexedFrame indexed;
    indexed.hash = verified.hash;
    indexed.at = at;
    indexed.first_record = static_cast<std::uint32_t>(records_.size());
    if (header.kind == FrameKind::attachment) {
        take_attachment(verified, at);
    } else {
        take_records(verified, indexed);
    }
    frames_.push_back({header, indexed});
    entries_ += header.entry_count;
}

void Loader::take_attachment(const VerifiedFrame& verified, std::uint64_t at) {
    const auto& part = verified.frame.parts[attachment_slot];
    const std::size_t before = frame_unhashed_bytes + frame_header_bytes + hash_bytes + part_overhead_bytes;
    attachments_.push_back({part.hash, part.shown, part.salt, at + before, verified.attachment_bytes,
                            verified.body_checked});
}

void Loader::take_records(const VerifiedFrame& verified, IndexedFrame& indexed) {
    const auto& frame = verified.frame;
    for (std::size_t slot = 0; slot < withheld_.size(); ++slot) {
        if (frame.exists(slot) && !frame.parts[slot].shown) ++withheld_[slot];
    }
    if (!frame.parts[slot_of(Part::open)].shown) return;
    if (const auto decoded = decode_records_into(frame, decoded_); !decoded) {
        return set_fault(ProblemKind::damaged, indexed.at,
                         fmt::format("holds as its entry {} what no version writes: {}",
                                     decoded.error().index + 1, decoded.error().what));
    }
    indexed.record_count = static_cast<std::uint32_t>(decoded_.size());
    make_room(decoded_.size(), indexed.at);
    for (std::size_t i = 0; i < decoded_.size(); ++i) {
        records_.push_back({.name = {verified.hash, static_cast<std::uint32_t>(i)},
                            .id = {},
                            .subject = frame.header.subject,
                            .record = std::move(decoded_[i])});
    }
}

/// Room for as many records as the rest of the file holds if it goes on as so far: growing again and again
/// would touch every page of memory anew, which takes longer than all the reading.
void Loader::make_room(std::size_t more, std::uint64_t at) {
    const std::size_t wanted = records_.size() + more;
    if (wanted <= records_.capacity()) return;
    constexpr std::uint64_t enough_to_guess = 64 * 1024;
    std::size_t room = std::max(wanted, records_.size() + records_.size() / 8);
    if (at > enough_to_guess && expected_bytes_ > at) {
        const auto guess =
            static_cast<double>(wanted) * static_cast<double>(expected_bytes_) / static_cast<double>(at);
        room = std::max(room,
                        std::min(static_cast<std::size_t>(guess * 1.03), most_entries_in(expected_bytes_)));
    }
    records_.reserve(room);
    index_.reserve(index_.frames().size() * room / std::max<std::size_t>(records_.size(), 1));
}

void Loader::fingerprint_record(ByteView body) {
    auto record = read_fingerprint_record(body);
    if (!record)
        return set_fault(ProblemKind::damaged, 0,
                         "has in front of it a fingerprint record that no version writes");
    fingerprints_.push_back(std::move(*record));
}

void Loader::set_fault(ProblemKind kind, std::uint64_t at, std::string what) {
    if (!action_fault_)
        action_fault_ = Fault{kind, at, index_.frames().size() + frames_.size() + 1, std::move(what)};
}

void Loader::index_frames() {
    for (const auto& [header, place] : frames_) {
        const auto fault = index_.add(header, place);
        if (fault == nullptr) continue;
        action_fault_ = Fault{ProblemKind::damaged, place.at, index_.frames().size() + 1, fault};
        return;
    }
}

void Loader::forget_action() {
    records_.resize(good_.records);
    fingerprints_.resize(good_.fingerprints);
    attachments_.resize(good_.attachments);
    entries_ = good_.entries;
    withheld_ = good_.withheld;
}

void Loader::action_done(bool good) {
    if (good && !fault_ && !action_fault_) index_frames();
    if (good && !fault_) fault_ = action_fault_;
    if (good && !action_fault_) {
        good_ = {records_.size(), fingerprints_.size(), attachments_.size(), entries_, withheld_};
    } else {
        forget_action();
    }
    frames_.clear();
    action_fault_.reset();
}

void Loader::name_records() {
    if (index_.chains().size() != named_chains_) named_records_ = 0;
    std::size_t first = index_.frames().size();
    while (first > 0 &&
           index_.frames()[first - 1].first_record + index_.frames()[first - 1].record_count > named_records_)
        --first;
    for (; first < index_.frames().size(); ++first) {
        const auto& frame = index_.frames()[first];
        for (std::size_t i = 0; i < frame.record_count; ++i)
            records_[frame.first_record + i].id = index_.entry_id(frame, i);
    }
    named_records_ = records_.size();
    named_chains_ = index_.chains().size();
}

} // namespace sumpbook::store
