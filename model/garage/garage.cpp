// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/garage.h"

#include "model/garage/versions.h"

#include <algorithm>

namespace sumpbook {
namespace {

struct Current {
    const NamedRecord* record = nullptr;
    std::vector<std::string> earlier_ids;
    std::vector<RecordName> heads;
};

Current current_of(const VersionGroup& group, const std::vector<NamedRecord>& records) {
    const auto version = current_version(group, records);
    Current current;
    for (const auto i : version.heads)
        current.heads.push_back(records[i].name);
    if (version.heads.empty()) return current;
    current.record = &records[version.used];
    for (const auto i : group) {
        if (i != version.used) current.earlier_ids.push_back(records[i].id);
    }
    return current;
}

template <class T>
Versioned<T> versioned(const Current& current, const T& value) {
    return {current.record->name, current.record->id, current.record->record.recorded,
            current.earlier_ids,  current.heads,      value};
}

Bike& bike_of(Garage& garage, const SubjectId& subject) {
    const auto found = std::ranges::find(garage.bikes, subject, &Bike::id);
    if (found != garage.bikes.end()) return *found;
    garage.bikes.push_back(
        {.id = subject, .details = {}, .card = {}, .plan = {}, .baselines = {}, .log = {}});
    return garage.bikes.back();
}

void place(Garage& garage, const Current& current) {
    struct Placer {
        Garage& garage;
        const Current& current;
        [[nodiscard]] Bike& bike() const { return bike_of(garage, current.record->subject); }
        void operator()(const GarageSettings& settings) const {
            garage.settings = versioned(current, settings);
        }
        void operator()(const BikeDetails& details) const { bike().details = versioned(current, details); }
        void operator()(const DataCardValue& value) const {
            bike().card.push_back(versioned(current, value));
        }
        void operator()(const PlanItem& item) const { bike().plan.push_back(versioned(current, item)); }
        void operator()(const Baseline& base) const { bike().baselines.push_back(versioned(current, base)); }
        void operator()(const Entry& entry) const { bike().log.push_back(versioned(current, entry)); }
        void operator()(const Withdrawal& /*gone*/) const {}
    };
    std::visit(Placer{garage, current}, current.record->record.content);
}

} // namespace

Garage fold(const SubjectId& garage_subject, const std::vector<NamedRecord>& records) {
    Garage garage{.id = garage_subject, .settings = {}, .bikes = {}};
    std::vector<Current> all;
    for (const auto& group : version_groups(records)) {
        if (Current current = current_of(group, records); current.record != nullptr)
            all.push_back(std::move(current));
    }
    // Entries by date, the rest as recorded.
    std::ranges::stable_sort(all, {}, [](const Current& current) {
        const auto* entry = std::get_if<Entry>(&current.record->record.content);
        return entry != nullptr ? entry->date : Date{};
    });
    for (const auto& current : all)
        place(garage, current);
    return garage;
}

std::vector<RecordName> heads_like(const std::vector<NamedRecord>& records, const SubjectId& subject,
                                   const RecordContent& like) {
    if (!about_the_same(like, like)) return {}; // named by its own versions alone
    for (const auto& group : version_groups(records)) {
        const bool about_it = std::ranges::any_of(group, [&](std::size_t i) {
            return records[i].subject == subject && about_the_same(like, records[i].record.content);
        });
        if (!about_it) continue;
        auto heads = current_of(group, records).heads;
        std::ranges::sort(heads);
        return heads;
    }
    return {};
}

namespace {

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& c : result)
        c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return result;
}

} // namespace

const Bike* find_bike(const Garage& garage, std::string_view name) {
    const Bike* alike = nullptr;
    for (const auto& bike : garage.bikes) {
        const auto& own = bike.details.value.name;
        if (own == name) return &bike;
        if (lower(own) == lower(name)) alike = &bike;
    }
    return alike;
}

const LogEntry* find_entry(const Bike& bike, std::string_view id) {
    for (const auto& entry : bike.log) {
        if (entry.id == id || std::ranges::find(entry.earlier_ids, id) != entry.earlier_ids.end())
            return &entry;
    }
    return nullptr;
}

const Versioned<PlanItem>* find_plan_item(const Bike& bike, std::string_view slug) {
    const auto found = std::ranges::find(bike.plan, slug, [](const auto& item) { return item.value.slug; });
    return found == bike.plan.end() ? nullptr : &*found;
}

Currency currency_of(const Garage& garage) {
    return garage.settings ? garage.settings->value.currency : Currency{};
}

} // namespace sumpbook
