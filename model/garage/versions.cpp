// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/versions.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <set>
#include <string>
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

} // namespace

std::vector<VersionGroup> version_groups(const std::vector<NamedRecord>& records) {
    Groups groups(records.size());
    std::map<std::pair<SubjectId, RecordName>, std::size_t> by_name;
    std::map<std::pair<SubjectId, std::string>, std::size_t> by_key;
    for (std::size_t i = 0; i < records.size(); ++i)
        by_name.emplace(std::pair(records[i].subject, records[i].name), i);
    // A replaced version that is not held here still ties together the records that replace it.
    std::map<std::pair<SubjectId, RecordName>, std::size_t> by_missing;
    for (std::size_t i = 0; i < records.size(); ++i) {
        for (const auto& replaced : records[i].record.replaces) {
            if (replaced.index == no_version) continue;
            const std::pair key(records[i].subject, replaced);
            const auto held = by_name.find(key);
            groups.join(i, held != by_name.end() ? held->second : by_missing.emplace(key, i).first->second);
        }
        if (const auto key = natural_key(records[i].record.content)) {
            groups.join(i, by_key.emplace(std::pair(records[i].subject, *key), i).first->second);
        }
    }
    std::map<std::size_t, VersionGroup> members;
    for (std::size_t i = 0; i < records.size(); ++i)
        members[groups.root(i)].push_back(i);
    std::vector<VersionGroup> all;
    for (auto& [root, group] : members) {
        std::ranges::stable_sort(group, {}, [&](std::size_t i) { return records[i].record.recorded; });
        all.push_back(std::move(group));
    }
    std::ranges::stable_sort(all, {}, [&](const VersionGroup& group) {
        return records[group.front()].record.recorded;
    });
    return all;
}

bool about_the_same(const RecordContent& one, const RecordContent& other) {
    const auto key = natural_key(one);
    return key && key == natural_key(other);
}

CurrentVersion current_version(const VersionGroup& group, const std::vector<NamedRecord>& records) {
    std::set<RecordName> replaced;
    for (const auto i : group)
        replaced.insert(records[i].record.replaces.begin(), records[i].record.replaces.end());
    CurrentVersion current;
    const auto later = [&](std::size_t a, std::size_t b) {
        return std::tie(records[a].record.recorded, records[b].name) >
               std::tie(records[b].record.recorded, records[a].name);
    };
    for (const auto i : group) {
        if (replaced.contains(records[i].name)) continue;
        if (current.heads.empty() || later(i, current.used)) current.used = i;
        current.heads.push_back(i);
    }
    return current;
}

std::vector<Conflict> conflicts(const std::vector<NamedRecord>& records) {
    std::vector<Conflict> found;
    for (auto& group : version_groups(records)) {
        auto current = current_version(group, records);
        const bool all_withdrawn = std::ranges::all_of(current.heads, [&](std::size_t i) {
            return std::holds_alternative<Withdrawal>(records[i].record.content);
        });
        if (current.heads.size() > 1 && !all_withdrawn)
            found.push_back({std::move(group), std::move(current)});
    }
    return found;
}

} // namespace sumpbook
