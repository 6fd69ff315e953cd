// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/merge.h"

#include "model/garage/garage.h"
#include "model/store/bike_names.h"
#include "model/store/garage_copy.h"
#include "model/store/named_by_run.h"

#include <fmt/format.h>

#include <algorithm>
#include <bit>
#include <numeric>

namespace sumpbook::store {
namespace {

void add_to(MergedChain& chain, const SetFrame& frame, const SetFrame* before) {
    ++chain.frames;
    chain.entries += frame.header.entry_count;
    if (before == nullptr) {
        ++chain.new_frames;
        chain.new_entries += frame.header.entry_count;
    } else {
        const unsigned filled = frame.shown & ~static_cast<unsigned>(before->shown);
        chain.filled_parts += static_cast<std::size_t>(std::popcount(filled));
        if (filled != 0 && frame.header.kind == FrameKind::attachment) ++chain.filled_files;
    }
}

/// What `all` holds, chain by chain, beside what `first` holds.
std::vector<MergedChain> compare(const FrameSet& all, const FrameSet& first, const BikeNames& names) {
    const auto index = all.chains();
    std::vector<MergedChain> chains;
    const ChainId* of_last = nullptr;
    for (const auto& frame : all.frames()) {
        if (of_last == nullptr || *of_last != frame.header.chain) {
            const auto* chain = index.find(frame.header.chain);
            MergedChain line;
            line.name = index.name_of(frame.header.chain);
            line.subject = frame.header.subject;
            line.bike = names.of(frame.header.subject);
            line.forked = chain != nullptr && chain->branches > 1;
            line.gap = chain != nullptr && chain->missing > 0;
            chains.push_back(std::move(line));
            of_last = &frame.header.chain;
        }
        add_to(chains.back(), frame, first.find(frame));
    }
    return chains;
}

std::size_t sum(const std::vector<MergedChain>& chains, std::size_t MergedChain::*field) {
    return std::accumulate(chains.begin(), chains.end(), std::size_t{0},
                           [&](std::size_t so_far, const auto& chain) { return so_far + chain.*field; });
}

void append(std::vector<std::string>& to, const std::vector<std::string>& more) {
    to.insert(to.end(), more.begin(), more.end());
}

/// A verified file without its records, which are looked at one file at a time.
struct Read {
    FrameSet set;
    std::uint32_t mode = 0;
};

/// What is kept of the records of all files.
struct Noted {
    BikeNames names;
    FollowedRecords followed;
    std::vector<std::string> notices;
    void note(const GarageCopy& copy, const std::string& path) {
        names.note(copy.contents.records());
        followed.note(copy.contents.records(), path);
        append(notices, copy.notices);
    }
};

Result<Read> read(FileLayer& files, const std::string& path, Patience patience, Noted& noted) {
    auto copy = read_copy(files, path, patience);
    if (!copy) return pass_on(copy.error());
    noted.note(*copy, path);
    return Read{std::move(copy->set), copy->mode};
}

void say_erased(const std::set<Hash256>& erased, std::vector<std::string>& notices) {
    if (erased.empty()) return;
    notices.push_back(erased.size() == 1
                          ? std::string("What was erased in one of these files stays erased in the result, "
                                        "although another still holds it.")
                          : fmt::format("What was erased in one of these files ({} pieces) stays erased in the "
                                        "result, although another still holds it.",
                                        erased.size()));
}

MergePlan plan_of(FrameSet all, const Read& first, const std::set<Hash256>& emptied, Noted noted) {
    MergePlan plan;
    plan.chains = compare(all, first.set, noted.names);
    plan.fingerprints = all.fingerprint_count();
    plan.new_fingerprints = plan.fingerprints - first.set.fingerprint_count();
    plan.mode = first.mode;
    plan.lost = lost_to_erasing(all, emptied, noted.followed, noted.names);
    plan.still_here = erased_and_still_here(all, noted.followed, noted.names);
    say_erased(emptied, noted.notices);
    plan.notices = std::move(noted.notices);
    plan.set = std::move(all);
    return plan;
}

Result<std::set<SubjectId>> subjects_named(const Garage& garage, const std::vector<std::string>& names,
                                           const std::string& path) {
    std::set<SubjectId> subjects;
    for (const auto& name : names) {
        if (const auto* bike = find_bike(garage, name)) {
            subjects.insert(bike->id);
            continue;
        }
        std::string held;
        for (const auto& bike : garage.bikes)
            held += (held.empty() ? "" : ", ") + bike.details.value.name;
        return refuse(fmt::format("There is no bike called {} in that garage. It holds: {}.", name,
                                  held.empty() ? "none" : held),
                      file_place(path));
    }
    return subjects;
}

/// A name stands for one bike of a garage.
Result<void> names_are_free(const Garage& from, const std::set<SubjectId>& chosen, const FrameSet& into,
                            const BikeNames& names, const std::string& path) {
    for (const auto& bike : from.bikes) {
        if (!chosen.contains(bike.id)) continue;
        const auto& name = bike.details.value.name;
        for (const auto& frame : into.frames()) {
            if (frame.header.subject == bike.id || names.of(frame.header.subject) != name) continue;
            return refuse(fmt::format("This garage has another bike called {0} already. Rename it first: sumpbook -g "
                                      "\"{1}\" -b \"{0}\" bike edit --name \"{0} 2\"",
                                      name, path),
                          file_place(path));
        }
    }
    return {};
}

} // namespace

std::size_t MergePlan::new_frames() const { return sum(chains, &MergedChain::new_frames); }
std::size_t MergePlan::new_entries() const { return sum(chains, &MergedChain::new_entries); }
bool MergePlan::brings_news() const {
    return new_frames() > 0 || sum(chains, &MergedChain::filled_parts) > 0 || new_fingerprints > 0;
}

Result<MergePlan> plan_merge(FileLayer& files, const std::vector<std::string>& paths, Patience patience) {
    if (paths.empty()) return refuse("There is nothing to merge.");
    Noted noted;
    std::vector<Read> read_ones;
    for (const auto& path : paths) {
        auto next = read(files, path, patience, noted);
        if (!next) return pass_on(next.error());
        read_ones.push_back(*std::move(next));
    }
    FrameSet all = read_ones.front().set;
    for (std::size_t i = 1; i < paths.size(); ++i) {
        if (auto united = all.unite(read_ones[i].set); !united) {
            united.error().place = file_place(paths[i]);
            return pass_on(united.error());
        }
    }
    std::set<Hash256> emptied;
    for (const auto& one : read_ones)
        note_emptied(one.set, all, emptied);
    return plan_of(std::move(all), read_ones.front(), emptied, std::move(noted));
}

Result<MergePlan> plan_adoption(FileLayer& files, const std::string& into, const std::string& from,
                                const std::vector<std::string>& bikes, Patience patience) {
    Noted noted;
    const auto first = read(files, into, patience, noted);
    if (!first) return pass_on(first.error());
    const auto other = read_copy(files, from, patience);
    if (!other) return pass_on(other.error());
    if (other->set.garage() == first->set.garage()) {
        return refuse("Both files belong to the same garage: merge them, nothing needs to be adopted.", file_place(from));
    }
    auto garage = fold(other->set.garage(), other->contents.records());
    name_by_run(garage, other->contents.index());
    const auto chosen = subjects_named(garage, bikes, from);
    if (!chosen) return pass_on(chosen.error());
    if (const auto free = names_are_free(garage, *chosen, first->set, noted.names, into); !free)
        return pass_on(free.error());
    noted.note(*other, from);
    FrameSet all = first->set;
    if (const auto adopted = all.adopt(other->set, *chosen); !adopted) return pass_on(adopted.error());
    std::set<Hash256> emptied;
    note_emptied(first->set, all, emptied);
    note_emptied(other->set, all, emptied);
    return plan_of(std::move(all), *first, emptied, std::move(noted));
}

} // namespace sumpbook::store
