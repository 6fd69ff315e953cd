// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/garage.h"
#include "model/garage/versions.h"
#include "model/store/erasure.h"
#include "model/store/frame_set.h"
#include "model/store/merge.h"
#include "tests/catch.h"
#include "tests/model/store/garage_history.h"

#include <rapidcheck.h>

#include <algorithm>
#include <cstdio>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

struct Tried {
    std::size_t histories = 0, forks = 0, conflicts = 0, erased = 0, told = 0, fingerprints = 0, hand_overs = 0, frames = 0;
};

/// The whole range from the first case on.
template <class T>
rc::Gen<T> from_to(T first, T end) {
    return rc::gen::resize(100, rc::gen::inRange(first, end));
}

rc::Gen<HistoryStep> any_step(bool cloned) {
    const auto kind =
        rc::gen::weightedElement<HistoryStep::Kind>({{8, HistoryStep::add},
                                                     {6, HistoryStep::correct},
                                                     {2, HistoryStep::withdraw},
                                                     {1, HistoryStep::settle},
                                                     {1, HistoryStep::settings},
                                                     {1, HistoryStep::attach},
                                                     {2, HistoryStep::print},
                                                     {3, HistoryStep::merge},
                                                     {2, HistoryStep::hand_over},
                                                     {2, HistoryStep::erase},
                                                     {cloned ? 3U : 0U, HistoryStep::clone_writer}});
    return rc::gen::construct<HistoryStep>(kind, from_to(0U, 4U), from_to(0U, 64U));
}

/// 2 to 4 copies; in 3 of 10 histories computers are cloned with all their notes.
GarageHistory any_history() {
    const auto copies = *from_to(2U, 5U);
    const bool cloned = *from_to(0, 10) < 3;
    const auto length = *from_to<std::size_t>(6, 26);
    const auto steps = *rc::gen::container<std::vector<HistoryStep>>(length, any_step(cloned));
    GarageHistory history(copies, "histories");
    for (const auto& step : steps)
        history.play(step);
    return history;
}

std::vector<std::string> all_files(const GarageHistory& history) {
    std::vector<std::string> files;
    for (unsigned i = 0; i < history.copies(); ++i)
        files.push_back(history.copy(i));
    files.insert(files.end(), history.set_aside().begin(), history.set_aside().end());
    files.insert(files.end(), history.hand_overs().begin(), history.hand_overs().end());
    return files;
}

/// Versions that no acknowledged record replaces, of each thing that has two or more: worked out from what
/// was done, not from any file.
std::vector<std::set<RecordName>> conflicts_of(const GarageHistory& history) {
    std::map<RecordName, RecordName> group; // name of a version -> first version of its thing
    const auto first_of = [&](RecordName name) {
        while (group.contains(name) && group.at(name) != name)
            name = group.at(name);
        return name;
    };
    std::set<RecordName> replaced;
    for (const auto& [name, written] : history.written()) {
        for (const auto& old : written.record.replaces) {
            if (old.index == no_version) continue;
            replaced.insert(old);
            group[first_of(name)] = first_of(old);
        }
    }
    std::map<RecordName, std::set<RecordName>> heads;
    for (const auto& [name, written] : history.written()) {
        if (!replaced.contains(name)) heads[first_of(name)].insert(name);
    }
    std::vector<std::set<RecordName>> conflicts;
    for (auto& [first, names] : heads) {
        if (names.size() > 1) conflicts.push_back(std::move(names));
    }
    return conflicts;
}

void nothing_is_lost(const GarageHistory& history, const GarageFile& merged, Tried& tried) {
    const auto erased = std::ranges::count_if(
        history.written(), [&](const auto& one) { return history.emptied().contains(one.first.frame_hash); });
    RC_ASSERT(merged.records().size() + static_cast<std::size_t>(erased) == history.written().size());
    for (const auto& record : merged.records()) {
        const auto& written = history.written().at(record.name);
        RC_ASSERT(record.record == written.record);
        RC_ASSERT(record.subject == written.subject);
    }
    for (const auto part : {Part::open, Part::money, Part::personal})
        RC_ASSERT(merged.withheld(part) <= history.emptied().size());
    RC_ASSERT(merged.withheld(Part::open) == history.emptied().size());
    for (const auto& hash : history.attachments())
        RC_ASSERT(merged.attachment(hash).has_value());
    std::set<Hash256> printed;
    for (const auto& record : merged.fingerprints())
        printed.insert(record.fingerprint());
    RC_ASSERT(printed == history.fingerprints());
    tried.fingerprints += printed.size();
    tried.frames += merged.index().frames().size();
}

