// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/limit_sets.h"

#include "embedded/limit_set_files.h"
#include "embedded/limit_sets_csv.h"
#include "model/oil/words.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <stdexcept>

namespace sumpbook::oil {
namespace {

std::vector<LimitRule> rules_of(const std::string& id) {
    if (id == grade_set) return {};
    for (const auto& [name, text] : data::limit_set_files()) {
        if (same_word(name, id)) return read_limit_rules(text);
    }
    throw std::logic_error("limit_sets.csv: no file of limits for " + id);
}

LimitSet set_of(const DataRow& row) {
    LimitSet set;
    set.id = row["set"];
    set.title = row["title"];
    set.engines = row["engines"];
    set.fuel = row["fuel"];
    if (const auto percent = row.number("watch_percent"))
        set.watch_percent = static_cast<int>(percent->coefficient());
    set.evidence = row["evidence"];
    set.caveat = row["caveat"];
    set.source = row["source"];
    set.rules = rules_of(set.id);
    return set;
}

} // namespace

bool LimitSet::can_be_chosen() const { return evidence != "FROM MEMORY"; }

bool LimitSet::has(std::string_view quantity) const {
    return std::any_of(rules.begin(), rules.end(),
                       [&](const LimitRule& rule) { return speaks_of(rule, quantity); });
}

const std::vector<LimitSet>& limit_sets() {
    static const std::vector<LimitSet> all = [] {
        std::vector<LimitSet> sets;
        for (const DataRow& row : read_data_table(data::limit_sets_csv()))
            sets.push_back(set_of(row));
        return sets;
    }();
    return all;
}

const LimitSet* find_limit_set(std::string_view id) {
    const auto& all = limit_sets();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const LimitSet& set) { return same_word(set.id, id); });
    return found == all.end() ? nullptr : &*found;
}

bool speaks_of(const LimitRule& rule, std::string_view quantity) {
    return rule.quantity == quantity ||
           (rule.quantity == "kv" && (quantity == "kv100" || quantity == "kv40"));
}

} // namespace sumpbook::oil
