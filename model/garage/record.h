// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/bike.h"
#include "model/garage/entry.h"
#include "model/garage/ids.h"
#include "model/garage/plan_item.h"
#include "model/garage/settings.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace sumpbook {

/// Takes back every version it replaces.
struct Withdrawal {
    std::optional<std::string> reason; // private
    bool operator==(const Withdrawal&) const = default;
};

/// The order of the alternatives is written into garage files: append only.
using RecordContent =
    std::variant<GarageSettings, BikeDetails, DataCardValue, PlanItem, Baseline, Entry, Withdrawal>;

/// The unit of the garage file. Nothing is ever changed in place: a correction is a whole new record that
/// names every version it replaces; so is a withdrawal, and the settling of a conflict.
struct Record {
    RecordedTime recorded;
    std::vector<RecordName> replaces; ///< Of the same subject; sorted, without repeats.
    RecordContent content;
    bool operator==(const Record&) const = default;
};

/// A record with its names: the lasting one, the one for people ("k7-142"), and what it speaks of.
struct NamedRecord {
    RecordName name;
    std::string id;
    SubjectId subject;
    Record record;
};

} // namespace sumpbook
