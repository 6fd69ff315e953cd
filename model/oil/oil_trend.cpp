// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_trend.h"

#include "model/oil/methods.h"
#include "model/oil/oil_name.h"
#include "model/oil/quantities.h"
#include "model/oil/rate_sample.h"
#include "model/oil/reference_oil.h"
#include "model/oil/viscosity_rule.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

constexpr double interval_confidence = 0.95;
constexpr double days_a_year = 365.25;

using Filled = std::vector<FilledSample>;

Filled filled_samples(const OilRecord& record, std::string_view compartment) {
    Filled samples;
    for (const LogEntry* entry : used_samples(*record.bike, compartment))
        samples.push_back(fill_of(record, *entry));
    return samples;
}

bool of_one_fill(const FilledSample& a, const FilledSample& b) {
    return a.fill && b.fill && a.fill->oil_change_id == b.fill->oil_change_id;
}

TrendPoint point_of(const FilledSample& sample, const SampleValue& value, std::size_t fill) {
    TrendPoint point;
    point.sample = sample_label(*sample.entry);
    point.entry_id = sample.entry->id;
    point.date = sample.entry->value.date;
    point.fill = fill;
    point.oil_name = oil_name_of(sample);
    point.position = sample.position;
    point.distance_on_oil = sample.distance_on_oil;
    point.value = value;
    return point;
}

/// The element's rise since the sample before in the same fill.
std::optional<ElementRate> rate_since(const OilRecord& record, const FilledSample& earlier,
                                      const FilledSample& later, const SampleValue& value) {
    const Quantity* quantity = find_quantity(value.quantity);
    const SampleValue* before = value_in(*earlier.sample, value.quantity);
    if (quantity == nullptr || quantity->unit != "mg/kg" || before == nullptr) return std::nullopt;
    const auto span = oil::between(record, earlier, later);
    return span ? element_rate(*before, value, *span, std::nullopt) : std::nullopt;
}

std::optional<WearRate> wear_over_fill(const OilRecord& record, const FilledSample& sample,
                                       const FilledSample* last_of_fill_before, const SampleValue& value) {
    const bool leaded = record.bike->details.value.fuel == FuelType::leaded_petrol;
    if (!is_wear_metal(value.quantity) || (leaded && value.quantity == "Pb")) return std::nullopt;
    const bool adjoins =
        last_of_fill_before != nullptr && is_fill_before(record, *last_of_fill_before, sample);
    const FilledSample* before = adjoins ? last_of_fill_before : nullptr;
    return value.state == ValueState::below ? wear_rate_at_most(record, sample, before, value.quantity)
                                            : wear_rate(record, sample, before, value.quantity);
}

/// Every sample in which the quantity was measured, with its rates.
std::vector<TrendPoint> points_of(const OilRecord& record, const Filled& samples, std::string_view quantity) {
    std::vector<TrendPoint> points;
    std::size_t fill = 0;
    const FilledSample* last_of_fill_before = nullptr;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const FilledSample& sample = samples[i];
        const bool same = i > 0 && of_one_fill(samples[i - 1], sample);
        if (!same) {
            ++fill;
            last_of_fill_before = i > 0 ? &samples[i - 1] : nullptr;
        }
        const SampleValue* value = value_in(*sample.sample, quantity);
        if (value == nullptr) continue;
        TrendPoint point = point_of(sample, *value, fill);
        if (same) point.since_last = rate_since(record, samples[i - 1], sample, *value);
        point.ends_fill = i + 1 == samples.size() || !of_one_fill(sample, samples[i + 1]);
        if (point.ends_fill) point.wear = wear_over_fill(record, sample, last_of_fill_before, *value);
        points.push_back(std::move(point));
    }
    return points;
}

/// One number of the series with the point it came from.
struct Chosen {
    const TrendPoint* point = nullptr;
    stats::CensoredValue value;
};

/// The value in the quantity's own unit; absent where it is not an amount.
std::optional<stats::CensoredValue> amount_of(const SampleValue& value, const std::string& unit) {
    const bool below = value.state == ValueState::below;
    if (!below && value.state != ValueState::measured) return std::nullopt;
    const auto number = in_oil_unit(value.number, value.unit.empty() ? unit : value.unit, unit);
    if (!number) return std::nullopt;
    return stats::CensoredValue{number->to_double(), below};
}

bool compares_by_method(const std::string& quantity) { return quantity == "tbn" || quantity == "flash"; }

std::vector<Chosen> values_by_fill(QuantityTrend& trend) {
    std::vector<Chosen> chosen;
    const auto method = method_of(trend.quantity, trend.points.back().value.method);
    bool other_method = false;
    for (const TrendPoint& point : trend.points) {
        if (!point.ends_fill) continue;
        const auto amount = amount_of(point.value, trend.unit);
        const bool differs =
            compares_by_method(trend.quantity) && method_of(trend.quantity, point.value.method) != method;
        other_method = other_method || differs;
        if (amount && !differs) chosen.push_back({&point, *amount});
    }
    if (other_method)
        trend.notes.emplace_back("Values by another method than the latest are left out: methods that differ "
                                 "must not be compared.");
    return chosen;
}

