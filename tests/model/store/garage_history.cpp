// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/garage_history.h"

#include "model/garage/garage.h"
#include "model/store/handover.h"
#include "model/store/merge.h"
#include "tests/model/store/example_records.h"

#include <algorithm>
#include <ostream>
#include <stdexcept>

namespace sumpbook::store {
namespace {

constexpr unsigned bikes = 2;
const Patience at_once{0};

template <class T>
T must(Result<T> result) {
    if (!result) throw std::runtime_error(result.error().sentence);
    return *std::move(result);
}

SubjectId bike(unsigned pick) { return subject_of(static_cast<std::uint8_t>(1 + pick % bikes)); }

/// Entries that nothing in the file replaces.
std::vector<NamedRecord> current_entries(const GarageFile& garage) {
    std::set<RecordName> replaced;
    for (const auto& record : garage.records())
        replaced.insert(record.record.replaces.begin(), record.record.replaces.end());
    std::vector<NamedRecord> current;
    for (const auto& record : garage.records()) {
        if (std::holds_alternative<Entry>(record.record.content) && !replaced.contains(record.name))
            current.push_back(record);
    }
    return current;
}

} // namespace

void showValue(const HistoryStep& step, std::ostream& out) {
    constexpr std::array<const char*, 11> kinds{"add",    "correct", "withdraw", "settle",    "settings",    "attach",
                                                "print", "merge",   "hand over", "clone writer", "erase"};
    out << kinds.at(step.kind) << " in copy " << step.copy << ", pick " << step.pick;
}

GarageHistory::GarageHistory(unsigned copies, const std::string& seed)
    : copies_(copies)
    , random_(seed) {
    const auto garage = must(GarageFile::create(around(0), copy(0), full_settings(), now()));
    garage_ = garage.subject();
    written_[garage.records().front().name] = {garage_, garage.records().front().record};
    append(0, bike(0), fuel_record(0));
    for (unsigned i = 1; i < copies; ++i)
        disk.put(copy(i), disk.bytes(copy(0)));
}

std::string GarageHistory::copy(unsigned number) const {
    return "/copy-" + std::to_string(number) + ".sumpbook";
}

Surroundings GarageHistory::around(unsigned number) {
    return {disk, random_, "/state-" + std::to_string(number), at_once};
}

GarageFile GarageHistory::open(unsigned number) { return must(GarageFile::open(around(number), copy(number))); }

GarageFile GarageHistory::open(const std::string& path) { return must(GarageFile::open(around(99), path)); }

void GarageHistory::play(const HistoryStep& step) {
    const unsigned number = step.copy % copies_;
    const unsigned other = (number + 1 + step.pick % (copies_ - 1)) % copies_;
    switch (step.kind) {
    case HistoryStep::add:
        if (step.pick % 4 == 0) return append_together(number, bike(step.pick));
        return append(number, bike(step.pick), fuel());
    case HistoryStep::correct:
    case HistoryStep::withdraw:
        return replace_one(number, step.pick, step.kind == HistoryStep::withdraw);
    case HistoryStep::settle:
        return settle_one(number);
    case HistoryStep::settings: {
        auto settings = full_settings();
        settings.home_country = step.pick % 2 == 0 ? "DE" : "US";
        const auto garage = open(number);
        return append(number, garage_,
                      {now(), heads_like(garage.records(), garage_, RecordContent(settings)), settings});
    }
    case HistoryStep::attach:
        return attach_one(number, step.pick);
    case HistoryStep::print:
        fingerprints_.insert(must(open(number).take_fingerprint(now())).fingerprint());
        return;
    case HistoryStep::merge:
        return merge_in(number, other);
    case HistoryStep::hand_over:
        return hand_over_one(number, step.pick);
    case HistoryStep::clone_writer:
        return clone_writer(number, other);
    case HistoryStep::erase:
        return erase_one(number, step.pick);
    }
}

/// A fuel stop whose note is no part of the note of another.
Record GarageHistory::fuel() {
    Record record = fuel_record(++entries_);
    std::get<Entry>(record.content).note = "<filled as number " + std::to_string(entries_) + ">";
    return record;
}

void GarageHistory::append(unsigned number, const SubjectId& subject, Record record,
                           const std::vector<NewAttachment>& attachments) {
    auto garage = open(number);
    record.recorded = now();
    static_cast<void>(must(garage.append({{subject, record}}, attachments)));
    written_[garage.records().back().name] = {subject, record};
}

/// Some entries in one save, which share a frame.
void GarageHistory::append_together(unsigned number, const SubjectId& subject) {
    auto garage = open(number);
    std::vector<NewRecord> together;
    for (int i = 0; i < 3; ++i) {
        together.push_back({subject, fuel()});
        together.back().record.recorded = now();
    }
    static_cast<void>(must(garage.append(together)));
    note_last(garage, together.size());
}

void GarageHistory::note_last(const GarageFile& garage, std::size_t count) {
    const auto& records = garage.records();
    for (auto i = records.size() - count; i < records.size(); ++i)
        written_[records[i].name] = {records[i].subject, records[i].record};
}

/// Any entry that counts, with all its versions.
void GarageHistory::erase_one(unsigned number, unsigned pick) {
    auto garage = open(number);
    const auto current = current_entries(garage);
    if (current.empty()) return;
    const auto name = current[pick % current.size()].name;
    const auto erasure = must(plan_erasure(garage.records(), name));
    for (const auto i : erasure.versions) {
        const auto* entry = std::get_if<Entry>(&garage.records()[i].record.content);
        // The papers' entries share a note.
        if (entry != nullptr && entry->note && entry->note->starts_with("<")) erased_notes_.insert(*entry->note);
    }
    emptied_.insert(erasure.frames.begin(), erasure.frames.end());
    for (const auto& file : erasure.attachments)
        attachments_.erase(file);
    const auto erased = must(garage.erase(name, "private", now()));
    note_last(garage, 1 + erased.copies);
}

void GarageHistory::replace_one(unsigned number, unsigned pick, bool withdraw) {
    const auto current = current_entries(open(number));
    if (current.empty()) return;
    const auto& old = current[pick % current.size()];
    Record record = withdraw ? Record{{}, {}, Withdrawal{}} : fuel();
    record.replaces = {old.name};
    append(number, old.subject, std::move(record));
}

/// The first conflict of the copy, if it has one.
void GarageHistory::settle_one(unsigned number) {
    const auto garage = open(number);
    const auto today = fold(garage_, garage.records());
    for (const auto& bike : today.bikes) {
        for (const auto& entry : bike.log) {
            if (!entry.in_conflict()) continue;
            Record record = fuel();
            record.replaces = entry.heads;
            std::ranges::sort(record.replaces);
            return append(number, bike.id, std::move(record));
        }
    }
}

void GarageHistory::attach_one(unsigned number, unsigned pick) {
    const auto file = must(new_attachment(bike(pick), Bytes(pick % 50, 'x'), random_));
    Entry entry = full_entry(Attach{});
    entry.attachments = {{"paper.txt", "text/plain", file.bytes.size(), file.hash}};
    append(number, file.subject, {{}, {}, entry}, {file});
    attachments_.insert(file.hash);
}

std::string GarageHistory::merged(const std::vector<std::string>& paths) {
    const auto plan = must(plan_merge(disk, paths, at_once));
    return must(write_out(disk, plan.set, "/merged-" + std::to_string(++files_))).path;
}

void GarageHistory::merge_in(unsigned number, unsigned other) {
    if (!disk.rename(merged({copy(number), copy(other)}), copy(number)))
        throw std::runtime_error("the merged file could not take its place");
}

void GarageHistory::hand_over_one(unsigned number, unsigned pick) {
    const Withheld withheld{(pick & 2U) != 0, (pick & 4U) != 0, (pick & 8U) != 0};
    const auto plan = plan_hand_over(disk, copy(number), bike(pick), withheld, at_once);
    if (!plan) return; // nothing is recorded of that bike in this copy
    hand_overs_.push_back(
        must(write_out(disk, plan->set, "/hand-over-" + std::to_string(++files_))).path);
}

/// The other computer becomes an image of this one: its notes too.
void GarageHistory::clone_writer(unsigned number, unsigned other) {
    set_aside_.push_back("/set-aside-" + std::to_string(++files_));
    disk.put(set_aside_.back(), disk.bytes(copy(other)));
    disk.put(copy(other), disk.bytes(copy(number)));
    const auto notes = chain_notes_path(around(number).state_folder, garage_);
    if (disk.identity(notes))
        disk.put(chain_notes_path(around(other).state_folder, garage_), disk.bytes(notes));
}

} // namespace sumpbook::store
