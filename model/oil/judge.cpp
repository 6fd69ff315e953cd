// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/judge.h"

#include <algorithm>
#include <utility>

namespace sumpbook::oil {
namespace {

/// The two sides of a comparison: what was found, and what the limit allows.
struct Sides {
    Decimal found;
    Decimal limit;
};

/// 100 x part against limit x whole: a per cent without dividing.
std::optional<Sides> per_cent(const Result<Decimal>& part, const Decimal& limit, const Decimal& whole) {
    if (!part || whole <= Decimal{0}) return std::nullopt;
    const auto found = multiply(*part, Decimal{100});
    const auto allowed = multiply(limit, whole);
    if (!found || !allowed) return std::nullopt;
    return Sides{*found, *allowed};
}

std::optional<Sides> amounts(const Result<Decimal>& found, const Decimal& limit) {
    if (!found) return std::nullopt;
    return Sides{*found, limit};
}

Decimal without_sign(const Decimal& number) { return {std::abs(number.coefficient()), number.scale()}; }

std::optional<Sides> sides_of(const LimitRow& row, const Decimal& used, const std::optional<Decimal>& fresh) {
    if (row.basis == Basis::absolute) return Sides{used, row.value};
    if (!fresh) return std::nullopt;
    switch (row.basis) {
    case Basis::change:
    case Basis::rise:
        return per_cent(subtract(used, *fresh), row.value, *fresh);
    case Basis::size_of_change:
        return per_cent(subtract(used, *fresh).map(without_sign), row.value, *fresh);
    case Basis::loss:
        return per_cent(subtract(*fresh, used), row.value, *fresh);
    case Basis::share:
        return per_cent(used, row.value, *fresh);
    case Basis::rise_amount:
        return amounts(subtract(used, *fresh), row.value);
    case Basis::drop:
        return amounts(subtract(*fresh, used), row.value);
    case Basis::absolute:
    case Basis::detection:
    case Basis::trend:
        break;
    }
    return std::nullopt;
}

bool needs_new_oil(Basis basis) {
    return basis != Basis::absolute && basis != Basis::detection && basis != Basis::trend;
}

/// The level of the rule that comes first, the end of the normal band apart.
const LimitRow* first_level(const LimitRule& rule) {
    const auto found = std::find_if(rule.rows.begin(), rule.rows.end(),
                                    [](const LimitRow& row) { return !row.ends_normal(); });
    return found == rule.rows.end() ? nullptr : &*found;
}

bool is_past_normal_band(const LimitRule& rule, const Decimal& used, const std::optional<Decimal>& fresh) {
    return std::any_of(rule.rows.begin(), rule.rows.end(), [&](const LimitRow& row) {
        return row.ends_normal() && reaches(row, used, fresh) == false;
    });
}

bool is_single_upper(const LimitRule& rule) {
    const bool kind = rule.basis == Basis::absolute || rule.basis == Basis::change ||
                      rule.basis == Basis::rise || rule.basis == Basis::size_of_change;
    return kind && rule.rows.size() == 1 && rule.rows.front().is_upper();
}

/// found >= percent/100 of the limit.
bool nears(const LimitRow& row, int percent, const Decimal& used, const std::optional<Decimal>& fresh) {
    const auto sides = sides_of(row, used, fresh);
    if (!sides) return false;
    const auto found = multiply(sides->found, Decimal{100});
    const auto line = multiply(sides->limit, Decimal{percent});
    return found && line && *found >= *line;
}

RuleVerdict without_verdict(const LimitRule& rule, Unrated reason) {
    RuleVerdict verdict;
    verdict.rule = &rule;
    verdict.row = first_level(rule);
    verdict.unrated = reason;
    return verdict;
}

RuleVerdict standing(const LimitRule& rule, Ladder ladder) {
    RuleVerdict verdict;
    verdict.rule = &rule;
    verdict.row = first_level(rule);
    verdict.ladder = ladder;
    return verdict;
}

RuleVerdict at_level(const LimitRule& rule, const LimitRow& row) {
    RuleVerdict verdict = standing(rule, row.ladder);
    verdict.row = &row;
    verdict.reached = true;
    return verdict;
}

RuleVerdict short_of_levels(const LimitRule& rule, const std::optional<int>& watch_percent,
                            const Decimal& used, const std::optional<Decimal>& fresh) {
    RuleVerdict verdict = standing(rule, Ladder::within);
    verdict.between_levels = is_past_normal_band(rule, used, fresh);
    verdict.our_watch_line =
        watch_percent && is_single_upper(rule) && nears(rule.rows.front(), *watch_percent, used, fresh);
    if (verdict.between_levels || verdict.our_watch_line) verdict.ladder = Ladder::watch;
    return verdict;
}

RuleVerdict judge_number(const LimitRule& rule, const std::optional<int>& watch_percent, const Decimal& used,
                         const std::optional<Decimal>& fresh) {
    const LimitRow* worst = nullptr;
    for (const LimitRow& row : rule.rows) {
        const auto hit = reaches(row, used, fresh);
        if (!hit) return without_verdict(rule, Unrated::too_many_digits);
        if (*hit && !row.ends_normal() && (worst == nullptr || row.ladder >= worst->ladder)) worst = &row;
    }
    if (worst != nullptr) return at_level(rule, *worst);
    return short_of_levels(rule, watch_percent, used, fresh);
}

RuleVerdict judge_below(const LimitRule& rule, const Decimal& limit_of_detection,
                        const std::optional<Decimal>& fresh) {
    if (rule.offends_upwards_only()) {
        const LimitRow* first = first_level(rule);
        const auto order = held_against(*first, limit_of_detection, fresh);
        if (!order) return without_verdict(rule, Unrated::too_many_digits);
        if (*order > 0) return without_verdict(rule, Unrated::detection_limit);
        return standing(rule, Ladder::within);
    }
    const RuleVerdict none = judge_number(rule, std::nullopt, Decimal{0}, fresh);
    const RuleVerdict most = judge_number(rule, std::nullopt, limit_of_detection, fresh);
    return none.ladder == most.ladder ? most : without_verdict(rule, Unrated::detection_limit);
}

RuleVerdict judge_detection(const LimitRule& rule, const Amount& amount) {
    const bool there = amount.state == ValueState::detected ||
                       (amount.state == ValueState::measured && amount.number > Decimal{0});
    return there ? at_level(rule, rule.rows.back()) : standing(rule, Ladder::within);
}

RuleVerdict judge_not_detected(const LimitRule& rule) {
    if (!rule.offends_upwards_only()) return without_verdict(rule, Unrated::amount_missing);
    RuleVerdict verdict = standing(rule, Ladder::within);
    verdict.no_detection_limit = true;
    return verdict;
}

} // namespace

std::optional<std::strong_ordering> held_against(const LimitRow& limit, const Decimal& used,
                                                 const std::optional<Decimal>& fresh) {
    const auto sides = sides_of(limit, used, fresh);
    if (!sides) return std::nullopt;
    return sides->found <=> sides->limit;
}

std::optional<bool> reaches(const LimitRow& limit, const Decimal& used, const std::optional<Decimal>& fresh) {
    const auto order = held_against(limit, used, fresh);
    if (!order) return std::nullopt;
    return satisfies(limit.op, *order);
}

RuleVerdict judge(const LimitRule& rule, const std::optional<int>& watch_percent, const Amount& amount,
                  const std::optional<Decimal>& fresh) {
    if (rule.basis == Basis::detection) return judge_detection(rule, amount);
    if (needs_new_oil(rule.basis) && (!fresh || *fresh <= Decimal{0}))
        return without_verdict(rule, Unrated::no_reference);
    switch (amount.state) {
    case ValueState::measured:
        return judge_number(rule, watch_percent, amount.number, fresh);
    case ValueState::below:
        return judge_below(rule, amount.number, fresh);
    case ValueState::not_detected:
        return judge_not_detected(rule);
    case ValueState::detected:
        break;
    }
    return without_verdict(rule, Unrated::amount_missing);
}

} // namespace sumpbook::oil
