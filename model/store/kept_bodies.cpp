// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/kept_bodies.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::size_t record_parts = 3;
constexpr std::size_t length_bytes = 3; // a body is at most 1 MiB long
static_assert(max_part_bytes < 1U << 24U);

std::size_t length_at(ByteView run, std::size_t at) {
    std::size_t length = 0;
    for (std::size_t i = 0; i < length_bytes; ++i)
        length |= std::size_t{run[at + i]} << (8 * i);
    return length;
}

bool is_kept(const Frame& frame, std::size_t slot) { return frame.exists(slot) && frame.parts[slot].shown; }

} // namespace

void add_run(Runs& runs, Run run) {
    if (!runs.empty() && runs.back().data() + runs.back().size() == run.data()) {
        runs.back() = {runs.back().data(), runs.back().size() + run.size()};
    } else {
        runs.push_back(run);
    }
}

BodyKeeper::Block BodyKeeper::new_block(std::size_t size) {
    constexpr std::size_t largest_page = 2 * usual_block;
    const auto alignment =
        std::align_val_t(size < large_block ? __STDCPP_DEFAULT_NEW_ALIGNMENT__ : largest_page);
    return {std::unique_ptr<void, Free>(operator new(size, alignment), Free{alignment}), size};
}

std::span<std::uint8_t> BodyKeeper::take(std::size_t size) {
    if (size > free_.size()) {
        const std::size_t length = std::max(size, block_);
        blocks_.push_back(new_block(length));
        free_ = bytes_of(blocks_.back());
        if (files_ != nullptr && length >= large_block) files_->will_fill(free_);
    }
    const auto taken = free_.first(size);
    free_ = free_.subspan(size);
    return taken;
}

void BodyKeeper::keep(const Frame& frame, Runs& runs) {
    std::size_t size = 1;
    for (std::size_t slot = 0; slot < record_parts; ++slot) {
        if (is_kept(frame, slot)) size += length_bytes + frame.parts[slot].body.size();
    }
    const auto kept = take(size);
    auto out = kept.begin() + 1;
    kept[0] = 0;
    for (std::size_t slot = 0; slot < record_parts; ++slot) {
        if (!is_kept(frame, slot)) continue;
        kept[0] |= bit_of(slot);
        for (std::size_t i = 0; i < length_bytes; ++i)
            *out++ = static_cast<std::uint8_t>(frame.parts[slot].body.size() >> (8 * i));
    }
    for (std::size_t slot = 0; slot < record_parts; ++slot) {
        if (is_kept(frame, slot)) out = std::ranges::copy(frame.parts[slot].body, out).out;
    }
    add_run(runs, kept);
}

void BodyKeeper::back_to(const Mark& mark) {
    blocks_.resize(mark.blocks);
    free_ = {};
    if (!blocks_.empty()) free_ = bytes_of(blocks_.back()).last(mark.left);
}

Frame BodyReader::next(const Runs& runs, std::uint32_t entry_count) {
    while (at_ == runs[run_].size()) {
        ++run_;
        at_ = 0;
    }
    const ByteView run = runs[run_];
    Frame frame;
    frame.header.entry_count = entry_count;
    frame.header.parts_exist = run[at_++];
    std::size_t body = at_;
    for (std::size_t slot = 0; slot < record_parts; ++slot)
        body += frame.exists(slot) ? length_bytes : 0;
    for (std::size_t slot = 0; slot < record_parts; ++slot) {
        if (!frame.exists(slot)) continue;
        frame.parts[slot].shown = true;
        frame.parts[slot].body = run.subspan(body, length_at(run, at_));
        at_ += length_bytes;
        body += frame.parts[slot].body.size();
    }
    at_ = body;
    return frame;
}

} // namespace sumpbook::store
