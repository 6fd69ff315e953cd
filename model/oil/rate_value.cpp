// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/rate_value.h"

#include "model/oil/methods.h"
#include "model/oil/quantities.h"

#include <algorithm>
#include <utility>

namespace sumpbook::oil {
namespace {

std::string unit_of(const SampleValue& value) {
    if (!value.unit.empty()) return value.unit;
    const Quantity* quantity = find_quantity(value.quantity);
    return quantity == nullptr ? std::string{} : quantity->unit;
}

bool needs_fresh(Basis basis) {
    return basis != Basis::absolute && basis != Basis::detection && basis != Basis::trend;
}

/// The unit a rule compares in: its own where it holds amounts, else the sample's.
std::string comparing_unit(const LimitRule& rule, const SampleValue& value) {
    return rule.basis == Basis::absolute ? rule.rows.front().unit : unit_of(value);
}

/// A base number is held against the new oil's only where both name one method.
bool methods_differ(const SampleValue& used, const SampleValue& fresh) {
    if (used.quantity != "tbn" && used.quantity != "flash") return false;
    const auto of_used = method_of(used.quantity, used.method);
    return !of_used || of_used != method_of(fresh.quantity, fresh.method);
}

RuleVerdict no_verdict(const LimitRule& rule, Unrated reason) {
    RuleVerdict verdict;
    verdict.rule = &rule;
    verdict.row = &rule.rows.front();
    verdict.unrated = reason;
    return verdict;
}

RuleVerdict verdict_by(const LimitRule& rule, const LimitSet& set, const RatedValue& rated) {
    const std::string unit = comparing_unit(rule, rated.written);
    const auto used = in_oil_unit(rated.written.number, unit_of(rated.written), unit);
    const bool has_number =
        rated.written.state == ValueState::measured || rated.written.state == ValueState::below;
    if (has_number && !used && rule.basis != Basis::detection) return no_verdict(rule, Unrated::unit);
    std::optional<Decimal> fresh;
    if (needs_fresh(rule.basis) && rated.fresh && rated.fresh->state == ValueState::measured) {
        if (methods_differ(rated.written, *rated.fresh)) return no_verdict(rule, Unrated::method);
        fresh = in_oil_unit(rated.fresh->number, unit_of(*rated.fresh), unit);
        if (!fresh) return no_verdict(rule, Unrated::unit);
    }
    return judge(rule, set.watch_percent, {rated.written.state, used.value_or(rated.written.number)}, fresh);
}

/// The lowest upper limit among the rules that count; absent where there is none.
const LimitRow* lowest_level(const RuleChoice& choice) {
    const LimitRow* lowest = nullptr;
    for (const LimitRule* rule : choice.rules) {
        for (const LimitRow& row : rule->rows) {
            const bool amount = row.basis == Basis::absolute && row.is_upper() && !row.ends_normal();
            if (amount && (lowest == nullptr || row.value < lowest->value)) lowest = &row;
        }
    }
    return lowest;
}

/// Whether an additive metal or silicon can be judged at all beside its new oil (numbers.md 6.1).
std::optional<Unrated> hidden_by_new_oil(const RatedValue& rated, const RuleChoice& choice) {
    const Quantity* quantity = find_quantity(rated.written.quantity);
    const LimitRow* lowest = lowest_level(choice);
    if (quantity == nullptr || quantity->new_oil == NewOilMatters::no || lowest == nullptr)
        return std::nullopt;
    const auto unknown = quantity->new_oil == NewOilMatters::must_be_known
                             ? std::optional<Unrated>(Unrated::new_oil_unknown)
                             : std::nullopt;
    if (!rated.fresh) return unknown;
    const auto fresh = in_oil_unit(rated.fresh->number, unit_of(*rated.fresh), lowest->unit);
    switch (rated.fresh->state) {
    case ValueState::not_detected:
        return std::nullopt;
    case ValueState::detected:
        return unknown;
    case ValueState::below:
        return fresh && *fresh <= lowest->value ? std::nullopt : unknown;
    case ValueState::measured:
        break;
    }
    if (!fresh) return unknown;
    return *fresh >= lowest->value ? std::optional<Unrated>(Unrated::in_new_oil) : std::nullopt;
}

void explain(RatedValue& rated, const RuleVerdict& verdict, const LimitSet& set) {
    if (verdict.our_watch_line) {
        rated.notes.push_back("From " + std::to_string(set.watch_percent.value_or(0)) +
                              " % of the limit Sumpbook says watch; the set itself has no such line.");
    }
    if (verdict.between_levels)
        rated.notes.emplace_back(
            "Past the set's normal band, short of its first level: Sumpbook says watch.");
    if (verdict.no_detection_limit)
        rated.notes.emplace_back("Not detected; the laboratory does not say how little it could have seen.");
}

/// Takes the worst verdict; an unrated one only where no rule could rate.
void settle(RatedValue& rated, const LimitSet& set) {
    const auto worst = std::max_element(
        rated.verdicts.begin(), rated.verdicts.end(), [](const RuleVerdict& a, const RuleVerdict& b) {
            return std::pair(a.ladder, a.reached) < std::pair(b.ladder, b.reached);
        });
    rated.ladder = worst->ladder;
    rated.unrated = worst->ladder == Ladder::unrated ? worst->unrated : std::nullopt;
    if (worst->row != nullptr) rated.limit = *worst->row;
    if (worst->reached) rated.level = worst->row->level;
    rated.source = rated.limit ? rated.limit->source : set.source;
    explain(rated, *worst, set);
}

void rate_by_set(RatedValue& rated, const LimitSet& set, const RatingBasis& basis, bool chosen) {
    rated.set = set.id;
    rated.source = set.source;
    const auto method = method_of(rated.written.quantity, rated.written.method);
    const RuleChoice choice = choose_rules(set, rated.written.quantity, method, basis.engine, chosen);
    rated.unrated = choice.unrated;
    rated.notes = choice.notes;
    if (choice.rules.empty()) return;
    if (const auto hidden = hidden_by_new_oil(rated, choice)) {
        rated.unrated = hidden;
        rated.limit = *lowest_level(choice);
        return;
    }
    if (choice.trend) rated.trend_limit = (*choice.trend)->rows.front();
    for (const LimitRule* rule : choice.rules)
        rated.verdicts.push_back(verdict_by(*rule, set, rated));
    settle(rated, set);
}

/// Reasons for which the default profile's set is asked as well: the chosen set has nothing that fits.
bool lacks_a_limit(const RatedValue& rated) {
    const auto reason = rated.unrated;
    return reason == Unrated::no_limit || reason == Unrated::other_engines ||
           reason == Unrated::other_grade || reason == Unrated::amount_missing;
}

RatedValue blank(const SampleValue& value, const RatingBasis& basis) {
    RatedValue rated;
    rated.written = value;
    rated.fresh = basis.reference.value(value.quantity);
    rated.unrated = Unrated::no_limit;
    return rated;
}

RatedValue rate_by_profile(const SampleValue& value, const RatingBasis& basis, const Profile& profile,
                           bool chosen) {
    RatedValue rated = blank(value, basis);
    const auto id = set_in(profile, value.quantity);
    const LimitSet* set = id ? find_limit_set(*id) : nullptr;
    if (set != nullptr && set->id != grade_set) rate_by_set(rated, *set, basis, chosen);
    return rated;
}

} // namespace

std::optional<Decimal> measured_number(const SampleValue& value) {
    if (value.state != ValueState::measured) return std::nullopt;
    return value.number;
}

std::optional<Decimal> fresh_number(const RatedValue& value) {
    if (!value.fresh || value.fresh->state != ValueState::measured) return std::nullopt;
    return in_oil_unit(value.fresh->number, unit_of(*value.fresh), unit_of(value.written));
}

RatedValue rate_value(const SampleValue& value, const RatingBasis& basis) {
    if (value.quantity == "Pb" && basis.engine.fuel == FuelType::leaded_petrol) {
        RatedValue rated = blank(value, basis);
        rated.unrated = Unrated::leaded_petrol;
        return rated;
    }
    RatedValue rated = rate_by_profile(value, basis, basis.profile, basis.profile.chosen);
    if (!basis.profile.chosen || !lacks_a_limit(rated)) return rated;
    RatedValue by_default = rate_by_profile(value, basis, default_profile(), false);
    if (by_default.set.empty() || (by_default.unrated && !rated.set.empty())) return rated;
    by_default.notes.push_back("Judged by " + by_default.set + ": the profile " + basis.profile.name +
                               " has no limit for it that fits.");
    return by_default;
}

} // namespace sumpbook::oil
