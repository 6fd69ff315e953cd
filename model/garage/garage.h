// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook {

/// Today's version of something recorded, with the names of all its versions, oldest first.
template <class T>
struct Versioned {
    RecordName name;
    std::string id; ///< For people: "k7-142".
    RecordedTime recorded;
    std::vector<std::string> earlier_ids; ///< The versions this one stands for, oldest first.
    std::vector<RecordName> heads;        ///< Versions that nothing replaces; more than one: a conflict.
    T value;
    [[nodiscard]] bool in_conflict() const { return heads.size() > 1; }
};

using LogEntry = Versioned<Entry>;

struct Bike {
    SubjectId id;
    Versioned<BikeDetails> details;
    std::vector<Versioned<DataCardValue>> card;
    std::vector<Versioned<PlanItem>> plan; ///< In the order first recorded.
    std::vector<Versioned<Baseline>> baselines;
    std::vector<LogEntry> log; ///< By date; entries of one date in the order first recorded.
};

/// Today's state of everything recorded.
struct Garage {
    SubjectId id;
    std::optional<Versioned<GarageSettings>> settings; ///< Absent only in a file without settings.
    std::vector<Bike> bikes;                           ///< In the order first recorded.
};

/// The settings in use: those recorded, else the defaults.
[[nodiscard]] inline GarageSettings settings_of(const Garage& garage) {
    return garage.settings ? garage.settings->value : GarageSettings{};
}

/// Folds records into today's state: the versions that no record present replaces are
/// current; where two or more remain the one recorded last, then the one with the smallest hash, is used
/// and both stand in `heads`. Bike details, settings, plan items, baselines and card values also replace
/// one another by what they are about. Records of a subject without bike details are kept under an empty
/// name. The order of `records` matters only between records of one second.
[[nodiscard]] Garage fold(const SubjectId& garage, const std::vector<NamedRecord>& records);

/// The versions that nothing replaces of what `like` is about (settings, bike details, a plan item, a
/// baseline, a card value), withdrawn ones included: a new record of it must name them all. Empty for the
/// first, and for entries, which are named by their own versions.
[[nodiscard]] std::vector<RecordName> heads_like(const std::vector<NamedRecord>& records,
                                                 const SubjectId& subject, const RecordContent& like);

/// By its exact name, else by a name that differs only in case; absent if none fits.
[[nodiscard]] const Bike* find_bike(const Garage& garage, std::string_view name);
/// By the id of any of its versions.
[[nodiscard]] const LogEntry* find_entry(const Bike& bike, std::string_view id);
[[nodiscard]] const Versioned<PlanItem>* find_plan_item(const Bike& bike, std::string_view slug);

[[nodiscard]] Currency currency_of(const Garage& garage);

/// Entries of one kind in log order: for (const auto* fuel : entries_of<Fuel>(bike)) ...
template <class Body>
[[nodiscard]] std::vector<const LogEntry*> entries_of(const Bike& bike) {
    std::vector<const LogEntry*> found;
    for (const auto& entry : bike.log) {
        if (std::holds_alternative<Body>(entry.value.body)) found.push_back(&entry);
    }
    return found;
}

} // namespace sumpbook
