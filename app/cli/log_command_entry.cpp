// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_command_entry.h"

#include "app/cli/suggestions.h"

#include <algorithm>

namespace sumpbook::cli {

Result<FoundEntry> entry_by_id(Session& session, const std::string& id) {
    const auto bikes = session.bikes();
    if (!bikes) return pass_on(bikes.error());
    std::vector<std::string> known;
    for (const auto* bike : *bikes) {
        if (const auto* entry = find_entry(*bike, id)) return FoundEntry{bike, entry};
        for (const auto& entry : bike->log)
            known.push_back(entry.id);
    }
    return refuse("There is no entry \"" + id + "\"." + did_you_mean(id, known) + " See: sumpbook log",
                  {.file = {}, .line = {}, .column = {}, .text = id});
}

std::string bike_of_record(const Garage& garage, const std::vector<NamedRecord>& records,
                           const std::string& id) {
    const auto record = std::ranges::find(records, id, &NamedRecord::id);
    if (record == records.end()) return {};
    const auto bike = std::ranges::find(garage.bikes, record->subject, &Bike::id);
    return bike == garage.bikes.end() ? std::string() : bike->details.value.name;
}

std::vector<RecordName> sorted_heads(const LogEntry& entry) {
    auto heads = entry.heads;
    std::ranges::sort(heads);
    return heads;
}

void settle(Entry& entry, const TypedEntry& typed, bool all) {
    std::erase_if(entry.doubts,
                  [&](const Doubt& doubt) { return all || typed.contains("--" + doubt.column); });
}

} // namespace sumpbook::cli
