// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/rule_choice.h"

#include "model/oil/words.h"

#include <algorithm>
#include <set>

namespace sumpbook::oil {
namespace {

using Rules = std::vector<const LimitRule*>;

template <class Keep>
Rules kept(const Rules& rules, Keep keep) {
    Rules result;
    std::copy_if(rules.begin(), rules.end(), std::back_inserter(result), keep);
    return result;
}

Rules rules_about(const LimitSet& set, std::string_view quantity) {
    Rules rules;
    for (const LimitRule& rule : set.rules) {
        if (speaks_of(rule, quantity) && rule.fuel != "gas") rules.push_back(&rule);
    }
    return rules;
}

Rules for_fuel(const Rules& rules, const std::string& fuel, bool despite_scope,
               std::vector<std::string>& notes) {
    const auto joins = [&](const LimitRule* rule) { return rule->fuel.empty() || rule->fuel == fuel; };
    Rules joined = kept(rules, joins);
    if (!joined.empty()) return joined;
    std::set<std::string> fuels;
    for (const LimitRule* rule : rules)
        fuels.insert(rule->fuel);
    if (fuel.empty() && fuels.size() > 1) {
        notes.emplace_back("The bike's fuel is not stated: the limits for petrol and for diesel both count.");
        return rules;
    }
    if (!despite_scope) return {};
    if (!rules.empty()) notes.push_back("These limits are for " + rules.front()->fuel + " engines.");
    return rules;
}

Rules for_grade(const Rules& rules, const std::optional<SaeGrade>& grade) {
    const std::string wanted = grade ? text_of(*grade) : std::string{};
    return kept(rules, [&](const LimitRule* rule) {
        return rule->grades.empty() || (grade && contains_word(rule->grades, wanted));
    });
}

Rules for_block(const Rules& rules, const std::optional<BlockMaterial>& block,
                std::vector<std::string>& notes) {
    const auto special = [](const LimitRule* rule) { return !rule->block.empty(); };
    const auto general = [](const LimitRule* rule) { return rule->block.empty(); };
    if (std::none_of(rules.begin(), rules.end(), special)) return rules;
    if (!block) {
        notes.emplace_back("Whether the block is aluminium is not stated: both limits count.");
        return rules;
    }
    return *block == BlockMaterial::aluminium ? kept(rules, special) : kept(rules, general);
}

Rules for_method(const Rules& rules, std::string_view quantity, const std::optional<std::string>& method) {
    return kept(rules, [&](const LimitRule* rule) {
        const bool silent = rule->method.empty();
        if (silent && quantity == "tbn" && rule->basis == Basis::absolute) return false;
        return silent || rule->method == method;
    });
}

void note_series(const Rules& rules, std::vector<std::string>& notes) {
    std::vector<std::string> series;
    for (const LimitRule* rule : rules) {
        if (!rule->series.empty()) series.push_back(rule->series);
    }
    if (series.empty()) return;
    notes.push_back(
        "Published for " + listed(series) +
        (series.size() > 1 ? ": which holds for this bike is not known, the stricter counts." : "."));
}

RuleChoice unrated(Unrated reason, std::vector<std::string> notes) {
    RuleChoice choice;
    choice.unrated = reason;
    choice.notes = std::move(notes);
    return choice;
}

} // namespace

std::string fuel_word(const std::optional<FuelType>& fuel) {
    if (!fuel) return {};
    return *fuel == FuelType::diesel ? "diesel" : "petrol";
}

RuleChoice choose_rules(const LimitSet& set, std::string_view quantity,
                        const std::optional<std::string>& method, const EngineAndOil& engine,
                        bool despite_scope) {
    std::vector<std::string> notes;
    const Rules all = rules_about(set, quantity);
    if (all.empty()) return unrated(Unrated::no_limit, notes);
    const Rules fuelled = for_fuel(all, fuel_word(engine.fuel), despite_scope, notes);
    if (fuelled.empty()) return unrated(Unrated::other_engines, notes);
    const Rules graded = for_grade(fuelled, engine.grade);
    if (graded.empty()) return unrated(Unrated::other_grade, notes);
    const Rules blocked = for_block(graded, engine.block, notes);
    const Rules methodical = for_method(blocked, quantity, method);
    if (methodical.empty()) return unrated(Unrated::method, notes);

    RuleChoice choice;
    choice.rules = kept(methodical, [](const LimitRule* rule) { return rule->basis != Basis::trend; });
    for (const LimitRule* rule : methodical) {
        if (rule->basis == Basis::trend) choice.trend = rule;
    }
    note_series(choice.rules, notes);
    choice.notes = std::move(notes);
    return choice;
}

} // namespace sumpbook::oil
