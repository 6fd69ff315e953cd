// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/log_command_entry.h"

#include "app/cli/entry_fields_doubted.h"
#include "app/cli/suggestions.h"

#include <algorithm>

namespace sumpbook::cli {
namespace {

/// Whether a sample has a value of the quantity; true where none is asked for.
bool holds(const Entry& entry, const std::string& quantity) {
    const auto* sample = std::get_if<Sample>(&entry.body);
    if (quantity.empty() || sample == nullptr) return true;
    return std::ranges::find(sample->values, quantity, &SampleValue::quantity) != sample->values.end();
}

} // namespace

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

void settle(Entry& entry, const TypedEntry& typed, const std::vector<std::string>& cleared, bool all) {
    const auto is_cleared = [&](const std::string& option) {
        return std::ranges::any_of(cleared,
                                   [&](const auto& name) { return name == option || "--" + name == option; });
    };
    const auto is_settled = [&](const DoubtedField& field) {
        return is_cleared(field.option) || (typed.contains(field.option) && holds(entry, field.quantity));
    };
    const auto kind = kind_slug(entry.body);
    std::erase_if(entry.doubts, [&](const Doubt& doubt) {
        return all || std::ranges::any_of(doubted_fields(kind, doubt), is_settled);
    });
}

} // namespace sumpbook::cli
