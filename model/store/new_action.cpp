// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/new_action.h"

#include "model/store/action.h"
#include "model/store/bodies.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

/// Subjects in the order they first come up, each with the places of its records.
using Places = std::vector<std::pair<SubjectId, std::vector<std::size_t>>>;

Places by_subject(const std::vector<NewRecord>& records) {
    Places places;
    for (std::size_t i = 0; i < records.size(); ++i) {
        auto found = std::ranges::find(places, records[i].subject, &Places::value_type::first);
        if (found == places.end()) found = places.insert(places.end(), {records[i].subject, {}});
        found->second.push_back(i);
    }
    return places;
}

Frame frame_of(const Batch& batch, const SubjectId& subject, const ChainPlace& place, RandomSource& random) {
    Frame frame;
    frame.header.entry_count = batch.count;
    frame.header.subject = subject;
    frame.header.chain = place.chain;
    frame.header.sequence = place.sequence;
    frame.header.previous = place.previous;
    for (std::size_t slot = 0; slot < batch.parts.size(); ++slot) {
        if (slot != slot_of(Part::open) && batch.parts[slot].empty()) continue;
        frame.header.parts_exist |= bit_of(slot);
        frame.parts[slot] = shown_part(slot, random.sixteen(), batch.parts[slot]);
    }
    return frame;
}

ChainNote& note_of(std::vector<ChainNote>& notes, const ChainId& chain, const SubjectId& subject) {
    const auto found = std::ranges::find(notes, chain, &ChainNote::chain);
    if (found != notes.end()) return *found;
    // An older chain of the subject is given up with the new one; only one is continued.
    std::erase_if(notes, [&](const ChainNote& note) { return note.subject == subject; });
    notes.push_back({.chain = chain, .subject = subject, .written = {}, .about_to_write = {}});
    return notes.back();
}

} // namespace

Result<NewAction> make_action(const std::vector<NewRecord>& records, std::vector<ChainNote> notes,
                              const ChainIndex& index, RandomSource& random) {
    NewAction action{.bytes = {}, .notes = std::move(notes), .order = {}, .notices = {}};
    std::vector<Bytes> frames;
    for (const auto& [subject, places] : by_subject(records)) {
        std::vector<Record> batch_records;
        for (const auto place : places)
            batch_records.push_back(records[place].record);
        const auto batches = encode_records(batch_records);
        if (!batches) return pass_on(batches.error());
        ChainPlace place = choose_chain(action.notes, index, subject);
        if (place.is_new) place.chain = {random.sixteen()};
        if (!place.reason.empty())
            action.notices.push_back("A new run of entries was begun: " + place.reason + ".");
        ChainEnd end;
        for (const auto& batch : *batches) {
            const Frame frame = frame_of(batch, subject, place, random);
            frames.push_back(encode_frame(frame));
            end = {place.sequence, frame_hash(frame)};
            ++place.sequence;
            place.previous = end.hash;
        }
        note_of(action.notes, place.chain, subject).about_to_write = end;
        action.order.insert(action.order.end(), places.begin(), places.end());
    }
    if (frames.size() > max_frames_in_action)
        return refuse("This is too much for one action. Import it in parts.");
    action.bytes = encode_action(frames);
    return action;
}

std::vector<ChainNote> as_written(std::vector<ChainNote> notes) {
    for (auto& note : notes) {
        if (note.about_to_write) note.written = note.about_to_write;
        note.about_to_write.reset();
    }
    return notes;
}

} // namespace sumpbook::store
