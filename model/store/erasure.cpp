// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/erasure.h"

#include "model/garage/versions.h"

#include <algorithm>
#include <map>

namespace sumpbook::store {

namespace {

bool is_entry(const NamedRecord& named) { return std::holds_alternative<Entry>(named.record.content); }
bool is_withdrawal(const NamedRecord& named) {
    return std::holds_alternative<Withdrawal>(named.record.content);
}

/// The attachments that the given records refer to.
std::set<Hash256> attachments_of(const std::vector<NamedRecord>& records,
                                 const std::vector<std::size_t>& which) {
    std::set<Hash256> found;
    for (const auto i : which) {
        const auto* entry = std::get_if<Entry>(&records[i].record.content);
        if (entry == nullptr) continue;
        for (const auto& file : entry->attachments)
            found.insert(file.part_hash);
    }
    return found;
}

bool stands_in(const std::set<Hash256>& frames, const NamedRecord& named) {
    return frames.contains(named.name.frame_hash);
}

/// Adds what is lost of one group with the frames, and all that counts of it: the copies of what counts must
/// stand for the copies of what was replaced.
void add_copies(const VersionGroup& group, const std::vector<NamedRecord>& records, Erasure& erasure) {
    const auto lost = [&](std::size_t i) { return stands_in(erasure.frames, records[i]); };
    if (std::ranges::none_of(group, lost)) return;
    const auto heads = current_version(group, records).heads;
    const auto is_head = [&](std::size_t i) { return std::ranges::find(heads, i) != heads.end(); };
    bool earlier = false;
    for (const auto i : group) {
        if (is_head(i) || !lost(i)) continue;
        erasure.earlier.push_back(i);
        earlier = true;
    }
    for (const auto i : heads) {
        if (earlier || lost(i)) erasure.current.push_back(i);
    }
}

NewRecord copy_of(const NamedRecord& named) {
    NewRecord copy{named.subject, named.record};
    copy.record.replaces.push_back(named.name);
    return copy;
}

/// The frames that the record says were emptied.
void add_emptied(const NamedRecord& named, std::set<Hash256>& frames) {
    if (!is_withdrawal(named)) return;
    for (const auto& name : named.record.replaces) {
        if (name.index == no_version) frames.insert(name.frame_hash);
    }
}

void sort_names(std::vector<RecordName>& names) {
    std::ranges::sort(names);
    const auto repeats = std::ranges::unique(names);
    names.erase(repeats.begin(), repeats.end());
}

} // namespace

Result<Erasure> plan_erasure(const std::vector<NamedRecord>& records, const RecordName& entry) {
    const auto groups = version_groups(records);
    const auto of_it = std::ranges::find_if(groups, [&](const VersionGroup& group) {
        return std::ranges::any_of(group, [&](std::size_t i) { return records[i].name == entry; });
    });
    if (of_it == groups.end()) return refuse("There is no such entry in this file.");
    const auto one_of = [&](auto* test) {
        return std::ranges::any_of(*of_it, [&](std::size_t i) { return test(records[i]); });
    };
    const bool of_entry = std::ranges::all_of(*of_it, [&](std::size_t i) {
        return is_entry(records[i]) || is_withdrawal(records[i]);
    });
    if (!of_entry) return refuse("Only entries of the log can be erased.");
    if (!one_of(&is_entry)) return refuse("Nothing of this entry is left to erase.");
    Erasure erasure;
    erasure.versions = *of_it;
    erasure.subject = records[of_it->front()].subject;
    for (const auto i : *of_it)
        erasure.frames.insert(records[i].name.frame_hash);
    std::vector<std::size_t> others;
    for (const auto& group : groups) {
        if (&group == &*of_it) continue;
        others.insert(others.end(), group.begin(), group.end());
        add_copies(group, records, erasure);
    }
    const auto still_used = attachments_of(records, others);
    for (const auto& file : attachments_of(records, *of_it)) {
        if (!still_used.contains(file)) erasure.attachments.insert(file);
    }
    return erasure;
}

std::vector<NewRecord> first_copies(const Erasure& erasure, const std::vector<NamedRecord>& records,
                                    const std::set<Hash256>& emptied, std::optional<std::string> reason,
                                    RecordedTime now) {
    NewRecord withdrawal{erasure.subject, {now, {}, Withdrawal{std::move(reason)}}};
    auto& names = withdrawal.record.replaces;
    for (const auto i : erasure.versions) {
        names.push_back(records[i].name);
        names.insert(names.end(), records[i].record.replaces.begin(), records[i].record.replaces.end());
    }
    for (const auto& frame : emptied)
        names.push_back({frame, no_version});
    sort_names(names);
    std::vector<NewRecord> made{std::move(withdrawal)};
    for (const auto i : erasure.earlier)
        made.push_back(copy_of(records[i]));
    return made;
}

std::vector<NewRecord> second_copies(const Erasure& erasure, const std::vector<NamedRecord>& records,
                                     const std::vector<RecordName>& earlier) {
    std::map<std::size_t, std::size_t> group_of;
    const auto groups = version_groups(records);
    for (std::size_t g = 0; g < groups.size(); ++g) {
        for (const auto i : groups[g])
            group_of[i] = g;
    }
    std::vector<NewRecord> made;
    for (const auto i : erasure.current) {
        auto copy = copy_of(records[i]);
        for (std::size_t e = 0; e < erasure.earlier.size(); ++e) {
            if (group_of[erasure.earlier[e]] == group_of[i]) copy.record.replaces.push_back(earlier[e]);
        }
        sort_names(copy.record.replaces);
        made.push_back(std::move(copy));
    }
    return made;
}

std::set<EmptiedFrame> erased_frames(const std::vector<NamedRecord>& records) {
    std::set<EmptiedFrame> frames;
    for (const auto& named : records) {
        std::set<Hash256> emptied;
        add_emptied(named, emptied);
        for (const auto& hash : emptied)
            frames.insert({named.subject, hash});
    }
    return frames;
}

bool is_recorded_again(const NamedRecord& record, const std::set<EmptiedFrame>& erased) {
    return !is_withdrawal(record) && std::ranges::any_of(record.record.replaces, [&](const RecordName& name) {
        return erased.contains({record.subject, name.frame_hash});
    });
}

std::vector<ErasedRecord> erased_records(const ChainIndex& index, const std::vector<NamedRecord>& records) {
    struct StandsFor {
        const NamedRecord* by = nullptr;
        bool for_itself = false;
    };
    std::map<RecordName, StandsFor> stands_for;
    for (const auto& named : records) {
        std::set<Hash256> emptied;
        add_emptied(named, emptied);
        for (const auto& name : named.record.replaces) {
            auto& known = stands_for[name];
            const bool for_itself = emptied.contains(name.frame_hash);
            if (known.by == nullptr || for_itself) known = {&named, for_itself};
        }
    }
    std::vector<ErasedRecord> erased;
    for (const auto& frame : index.frames()) {
        if (frame.record_count == frame.entry_count) continue;
        for (std::uint32_t i = 0; i < frame.entry_count; ++i) {
            const auto found = stands_for.find({frame.hash, i});
            const auto known = found == stands_for.end() ? StandsFor{} : found->second;
            erased.push_back(
                {index.entry_id(frame, i), index.subject_of(frame), known.by, known.for_itself});
        }
    }
    return erased;
}

std::optional<RecordedTime> recorded_again_on(const NamedRecord& record,
                                              const std::vector<NamedRecord>& records) {
    if (is_withdrawal(record)) return std::nullopt;
    for (const auto& named : records) {
        std::set<Hash256> emptied;
        add_emptied(named, emptied);
        const bool of_it = std::ranges::any_of(record.record.replaces, [&](const RecordName& name) {
            return emptied.contains(name.frame_hash);
        });
        if (of_it) return named.record.recorded;
    }
    return std::nullopt;
}

} // namespace sumpbook::store