void conflicts_are_shown(const GarageHistory& history, const GarageFile& merged, Tried& tried) {
    const auto today = fold(merged.subject(), merged.records());
    std::set<std::set<RecordName>> shown;
    for (const auto& bike : today.bikes) {
        for (const auto& entry : bike.log) {
            if (entry.in_conflict()) shown.insert({entry.heads.begin(), entry.heads.end()});
        }
    }
    if (today.settings && today.settings->in_conflict())
        shown.insert({today.settings->heads.begin(), today.settings->heads.end()});
    for (const auto& conflict : conflicts_of(history)) {
        ++tried.conflicts;
        // What is withdrawn in the version that is used stands in no log: its versions are in the file.
        const bool withdrawn = std::ranges::any_of(conflict, [&](const RecordName& name) {
            return std::holds_alternative<Withdrawal>(history.written().at(name).record.content);
        });
        RC_ASSERT(withdrawn || shown.erase(conflict) == 1U);
    }
}

/// What an erased entry said is gone, but for versions that another copy made and that the merge tells of.
void erased_stays_erased(GarageHistory& history, const std::vector<std::string>& files, const GarageFile& merged,
                         const Bytes& bytes, Tried& tried) {
    for (const auto& record : merged.records())
        RC_ASSERT(!history.emptied().contains(record.name.frame_hash));
    const auto plan = plan_merge(history.disk, files, Patience{0});
    RC_ASSERT(plan.has_value());
    std::set<std::string> told;
    for (const auto& thing : plan->still_here)
        told.insert(thing.ids.begin(), thing.ids.end());
    for (const auto& lost : plan->lost)
        RC_ASSERT(lost.unaccounted.empty());
    std::set<std::string> told_notes;
    for (const auto& record : merged.records()) {
        const auto* entry = std::get_if<Entry>(&record.record.content);
        if (entry != nullptr && entry->note && told.contains(record.id)) told_notes.insert(*entry->note);
    }
    for (const auto& note : history.erased_notes())
        RC_ASSERT(told_notes.contains(note) || std::ranges::search(bytes, as_bytes(note)).empty());
    tried.erased += history.erased_notes().size();
    tried.told += told.size();
}

} // namespace

TEST_CASE("Promise 8: merge is a union, commutative, associative, idempotent, and nothing is lost",
          "[merge]") {
    Tried tried;
    const bool held = rc::check("the laws of merge", [&] {
        auto history = any_history();
        const auto bytes = [&](const std::vector<std::string>& paths) {
            return history.disk.bytes(history.merged(paths));
        };
        const auto files = all_files(history);
        const auto all = history.merged(files);
        const auto everything = history.disk.bytes(all);

        auto order = files;
        std::ranges::reverse(order);
        RC_ASSERT(bytes(order) == everything);
        std::ranges::rotate(order, order.begin() + static_cast<std::ptrdiff_t>(order.size() / 2));
        RC_ASSERT(bytes(order) == everything);

        const auto a = files[0], b = files[1], c = files.back();
        RC_ASSERT(bytes({a, b}) == bytes({b, a}));
        RC_ASSERT(bytes({history.merged({a, b}), c}) == bytes({a, history.merged({b, c})}));
        RC_ASSERT(bytes({a, a}) == bytes({a}));
        RC_ASSERT(bytes({all, c}) == everything);
        RC_ASSERT(bytes({all}) == everything); // what is written out is canonical already

        const auto merged = history.open(all);
        nothing_is_lost(history, merged, tried);
        conflicts_are_shown(history, merged, tried);
        erased_stays_erased(history, files, merged, everything, tried);
        for (const auto& hand_over : history.hand_overs())
            RC_ASSERT(bytes({hand_over, all}) == everything);

        ++tried.histories;
        tried.hand_overs += history.hand_overs().size();
        tried.forks += static_cast<std::size_t>(std::ranges::count_if(
            merged.index().chains(), [](const auto& chain) { return chain.second.branches > 1; }));
        RC_ASSERT(history.disk.open_files() == 0U);
    });
    CHECK(held);
    std::printf(
        "merge laws: %zu histories with %zu frames, %zu forked chains, %zu conflicts, %zu fingerprints, "
        "%zu hand-overs merged back, %zu entries erased, %zu versions of them told\n",
        tried.histories, tried.frames, tried.forks, tried.conflicts, tried.fingerprints, tried.hand_overs,
        tried.erased, tried.told);
    CHECK(tried.forks > 0);
    CHECK(tried.conflicts > 0);
    CHECK(tried.hand_overs > 0);
    CHECK(tried.erased > 0);
    CHECK(tried.told > 0);
}
