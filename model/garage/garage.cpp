// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/garage.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <tuple>

namespace sumpbook {
namespace {

/// What a record is about where that alone names it: one set of details a bike, one plan item a slug.
std::optional<std::string> natural_key(const RecordContent& content) {
    struct Key {
        std::optional<std::string> operator()(const GarageSettings&) const { return "settings"; }
        std::optional<std::string> operator()(const BikeDetails&) const { return "details"; }
        std::optional<std::string> operator()(const DataCardValue& value) const {
            return "card " + value.name;
        }
        std::optional<std::string> operator()(const PlanItem& item) const { return "plan " + item.slug; }
        std::optional<std::string> operator()(const Baseline& base) const { return "baseline " + base.slug; }
        std::optional<std::string> operator()(const Entry&) const { return std::nullopt; }
        std::optional<std::string> operator()(const Withdrawal&) const { return std::nullopt; }
    };
    return std::visit(Key{}, content);
}

/// Versions of one thing: disjoint sets over the records' positions.
class Groups {
public:
    explicit Groups(std::size_t size)
        : parent_(size) {
        std::iota(parent_.begin(), parent_.end(), std::size_t{0});
    }
    std::size_t root(std::size_t i) {
        while (parent_[i] != i)
            i = parent_[i] = parent_[parent_[i]];
        return i;
    }
    void join(std::size_t a, std::size_t b) {
        const auto low = std::min(root(a), root(b));
        parent_[std::max(root(a), root(b))] = low;
    }

private:
    std::vector<std::size_t> parent_;
};

using Members = std::vector<std::size_t>; // positions of the versions of one thing, oldest first

std::vector<Members> versions(const std::vector<NamedRecord>& records) {
    Groups groups(records.size());
    std::map<std::pair<SubjectId, RecordName>, std::size_t> by_name;
    std::map<std::pair<SubjectId, std::string>, std::size_t> by_key;
    for (std::size_t i = 0; i < records.size(); ++i)
        by_name.emplace(std::pair(records[i].subject, records[i].name), i);
    // A replaced version that is not held here still ties together the records that replace it.
    std::map<std::pair<SubjectId, RecordName>, std::size_t> by_missing;
    for (std::size_t i = 0; i < records.size(); ++i) {
        for (const auto& replaced : records[i].record.replaces) {
            const std::pair key(records[i].subject, replaced);
            const auto held = by_name.find(key);
            groups.join(i, held != by_name.end() ? held->second : by_missing.emplace(key, i).first->second);
        }
        if (const auto key = natural_key(records[i].record.content)) {
            groups.join(i, by_key.emplace(std::pair(records[i].subject, *key), i).first->second);
        }
    }
    std::map<std::size_t, Members> members;
    for (std::size_t i = 0; i < records.size(); ++i)
        members[groups.root(i)].push_back(i);
    std::vector<Members> all;
    for (auto& [root, group] : members) {
        std::ranges::stable_sort(group, {}, [&](std::size_t i) { return records[i].record.recorded; });
        all.push_back(std::move(group));
    }
    std::ranges::stable_sort(all, {},
                             [&](const Members& group) { return records[group.front()].record.recorded; });
    return all;
}

struct Current {
    const NamedRecord* record = nullptr;
    std::vector<std::string> earlier_ids;
    std::vector<RecordName> heads;
};

Current current_of(const Members& group, const std::vector<NamedRecord>& records) {
    std::set<RecordName> replaced;
    for (const auto i : group)
        replaced.insert(records[i].record.replaces.begin(), records[i].record.replaces.end());
    Current current;
    for (const auto i : group) {
        const auto& candidate = records[i];
        if (replaced.contains(candidate.name)) continue;
        current.heads.push_back(candidate.name);
        const auto later = [](const NamedRecord& a, const NamedRecord& b) {
            return std::tie(a.record.recorded, b.name) > std::tie(b.record.recorded, a.name);
        };
        if (current.record == nullptr || later(candidate, *current.record)) current.record = &candidate;
    }
    for (const auto i : group) {
        if (&records[i] != current.record) current.earlier_ids.push_back(records[i].id);
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
    for (const auto& group : versions(records)) {
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
    const auto wanted = natural_key(like);
    if (!wanted) return {};
    for (const auto& group : versions(records)) {
        const bool about_it = std::ranges::any_of(group, [&](std::size_t i) {
            return records[i].subject == subject && natural_key(records[i].record.content) == wanted;
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
