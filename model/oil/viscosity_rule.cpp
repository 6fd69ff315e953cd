// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_rule.h"

#include "model/oil/quantities.h"
#include "model/oil/sae_grade_shear.h"
#include "model/oil/viscosity_change.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

std::optional<BandPosition> position_of(const std::optional<SaeGrade>& grade, const Decimal& kv100) {
    const auto band = grade ? band_of(*grade) : std::nullopt;
    if (!band) return std::nullopt;
    return position_in(*band, kv100);
}

const RatedValue* find(const std::vector<RatedValue>& values, std::string_view quantity) {
    const auto found = std::find_if(values.begin(), values.end(), [&](const RatedValue& value) {
        return value.written.quantity == quantity && value.written.state == ValueState::measured;
    });
    return found == values.end() ? nullptr : &*found;
}

void find_index(ViscosityFindings& findings, const RatedValue* kv40, const RatedValue* kv100) {
    if (kv40 == nullptr || kv100 == nullptr) return;
    if (const auto index =
            viscosity_index(kv40->written.number.to_double(), kv100->written.number.to_double()))
        findings.index = *index;
}

void find_change(ViscosityFindings& findings, const RatedValue& used, const RatingBasis& basis) {
    const auto fresh = fresh_number(used);
    if (!fresh) return;
    const auto change = viscosity_change_percent(*fresh, used.written.number);
    if (!change) return;
    findings.change_percent = *change;
    findings.reference = basis.reference.named(used.written.quantity);
    const bool petrol_engine = basis.engine.fuel && *basis.engine.fuel != FuelType::diesel;
    if (!petrol_engine || basis.reference.is_grade_middle(used.written.quantity)) return;
    if (const auto petrol =
            petrol_from_viscosity(fresh->to_double(), used.written.number.to_double(), *findings.judged_at))
        findings.petrol = *petrol;
}

void find_grade(ViscosityFindings& findings, const RatedValue* kv100, const RatingBasis& basis) {
    findings.grade = grade_held_to(basis.reference);
    findings.grade_is_recorded = basis.reference.grade.has_value();
    if (!findings.grade) return;
    findings.after_shear_floor_mm2_s = after_shear_floor_mm2_s(*findings.grade);
    if (kv100 == nullptr) return;
    findings.in_band = position_of(findings.grade, kv100->written.number);
    if (findings.after_shear_floor_mm2_s)
        findings.below_shear_floor = kv100->written.number < *findings.after_shear_floor_mm2_s;
}

} // namespace

std::optional<SaeGrade> grade_held_to(const ReferenceOil& reference) {
    if (reference.grade) return reference.grade;
    const auto fresh = reference.value("kv100");
    if (!fresh || fresh->state != ValueState::measured) return std::nullopt;
    const auto hot = grade_holding(fresh->number);
    if (!hot) return std::nullopt;
    return SaeGrade{std::nullopt, *hot};
}

Ladder viscosity_ladder(const Decimal& fresh_mm2_s, const Decimal& used_mm2_s,
                        const std::optional<bool>& in_grade) {
    const auto above = [&](int percent) {
        return compare_viscosity_change(fresh_mm2_s, used_mm2_s, Decimal{percent}) > 0;
    };
    const bool thickened = compare_viscosity_change(fresh_mm2_s, used_mm2_s, Decimal{20}) >= 0;
    if (thickened) return Ladder::act;
    if (!in_grade.value_or(true)) return above(-10) ? Ladder::watch : Ladder::act;
    if (above(-10)) return Ladder::within;
    return above(-20) ? Ladder::watch : Ladder::act;
}

RatedValue rate_viscosity(const SampleValue& value, const RatingBasis& basis) {
    RatedValue rated;
    rated.written = value;
    rated.fresh = basis.reference.value(value.quantity);
    rated.set = grade_set;
    rated.source = find_limit_set(grade_set)->source;
    const auto used = measured_number(value);
    const auto fresh = fresh_number(rated);
    if (!used || !fresh || *fresh <= Decimal{0}) {
        rated.unrated = used ? Unrated::no_reference : Unrated::amount_missing;
        return rated;
    }
    std::optional<bool> in_grade;
    if (value.quantity == "kv100") {
        if (const auto position = position_of(grade_held_to(basis.reference), *used))
            in_grade = *position == BandPosition::inside;
    } else {
        rated.notes.emplace_back(
            "Whether the oil is still in its SAE grade cannot be seen at 40 C: the change alone decides.");
    }
    rated.ladder = viscosity_ladder(*fresh, *used, in_grade);
    return rated;
}

ViscosityFindings viscosity_findings(const std::vector<RatedValue>& values, const RatingBasis& basis) {
    ViscosityFindings findings;
    const RatedValue* kv40 = find(values, "kv40");
    const RatedValue* kv100 = find(values, "kv100");
    find_grade(findings, kv100, basis);
    find_index(findings, kv40, kv100);
    const bool at_100 = kv100 != nullptr && (kv100->fresh || kv40 == nullptr || !kv40->fresh);
    const RatedValue* judged = at_100 ? kv100 : kv40;
    if (judged == nullptr) return findings;
    findings.judged_at = at_100 ? ViscosityAt::celsius_100 : ViscosityAt::celsius_40;
    find_change(findings, *judged, basis);
    return findings;
}

} // namespace sumpbook::oil
