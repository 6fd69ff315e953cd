// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_life_levels.h"

#include "model/oil/methods.h"
#include "model/oil/quantities.h"
#include "model/oil/viscosity_rule.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

constexpr std::string_view half_life_source =
    "Half of the new base number, where the acid number starts to climb: "
    "https://reliableplant.com/Read/22886/optimizing-oil-drain-intervals";

LifeMark mark_of(LifeMarkKind kind, const SampleValue& used) {
    LifeMark mark;
    mark.kind = kind;
    mark.quantity = used.quantity;
    mark.unit = find_quantity(used.quantity)->unit;
    return mark;
}

/// The new oil's value in the quantity's own unit, by the same method where methods matter.
std::optional<double> fresh_of(const SampleValue& used, const RatingBasis& basis) {
    const auto fresh = basis.reference.value(used.quantity);
    if (!fresh || fresh->state != ValueState::measured) return std::nullopt;
    const std::string unit = find_quantity(used.quantity)->unit;
    const bool differs =
        used.quantity == "tbn" && method_of("tbn", used.method) != method_of("tbn", fresh->method);
    const auto number =
        differs ? std::nullopt : in_oil_unit(fresh->number, fresh->unit.empty() ? unit : fresh->unit, unit);
    return number && *number > Decimal{0} ? std::optional<double>(number->to_double()) : std::nullopt;
}

/// The value at which the limit is just reached; absent without the new oil's value it is held against.
std::optional<double> level_of(const LimitRow& row, const std::optional<double>& fresh) {
    const double limit = row.value.to_double();
    if (row.basis == Basis::absolute) return limit;
    if (!fresh) return std::nullopt;
    switch (row.basis) {
    case Basis::change:
    case Basis::rise:
        return *fresh * (1 + limit / 100);
    case Basis::loss:
        return *fresh * (1 - limit / 100);
    case Basis::share:
        return *fresh * limit / 100;
    case Basis::rise_amount:
        return *fresh + limit;
    case Basis::drop:
        return *fresh - limit;
    case Basis::absolute:
    case Basis::size_of_change:
    case Basis::detection:
    case Basis::trend:
        break;
    }
    return std::nullopt;
}

bool falls_to(const LimitRow& row) {
    const bool lost = row.basis == Basis::loss || row.basis == Basis::drop;
    return lost == row.is_upper();
}

const LimitSet* set_for(const std::string& quantity, const RatingBasis& basis) {
    const auto chosen = set_in(basis.profile, quantity);
    const auto id = chosen ? chosen : set_in(default_profile(), quantity);
    return id ? find_limit_set(*id) : nullptr;
}

/// The mildest level of a rule that says act, once for a fall and once for a rise.
std::vector<const LimitRow*> first_acts(const LimitRule& rule) {
    std::vector<const LimitRow*> rows;
    for (const LimitRow& row : rule.rows) {
        const bool same_way = std::any_of(rows.begin(), rows.end(), [&](const LimitRow* other) {
            return falls_to(*other) == falls_to(row);
        });
        if (row.ladder == Ladder::act && !row.ends_normal() && row.basis != Basis::detection && !same_way)
            rows.push_back(&row);
    }
    return rows;
}

LifeMark mark_by(const LimitRow& row, const LimitSet& set, const SampleValue& used,
                 const std::optional<double>& fresh) {
    LifeMark mark = mark_of(LifeMarkKind::set_limit, used);
    mark.falling = falls_to(row);
    mark.set = set.id;
    mark.source = row.source;
    if (const auto level = level_of(row, fresh))
        mark.level = *level;
    else
        mark.unknown = "The limit is held against the new oil, whose value by this method is not known.";
    return mark;
}

std::vector<LifeMark> set_marks(const SampleValue& used, const RatingBasis& basis,
                                const std::optional<double>& fresh) {
    std::vector<LifeMark> marks;
    const LimitSet* set = set_for(used.quantity, basis);
    if (set == nullptr || set->id == grade_set) return marks;
    const auto method = method_of(used.quantity, used.method);
    const RuleChoice choice = choose_rules(*set, used.quantity, method, basis.engine, basis.profile.chosen);
    const std::string unit = find_quantity(used.quantity)->unit;
    for (const LimitRule* rule : choice.rules) {
        if (rule->basis == Basis::absolute && rule->rows.front().unit != unit) continue;
        for (const LimitRow* row : first_acts(*rule))
            marks.push_back(mark_by(*row, *set, used, fresh));
    }
    return marks;
}

LifeMark half_mark(const SampleValue& used, const std::optional<double>& fresh) {
    LifeMark mark = mark_of(LifeMarkKind::half_base_number, used);
    mark.method = method_of("tbn", used.method).value_or("");
    mark.source = half_life_source;
    if (fresh)
        mark.level = *fresh / 2;
    else
        mark.unknown = "The new oil's base number by this method is not known.";
    return mark;
}

/// The viscosity at which the grade rule says act: falling at most -20 %, and -10 % once out of grade;
/// rising +20 %. Out of its grade alone it says watch.
std::vector<LifeMark> grade_marks(const SampleValue& used, const RatingBasis& basis,
                                  const std::optional<double>& fresh) {
    std::vector<LifeMark> marks;
    const LimitSet& set = *find_limit_set(grade_set);
    const auto grade = used.quantity == "kv100" ? grade_held_to(basis.reference) : std::nullopt;
    const auto band = grade ? band_of(*grade) : std::nullopt;
    const auto put = [&](LifeMarkKind kind, double level, bool falling) {
        LifeMark mark = mark_of(kind, used);
        mark.level = level;
        mark.falling = falling;
        mark.decides = kind == LifeMarkKind::viscosity;
        mark.set = set.id;
        mark.source = set.source;
        marks.push_back(std::move(mark));
    };
    if (band) put(LifeMarkKind::leaves_grade, band->from_mm2_s.to_double(), true);
    if (!fresh) return marks;
    const double out_of_grade = band ? std::min(0.9 * *fresh, band->from_mm2_s.to_double()) : 0.8 * *fresh;
    put(LifeMarkKind::viscosity, std::max(0.8 * *fresh, out_of_grade), true);
    put(LifeMarkKind::viscosity, 1.2 * *fresh, false);
    return marks;
}

} // namespace

std::vector<LifeMark> life_levels(const SampleValue& used, const RatingBasis& basis) {
    const auto fresh = fresh_of(used, basis);
    auto marks = set_marks(used, basis, fresh);
    const bool viscosity = used.quantity == "kv100" || used.quantity == "kv40";
    if (viscosity && marks.empty()) marks = grade_marks(used, basis, fresh);
    if (used.quantity == "tbn") marks.insert(marks.begin(), half_mark(used, fresh));
    return marks;
}

} // namespace sumpbook::oil
