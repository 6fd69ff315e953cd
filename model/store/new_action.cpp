// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/new_action.h"

#include "model/store/action.h"
#include "model/store/bodies.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

/// What is written about one subject: the places of its records and attachments in the input.
struct About {
    SubjectId subject;
    std::vector<std::size_t> records;
    std::vector<std::size_t> attachments;
};

/// Subjects in the order they first come up.
std::vector<About> by_subject(const std::vector<NewRecord>& records,
                              const std::vector<NewAttachment>& attachments) {
    std::vector<About> all;
    const auto about = [&](const SubjectId& subject) -> About& {
        const auto found = std::ranges::find(all, subject, &About::subject);
        return found != all.end() ? *found : all.emplace_back(About{subject, {}, {}});
    };
    for (std::size_t i = 0; i < records.size(); ++i)
        about(records[i].subject).records.push_back(i);
    for (std::size_t i = 0; i < attachments.size(); ++i)
        about(attachments[i].subject).attachments.push_back(i);
    return all;
}

/// Puts frames behind each other in one chain.
class ChainWriter {
public:
    ChainWriter(const SubjectId& subject, const ChainPlace& place, std::vector<Bytes>& frames)
        : subject_(subject)
        , place_(place)
        , frames_(frames) {}

    void add(const NewAttachment& attachment) {
        Frame frame = next(FrameKind::attachment);
        frame.header.parts_exist = bit_of(attachment_slot);
        frame.parts[attachment_slot] = {
            .shown = true, .hash = attachment.hash, .salt = attachment.salt, .body = attachment.bytes};
        append(frame);
    }

    void add(const Batch& batch, RandomSource& random) {
        Frame frame = next(FrameKind::records);
        frame.header.entry_count = batch.count;
        for (std::size_t slot = 0; slot < batch.parts.size(); ++slot) {
            if (slot != slot_of(Part::open) && batch.parts[slot].empty()) continue;
            frame.header.parts_exist |= bit_of(slot);
            frame.parts[slot] = shown_part(slot, random.sixteen(), batch.parts[slot]);
        }
        append(frame);
    }

    [[nodiscard]] const ChainEnd& end() const { return end_; }

private:
    [[nodiscard]] Frame next(FrameKind kind) const {
        Frame frame;
        frame.header.kind = kind;
        frame.header.subject = subject_;
        frame.header.chain = place_.chain;
        frame.header.sequence = place_.sequence;
        frame.header.previous = place_.previous;
        return frame;
    }

    void append(const Frame& frame) {
        frames_.push_back(encode_frame(frame));
        end_ = {place_.sequence, frame_hash(frame)};
        ++place_.sequence;
        place_.previous = end_.hash;
    }

    SubjectId subject_;
    ChainPlace place_;
    std::vector<Bytes>& frames_;
    ChainEnd end_;
};

ChainNote& note_of(std::vector<ChainNote>& notes, const ChainId& chain, const SubjectId& subject) {
    const auto found = std::ranges::find(notes, chain, &ChainNote::chain);
    if (found != notes.end()) return *found;
    return notes.emplace_back(
        ChainNote{.chain = chain, .subject = subject, .written = {}, .about_to_write = {}});
}

bool too_much(const std::vector<Bytes>& frames) {
    std::size_t bytes = action_header_bytes;
    for (const auto& frame : frames)
        bytes += frame.size();
    return frames.size() > max_frames_in_action || bytes > max_action_bytes;
}

} // namespace

Result<NewAttachment> new_attachment(const SubjectId& subject, Bytes bytes, RandomSource& random) {
    if (bytes.size() > max_attachment_bytes) return refuse("An attachment may have at most 64 MiB.");
    NewAttachment attachment{
        .subject = subject, .salt = random.sixteen(), .hash = {}, .bytes = std::move(bytes)};
    attachment.hash = part_hash(attachment_slot, attachment.salt, attachment.bytes);
    return attachment;
}

Result<NewAction> make_action(const std::vector<NewRecord>& records,
                              const std::vector<NewAttachment>& attachments, std::vector<ChainNote> notes,
                              const ChainIndex& index, RandomSource& random) {
    NewAction action{.bytes = {}, .notes = std::move(notes), .order = {}, .notices = {}};
    std::vector<Bytes> frames;
    for (const auto& about : by_subject(records, attachments)) {
        std::vector<Record> of_subject;
        for (const auto place : about.records)
            of_subject.push_back(records[place].record);
        const auto batches = encode_records(of_subject);
        if (!batches) return pass_on(batches.error());
        ChainPlace place = choose_chain(action.notes, index, about.subject);
        if (place.is_new) place.chain = {random.sixteen()};
        if (!place.reason.empty())
            action.notices.push_back("A new run of entries was begun: " + place.reason + ".");
        ChainWriter writer(about.subject, place, frames);
        for (const auto attachment : about.attachments)
            writer.add(attachments[attachment]);
        for (const auto& batch : *batches)
            writer.add(batch, random);
        note_of(action.notes, place.chain, about.subject).about_to_write = writer.end();
        action.order.insert(action.order.end(), about.records.begin(), about.records.end());
    }
    if (frames.empty()) return refuse("There is nothing to save.");
    if (too_much(frames)) return refuse("This is too much for one action. Save it in parts.");
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
