// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/rate_sample.h"

#include "model/oil/quantities.h"
#include "model/oil/viscosity_rule.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

bool is_viscosity(const std::string& quantity) { return quantity == "kv100" || quantity == "kv40"; }

/// By a set of the profile that holds limits for viscosity; absent where the GRADE rule is to judge.
std::optional<RatedValue> viscosity_by_chosen_set(const SampleValue& value, const RatingBasis& basis) {
    const auto id = set_in(basis.profile, value.quantity);
    if (!id || *id == grade_set) return std::nullopt;
    RatedValue rated = rate_value(value, basis);
    const bool no_fit = rated.unrated == Unrated::no_limit || rated.unrated == Unrated::other_engines ||
                        rated.unrated == Unrated::other_grade;
    return no_fit ? std::nullopt : std::optional<RatedValue>(std::move(rated));
}

RatedValue rate_any(const SampleValue& value, const RatingBasis& basis) {
    if (!is_viscosity(value.quantity)) return rate_value(value, basis);
    if (auto rated = viscosity_by_chosen_set(value, basis)) return *rated;
    RatedValue rated = rate_viscosity(value, basis);
    if (basis.profile.chosen)
        rated.notes.push_back("Judged by the grade rule: the profile " + basis.profile.name +
                              " has no limit for it that fits.");
    return rated;
}

bool is_judged_by_grade(const RatedValue& value, std::string_view quantity) {
    return value.written.quantity == quantity && value.set == grade_set && !value.unrated;
}

/// Of two viscosities by the GRADE rule the one at 100 C decides.
void leave_one_viscosity(std::vector<RatedValue>& values) {
    const bool at_100 = std::any_of(values.begin(), values.end(), [](const RatedValue& value) {
        return is_judged_by_grade(value, "kv100");
    });
    if (!at_100) return;
    for (RatedValue& value : values) {
        if (!is_judged_by_grade(value, "kv40")) continue;
        value.ladder = Ladder::unrated;
        value.unrated = Unrated::judged_elsewhere;
        value.notes.clear();
    }
}

void put_rate(RatedValue& value, const FilledSample& earlier, const BetweenSamples& span) {
    const Quantity* quantity = find_quantity(value.written.quantity);
    const SampleValue* before = value_in(*earlier.sample, value.written.quantity);
    if (quantity == nullptr || quantity->unit != "mg/kg" || before == nullptr) return;
    value.rate = element_rate(*before, value.written, span, value.trend_limit);
    if (!value.rate || value.rate->abnormal != true) return;
    value.ladder = Ladder::act;
    value.limit = value.trend_limit;
    value.level = value.trend_limit->level;
    value.source = value.trend_limit->source;
}

/// The oil change the sample belongs to; of an oil filled in before the record began, what the sample names.
OilChange oil_of(const FilledSample& sample) {
    OilChange oil;
    if (sample.oil_change != nullptr) oil = *sample.oil_change;
    if (!oil.oil_name) oil.oil_name = sample.sample->oil_name;
    return oil;
}

std::size_t place_of(const RatedValue& value) {
    const auto& all = sample_quantities();
    const auto found = std::find_if(
        all.begin(), all.end(), [&](const Quantity& each) { return each.slug == value.written.quantity; });
    return static_cast<std::size_t>(found - all.begin());
}

} // namespace

RatingBasis rating_basis(const OilRecord& record, const FilledSample& sample, const Profile& profile) {
    RatingBasis basis;
    basis.profile = profile;
    const OilChange oil = oil_of(sample);
    basis.reference = reference_oil(*record.garage, *record.bike, &oil, sample.entry->value.date);
    const BikeDetails& bike = record.bike->details.value;
    basis.engine = {bike.fuel, bike.block, basis.reference.grade};
    return basis;
}

std::vector<RatedValue> rate_sample(const OilRecord& record, const FilledSample& sample,
                                    const SampleHistory& history, const RatingBasis& basis) {
    std::vector<RatedValue> values;
    for (const SampleValue& value : sample.sample->values)
        values.push_back(rate_any(value, basis));
    leave_one_viscosity(values);
    if (history.previous_in_fill) {
        const auto span = between(record, *history.previous_in_fill, sample);
        for (RatedValue& value : values) {
            if (span) put_rate(value, *history.previous_in_fill, *span);
        }
    }
    std::stable_sort(values.begin(), values.end(),
                     [](const RatedValue& a, const RatedValue& b) { return place_of(a) < place_of(b); });
    return values;
}

} // namespace sumpbook::oil
