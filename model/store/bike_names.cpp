// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/bike_names.h"

#include <tuple>

namespace sumpbook::store {

void BikeNames::note(const SubjectId& subject, const RecordName& name, const Record& record) {
    const auto* details = std::get_if<BikeDetails>(&record.content);
    if (details == nullptr) return;
    Named named{.recorded = record.recorded, .by = name, .name = details->name};
    const auto [known, is_new] = names_.try_emplace(subject, named);
    // Of two in one second the smallest hash, as in every conflict.
    if (!is_new && std::tie(known->second.recorded, named.by) < std::tie(named.recorded, known->second.by))
        known->second = std::move(named);
}

void BikeNames::note(const std::vector<NamedRecord>& records) {
    for (const auto& record : records)
        note(record.subject, record.name, record.record);
}

std::string BikeNames::of(const SubjectId& subject) const {
    const auto found = names_.find(subject);
    return found == names_.end() ? std::string() : found->second.name;
}

} // namespace sumpbook::store
