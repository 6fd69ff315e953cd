// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/left_out.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::uint8_t money_bit = bit_of(slot_of(Part::money));
constexpr std::uint8_t personal_bit = bit_of(slot_of(Part::personal));

} // namespace

LeftOut left_out_of(const ChainIndex& index, const std::vector<RecordName>& records) {
    LeftOut left_out;
    for (const auto& name : records) {
        const auto frame = std::ranges::find(index.frames(), name.frame_hash, &IndexedFrame::hash);
        if (frame == index.frames().end() || frame->record_count == 0) continue;
        if ((frame->left_out & (money_bit | personal_bit)) == 0) continue;
        left_out.records.push_back(name);
        left_out.money = left_out.money || (frame->left_out & money_bit) != 0;
        left_out.personal = left_out.personal || (frame->left_out & personal_bit) != 0;
    }
    return left_out;
}

} // namespace sumpbook::store
