// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/entry_fields.h"
#include "app/cli/session.h"

#include <string>
#include <vector>

namespace sumpbook::cli {

/// An entry and the bike it is of; points into the open garage.
struct FoundEntry {
    const Bike* bike = nullptr;
    const LogEntry* entry = nullptr;
};

/// By the id of any of its versions, of the bikes that are meant; refused with near misses.
[[nodiscard]] Result<FoundEntry> entry_by_id(Session& session, const std::string& id);

/// Name of the bike that a record is of; empty where there is no such record.
[[nodiscard]] std::string bike_of_record(const Garage& garage, const std::vector<NamedRecord>& records,
                                         const std::string& id);

/// What a correction or withdrawal of the entry must name.
[[nodiscard]] std::vector<RecordName> sorted_heads(const LogEntry& entry);

/// Takes out the doubts about the fields that were typed anew or cleared, or all of them. Of the values of
/// a sample only those are settled that the entry now holds.
void settle(Entry& entry, const TypedEntry& typed, const std::vector<std::string>& cleared, bool all);

} // namespace sumpbook::cli
