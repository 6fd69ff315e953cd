// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/left_out.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::uint8_t money_bit = bit_of(slot_of(Part::money));
constexpr std::uint8_t personal_bit = bit_of(slot_of(Part::personal));

/// Whether the frame, whose records can be read, lacks something; if so it is added.
bool add(const IndexedFrame& frame, LeftOut& left_out) {
    if (frame.record_count == 0 || (frame.left_out & (money_bit | personal_bit)) == 0) return false;
    left_out.money = left_out.money || (frame.left_out & money_bit) != 0;
    left_out.personal = left_out.personal || (frame.left_out & personal_bit) != 0;
    return true;
}

} // namespace

LeftOut left_out_of(const ChainIndex& index, const std::vector<RecordName>& records) {
    LeftOut left_out;
    for (const auto& name : records) {
        const auto frame = std::ranges::find(index.frames(), name.frame_hash, &IndexedFrame::hash);
        if (frame != index.frames().end() && add(*frame, left_out)) left_out.records.push_back(name);
    }
    return left_out;
}

LeftOut left_out_of(const ChainIndex& index) {
    LeftOut left_out;
    for (const auto& frame : index.frames())
        static_cast<void>(add(frame, left_out));
    return left_out;
}

} // namespace sumpbook::store
