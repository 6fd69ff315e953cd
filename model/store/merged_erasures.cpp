// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/merged_erasures.h"

#include "model/garage/versions.h"

#include <algorithm>
#include <map>
#include <optional>

namespace sumpbook::store {
namespace {

/// Whether the record says that frames were emptied.
bool erases(const NamedRecord& named) {
    return std::holds_alternative<Withdrawal>(named.record.content) &&
           std::ranges::find(named.record.replaces, no_version, &RecordName::index) != named.record.replaces.end();
}

/// The frames of a set as they are numbered there.
class Numbered {
public:
    explicit Numbered(const FrameSet& set)
        : set_(&set)
        , index_(set.chains()) {
        for (std::size_t i = 0; i < set.frames().size(); ++i)
            places_.emplace(set.frames()[i].hash, i);
    }
    [[nodiscard]] bool shows(const RecordName& name) const {
        const auto found = places_.find(name.frame_hash);
        return found != places_.end() && (set_->frames()[found->second].shown & bit_of(slot_of(Part::open))) != 0;
    }
    /// Of a record whose frame is there.
    [[nodiscard]] std::string id(const RecordName& name) const {
        return index_.entry_id(index_.frames()[places_.at(name.frame_hash)], name.index);
    }

private:
    const FrameSet* set_;
    ChainIndex index_;
    std::map<Hash256, std::size_t> places_;
};

/// What the records that are shown say of others.
struct Said {
    std::set<std::pair<SubjectId, RecordName>> named;
    std::map<EmptiedFrame, std::set<std::string>> emptied_by; ///< Ids.
};

Said said_in(const Numbered& after, const FollowedRecords& followed) {
    Said said;
    for (const auto& named : followed.records()) {
        if (!after.shows(named.name)) continue;
        for (const auto& name : named.record.replaces) {
            if (name.index != no_version)
                said.named.emplace(named.subject, name);
            else if (erases(named))
                said.emptied_by[{named.subject, name.frame_hash}].insert(after.id(named.name));
        }
    }
    return said;
}

void add_frame(const SetFrame& frame, const Numbered& after, const Said& said, LostToErasing& lost) {
    lost.entries += frame.header.entry_count;
    if (frame.header.kind == FrameKind::attachment) ++lost.attachments;
    for (std::uint32_t i = 0; i < frame.header.entry_count; ++i) {
        const RecordName name{frame.hash, i};
        if (!said.named.contains({frame.header.subject, name})) lost.unaccounted.push_back(after.id(name));
    }
}

/// What of the group is shown and is no withdrawal, where a record in it says that it was erased.
std::optional<ErasedAndStillHere> still_here(const VersionGroup& group, const Numbered& after,
                                             const FollowedRecords& followed) {
    const auto& records = followed.records();
    const auto erased =
        std::ranges::find_if(group, [&](std::size_t i) { return erases(records[i]) && after.shows(records[i].name); });
    if (erased == group.end()) return std::nullopt;
    ErasedAndStillHere found;
    found.erased_in = followed.held_in(*erased);
    found.subject = records[*erased].subject;
    for (const auto i : group) {
        if (std::holds_alternative<Withdrawal>(records[i].record.content) || !after.shows(records[i].name)) continue;
        found.ids.push_back(after.id(records[i].name));
        found.held_in = followed.held_in(i);
    }
    if (found.ids.empty()) return std::nullopt;
    return found;
}

} // namespace

void FollowedRecords::note(const std::vector<NamedRecord>& records, const std::string& path) {
    for (const auto& named : records) {
        if (named.record.replaces.empty() || !known_.insert(named.name).second) continue;
        const bool withdraws = std::holds_alternative<Withdrawal>(named.record.content);
        records_.push_back({named.name,
                            {},
                            named.subject,
                            {named.record.recorded, named.record.replaces,
                             withdraws ? RecordContent(Withdrawal{}) : RecordContent(Entry{})}});
        paths_.push_back(path);
    }
}

void note_emptied(const FrameSet& before, const FrameSet& after, std::set<Hash256>& emptied) {
    if (after.erased().empty()) return;
    for (const auto& frame : before.frames()) {
        if (frame.shown == 0) continue;
        const auto* now = after.find(frame);
        if (now != nullptr && now->shown == 0) emptied.insert(frame.hash);
    }
}

std::vector<LostToErasing> lost_to_erasing(const FrameSet& after, const std::set<Hash256>& emptied,
                                           const FollowedRecords& followed, const BikeNames& names) {
    std::vector<LostToErasing> all;
    if (emptied.empty()) return all;
    const Numbered numbered(after);
    const auto said = said_in(numbered, followed);
    std::set<std::string> by;
    for (const auto& frame : after.frames()) {
        if (!emptied.contains(frame.hash)) continue;
        const auto& subject = frame.header.subject;
        if (all.empty() || all.back().subject != subject) {
            all.push_back({.subject = subject, .bike = names.of(subject), .by = {}, .unaccounted = {}});
            by.clear();
        }
        add_frame(frame, numbered, said, all.back());
        if (const auto found = said.emptied_by.find({subject, frame.hash}); found != said.emptied_by.end())
            by.insert(found->second.begin(), found->second.end());
        all.back().by.assign(by.begin(), by.end());
    }
    return all;
}

std::vector<ErasedAndStillHere> erased_and_still_here(const FrameSet& after, const FollowedRecords& followed,
                                                      const BikeNames& names) {
    std::vector<ErasedAndStillHere> all;
    if (after.erased().empty()) return all;
    const Numbered numbered(after);
    for (const auto& group : version_groups(followed.records())) {
        auto found = still_here(group, numbered, followed);
        if (!found) continue;
        found->bike = names.of(found->subject);
        all.push_back(*std::move(found));
    }
    return all;
}

} // namespace sumpbook::store
