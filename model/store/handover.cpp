// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/handover.h"

#include "model/store/bike_names.h"
#include "model/store/garage_copy.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

std::uint8_t bits_of(const Withheld& withheld) {
    unsigned bits = 0;
    if (withheld.money) bits |= bit_of(slot_of(Part::money));
    if (withheld.personal) bits |= bit_of(slot_of(Part::personal));
    if (withheld.attachments) bits |= bit_of(attachment_slot);
    return static_cast<std::uint8_t>(bits);
}

void count(const SetFrame& frame, std::uint8_t withheld, HandOverPreview& preview) {
    const auto& header = frame.header;
    preview.entries += header.entry_count;
    const auto hidden = [&](std::size_t slot) {
        return (header.parts_exist & withheld & bit_of(slot)) != 0;
    };
    if (hidden(slot_of(Part::money))) preview.entries_with_money += header.entry_count;
    if (hidden(slot_of(Part::personal))) preview.entries_with_private += header.entry_count;
    const auto shown = [&](std::size_t slot) { return (frame.shown & ~withheld & bit_of(slot)) != 0; };
    if (shown(slot_of(Part::money))) preview.entries_showing_money += header.entry_count;
    if (shown(slot_of(Part::personal))) preview.entries_showing_private += header.entry_count;
    if (header.kind == FrameKind::attachment) {
        ++preview.attachments;
        if (hidden(attachment_slot)) ++preview.attachments_withheld;
    }
    for (std::size_t slot = 0; slot < part_slots; ++slot) {
        if ((header.parts_exist & ~frame.shown & ~withheld & bit_of(slot)) != 0) ++preview.already_withheld;
    }
}

/// Entries that no recorded fingerprint covers.
std::size_t not_covered(const FrameSet& set) {
    const auto index = set.chains();
    std::vector<bool> covered(index.frames().size());
    for (const auto& record : set.fingerprints()) {
        for (const auto& leaf : record.leaves) {
            for (const auto& head : leaf.heads) {
                const auto* chain = index.find(head.chain);
                const auto* frame =
                    chain == nullptr ? nullptr : index.at_sequence(*chain, head.sequence, head.hash);
                if (frame == nullptr) continue;
                std::optional<std::uint32_t> place =
                    static_cast<std::uint32_t>(frame - index.frames().data());
                for (; place && !covered[*place]; place = index.frames()[*place].parent)
                    covered[*place] = true;
            }
        }
    }
    std::size_t entries = 0;
    for (std::size_t i = 0; i < covered.size(); ++i) {
        if (!covered[i]) entries += index.frames()[i].entry_count;
    }
    return entries;
}

HandOverPreview preview_of(const GarageCopy& garage, const FrameSet& set, const SubjectId& bike,
                           std::uint8_t withheld) {
    HandOverPreview preview;
    for (const auto& frame : garage.set.frames()) {
        if (frame.header.subject == bike) count(frame, withheld, preview);
    }
    for (const auto& record : garage.contents.records()) {
        if (record.subject != bike) continue;
        const auto* details = std::get_if<BikeDetails>(&record.record.content);
        const bool with_private = (withheld & bit_of(slot_of(Part::personal))) == 0;
        if (details != nullptr && details->plate && with_private) preview.shows_plate = true;
        const auto time = record.record.recorded;
        preview.first_recorded = std::min(preview.first_recorded.value_or(time), time);
        preview.last_recorded = std::max(preview.last_recorded.value_or(time), time);
    }
    for (const auto& record : set.fingerprints()) {
        const auto others = std::ranges::count_if(
            record.leaves, [](const FingerprintLeaf& leaf) { return leaf.heads.empty(); });
        preview.other_subjects = std::max(preview.other_subjects, static_cast<std::size_t>(others));
    }
    preview.fingerprints = set.fingerprint_count();
    preview.entries_not_covered = not_covered(set);
    return preview;
}

} // namespace

Result<HandOverPlan> plan_hand_over(FileLayer& files, const std::string& path, const SubjectId& bike,
                                    const Withheld& withheld, Patience patience) {
    const auto garage = read_copy(files, path, patience);
    if (!garage) return pass_on(garage.error());
    const auto bits = bits_of(withheld);
    HandOverPlan plan;
    plan.set = garage->set.hand_over(bike, bits);
    if (bike == garage->set.garage() || plan.set.frames().empty()) {
        return refuse("This garage file holds no such bike.",
                      file_place(path));
    }
    plan.preview = preview_of(*garage, plan.set, bike, bits);
    BikeNames names;
    names.note(garage->contents.records());
    plan.preview.bike = names.of(bike);
    plan.mode = garage->mode;
    plan.notices = garage->notices;
    return plan;
}

} // namespace sumpbook::store