std::vector<Chosen> wear_by_fill(QuantityTrend& trend) {
    std::vector<Chosen> chosen;
    std::size_t without = 0;
    for (const TrendPoint& point : trend.points) {
        if (!point.ends_fill) continue;
        if (point.wear)
            chosen.push_back({&point, {point.wear->per_1000km(), point.value.state == ValueState::below}});
        else
            ++without;
    }
    if (without > 0)
        trend.notes.push_back(std::to_string(without) + (without == 1 ? " fill is" : " fills are") +
                              " left out: how far the oil had run, or the amount, is not known.");
    return chosen;
}

double years_between(const Date& from, const Date& to) {
    const auto days = std::chrono::sys_days{to} - std::chrono::sys_days{from};
    return static_cast<double>(days.count()) / days_a_year;
}

void put_series(QuantityTrend& trend, const std::vector<Chosen>& chosen) {
    trend.along_distance =
        std::all_of(chosen.begin(), chosen.end(), [](const Chosen& one) { return one.point->position; });
    if (!trend.along_distance)
        trend.notes.emplace_back("The odometer is not known at every sample: held against time instead.");
    for (const Chosen& one : chosen) {
        trend.series.push_back(one.value);
        trend.below += one.value.below ? 1U : 0U;
        trend.along.push_back(trend.along_distance
                                  ? one.point->position->km() / 1000
                                  : years_between(chosen.front().point->date, one.point->date));
    }
}

TrendWord word_of(const stats::MannKendall& test) {
    if (test.p_two_sided > trend_p || test.s == 0) return TrendWord::steady;
    return test.s > 0 ? TrendWord::rising : TrendWord::falling;
}

void put_statistics(QuantityTrend& trend) {
    const auto ranks = stats::ranked_numbers(trend.series);
    trend.test = stats::mann_kendall(trend.along, ranks);
    if (trend.test) trend.word = word_of(*trend.test);
    trend.change = stats::change_point(ranks);
    trend.summary = stats::summary_of_censored(trend.series);
    if (trend.below > 0) return;
    trend.line = stats::fit_line(trend.along, ranks);
    trend.median_line = stats::theil_sen(trend.along, ranks);
    trend.range = stats::slope_interval(trend.along, ranks, interval_confidence);
    trend.limits = stats::individuals_limits(ranks);
}

/// The lowest limits first; of several rules the one that begins lowest.
std::vector<LimitRow> levels_by(const RuleChoice& choice, const std::string& unit) {
    std::vector<LimitRow> lowest;
    for (const LimitRule* rule : choice.rules) {
        std::vector<LimitRow> rows;
        for (const LimitRow& row : rule->rows) {
            const bool level = row.basis == Basis::absolute && row.is_upper() && !row.ends_normal();
            if (level && row.unit == unit) rows.push_back(row);
        }
        if (rows.empty()) continue;
        if (lowest.empty() || rows.front().value < lowest.front().value) lowest = rows;
    }
    return lowest;
}

/// What the latest value is judged by: limits, new oil and grade.
void put_levels(QuantityTrend& trend, const RatingBasis& basis) {
    const auto id = set_in(basis.profile, trend.quantity);
    const LimitSet* set = id ? find_limit_set(*id) : nullptr;
    if (set != nullptr) {
        const auto method = method_of(trend.quantity, trend.points.back().value.method);
        trend.set = set->id;
        trend.levels = levels_by(
            choose_rules(*set, trend.quantity, method, basis.engine, basis.profile.chosen), trend.unit);
    }
    trend.grade = grade_held_to(basis.reference);
    const auto fresh = basis.reference.value(trend.quantity);
    const auto amount = fresh ? amount_of(*fresh, trend.unit) : std::nullopt;
    if (amount && !amount->below) trend.new_oil = amount->number;
}

QuantityTrend trend_of(const OilRecord& record, const Filled& samples, const Quantity& quantity,
                       const Profile& profile) {
    QuantityTrend trend;
    trend.bike = record.bike->details.value.name;
    trend.quantity = quantity.slug;
    trend.unit = quantity.unit;
    trend.dial_unit = record.bike->details.value.odometer_unit;
    trend.points = points_of(record, samples, quantity.slug);
    if (trend.points.empty()) return trend;
    const bool wears = std::any_of(trend.points.begin(), trend.points.end(),
                                   [](const TrendPoint& point) { return point.wear.has_value(); });
    trend.of = wears ? TrendOf::wear_rate : TrendOf::value;
    put_series(trend, wears ? wear_by_fill(trend) : values_by_fill(trend));
    put_statistics(trend);
    put_levels(trend, rating_basis(record, samples.back(), profile));
    return trend;
}

} // namespace

std::string_view slug(TrendWord word) {
    static constexpr std::string_view words[] = {"too-few", "steady", "rising", "falling"};
    return words[static_cast<std::size_t>(word)];
}

bool QuantityTrend::latest_is_unusual() const {
    if (!limits || series.empty()) return false;
    return series.back().number > limits->upper || series.back().number < limits->lower;
}

std::vector<QuantityTrend> oil_trends(const OilRecord& record, const Profile& profile) {
    std::vector<QuantityTrend> trends;
    for (const auto& [compartment, fills] : record.fills) {
        const Filled samples = filled_samples(record, compartment);
        for (const Quantity& quantity : sample_quantities()) {
            QuantityTrend trend = trend_of(record, samples, quantity, profile);
            if (trend.points.empty()) continue;
            trend.compartment = compartment;
            trends.push_back(std::move(trend));
        }
    }
    return trends;
}

} // namespace sumpbook::oil
