// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/wear_rate.h"

#include "model/oil/mass_balance.h"
#include "model/oil/precision.h"
#include "model/oil/quantities.h"
#include "model/oil/reference_oil.h"
#include "model/stats/mann_kendall.h"
#include "model/stats/median.h"

#include <algorithm>

namespace sumpbook::oil {
namespace {

/// Fewest earlier fills that say what is usual. DESIGN.
constexpr std::size_t fewest_earlier_fills = 2;
constexpr double rising_p = 0.10;

using Notes = std::vector<std::string>;

std::optional<double> mg_kg(const SampleValue* value) {
    const auto amount = measured_mg_kg(value);
    return amount ? std::optional<double>(amount->to_double()) : std::nullopt;
}

std::optional<double> litres(const std::optional<WrittenVolume>& written) {
    if (!written) return std::nullopt;
    const auto volume = volume_of(*written);
    return volume && volume->litres() > 0 ? std::optional<double>(volume->litres()) : std::nullopt;
}

/// What was filled in, else what the compartment holds.
std::optional<double> sump_litres(const OilRecord& record, const FilledSample& sample) {
    if (sample.oil_change != nullptr) {
        if (const auto filled = litres(sample.oil_change->volume_in)) return filled;
    }
    for (const Compartment& each : record.bike->details.value.compartments) {
        if (each.slug != sample.sample->compartment) continue;
        const bool filter = sample.oil_change != nullptr && sample.oil_change->filter_changed == true;
        const auto with_filter = filter ? litres(each.holds_with_filter) : std::nullopt;
        return with_filter ? with_filter : litres(each.holds);
    }
    return std::nullopt;
}

/// Oil topped up before the sample was drawn.
struct ToppedUp {
    double litres = 0;
    double litres_same_day = 0; ///< Just before the sample.
    bool amount_unknown = false;
};

ToppedUp topped_up(const FilledSample& sample) {
    ToppedUp sum;
    if (!sample.fill) return sum;
    const Date& day = sample.entry->value.date;
    for (const auto& event : sample.fill->events) {
        const bool same_day = event.date == day && sample.sample->drawn == TopUpSide::after;
        if (event.date >= day && !same_day) continue;
        sum.litres += event.added.litres();
        if (same_day) sum.litres_same_day += event.added.litres();
        sum.amount_unknown = sum.amount_unknown || event.volume_unknown;
    }
    return sum;
}

/// Why the new oil is taken to hold none of an element.
std::string none_taken(const std::optional<SampleValue>& reference, std::string_view element) {
    const std::string name = quantity_name(element);
    if (reference && reference->state == ValueState::below) {
        const std::string unit = reference->unit.empty() ? "mg/kg" : reference->unit;
        return "The amount of " + name + " is below " + reference->number.text() + " " + unit +
               " in the new oil: 0 is taken.";
    }
    if (reference && reference->state == ValueState::not_detected)
        return "No " + name + " was detected in the new oil: 0 is taken.";
    return "How much " + name + " the new oil holds is not known: 0 is taken.";
}

double start_of(const OilRecord& record, const FilledSample& sample, const FilledSample* before,
                std::string_view element, Notes& notes) {
    const auto reference =
        reference_oil(*record.garage, *record.bike, sample.oil_change, sample.entry->value.date)
            .value(element);
    const auto fresh = mg_kg(reference ? &*reference : nullptr);
    if (!fresh) notes.push_back(none_taken(reference, element));
    const auto last = before != nullptr ? mg_kg(value_in(*before->sample, element)) : std::nullopt;
    if (!last) return fresh.value_or(0);
    const auto& own = record.bike->details.value.oil_carry_over;
    if (!own) notes.emplace_back("A tenth of the old oil is taken to have stayed in.");
    return carried_over_mg_kg(own ? own->to_double() : usual_carry_over, *last, fresh.value_or(0));
}

double without_fuel(const FilledSample& sample, double measured, Notes& notes) {
    const SampleValue* fuel = value_in(*sample.sample, "fuel");
    if (fuel == nullptr || fuel->state != ValueState::measured) return measured;
    const auto percent = in_oil_unit(fuel->number, fuel->unit.empty() ? "%" : fuel->unit, "%");
    const auto corrected = without_fuel_mg_kg(measured, percent ? percent->to_double() / 100 : 0);
    if (!corrected) return measured;
    notes.emplace_back("Corrected for the fuel in the oil.");
    return *corrected;
}

double without_top_ups(const OilRecord& record, const FilledSample& sample, double measured, double start,
                       Notes& notes) {
    const ToppedUp sum = topped_up(sample);
    if (sum.amount_unknown) notes.emplace_back("A top-up whose amount is not recorded is left out.");
    if (sum.litres <= 0) return measured;
    const auto sump = sump_litres(record, sample);
    if (!sump) {
        notes.emplace_back("Top-ups are not corrected for: how much oil the engine holds is not recorded.");
        return measured;
    }
    notes.emplace_back("Corrected for the oil topped up.");
    const auto before = before_top_up_mg_kg(measured, *sump, sum.litres_same_day);
    return without_make_up_mg_kg(before.value_or(measured), start, sum.litres / *sump);
}

std::optional<WearRate> rate_of(const OilRecord& record, const FilledSample& sample,
                                const FilledSample* before, std::string_view element, double mg_kg) {
    if (!sample.distance_on_oil || *sample.distance_on_oil <= Distance{}) return std::nullopt;
    WearRate rate;
    rate.element = element;
    rate.over = *sample.distance_on_oil;
    rate.measured_mg_kg = mg_kg;
    rate.start_mg_kg = start_of(record, sample, before, element, rate.notes);
    const double fuel_free = without_fuel(sample, mg_kg, rate.notes);
    rate.corrected_mg_kg = without_top_ups(record, sample, fuel_free, rate.start_mg_kg, rate.notes);
    return rate;
}

std::vector<double> rates_of(const std::vector<WearRate>& rates) {
    std::vector<double> numbers;
    for (const WearRate& rate : rates)
        numbers.push_back(rate.per_1000km());
    return numbers;
}

double median_distance_km(const WearHistory& history) {
    std::vector<double> distances;
    for (const WearRate& rate : history.earlier)
        distances.push_back(rate.over.km());
    return stats::median(distances).value_or(0);
}

} // namespace

bool is_fill_before(const OilRecord& record, const FilledSample& earlier, const FilledSample& later) {
    const auto& fills = record.fills_of(later.sample->compartment);
    const auto same = [](const std::optional<usage::OilFill>& sampled) {
        return [&](const usage::OilFill& fill) {
            return sampled && fill.oil_change_id == sampled->oil_change_id;
        };
    };
    const auto first = std::find_if(fills.begin(), fills.end(), same(earlier.fill));
    const auto second = std::find_if(fills.begin(), fills.end(), same(later.fill));
    return first != fills.end() && second != fills.end() && second - first == 1;
}

std::optional<WearRate> wear_rate(const OilRecord& record, const FilledSample& sample,
                                  const FilledSample* before, std::string_view element) {
    const auto measured = mg_kg(value_in(*sample.sample, element));
    return measured ? rate_of(record, sample, before, element, *measured) : std::nullopt;
}

std::optional<WearRate> wear_rate_at_most(const OilRecord& record, const FilledSample& sample,
                                          const FilledSample* before, std::string_view element) {
    const SampleValue* value = value_in(*sample.sample, element);
    if (value == nullptr || value->state != ValueState::below) return std::nullopt;
    const auto limit = in_oil_unit(value->number, value->unit.empty() ? "mg/kg" : value->unit, "mg/kg");
    return limit ? rate_of(record, sample, before, element, limit->to_double()) : std::nullopt;
}

WearHistory wear_history(const OilRecord& record, const FilledSample& sample, const SampleHistory& history,
                         std::string_view element) {
    WearHistory rates;
    const FilledSample* before = nullptr;
    const auto rate_of = [&](const FilledSample& one) {
        const bool adjoins = before != nullptr && is_fill_before(record, *before, one);
        auto rate = wear_rate(record, one, adjoins ? before : nullptr, element);
        before = &one;
        return rate;
    };
    for (const FilledSample& earlier : history.earlier_fills) {
        if (auto rate = rate_of(earlier)) rates.earlier.push_back(std::move(*rate));
    }
    rates.now = rate_of(sample);
    return rates;
}

std::optional<double> median_wear_per_1000km(const WearHistory& history) {
    return stats::median(rates_of(history.earlier));
}

bool wears_twice_as_fast(const WearHistory& history) {
    if (!history.now || history.earlier.size() < fewest_earlier_fills) return false;
    const WearRate& now = *history.now;
    const double usual = *median_wear_per_1000km(history);
    const auto precision = element_precision(now.element, now.measured_mg_kg);
    const double beyond_mg_kg = (now.per_1000km() - usual) * now.over.km() / 1000;
    return precision && now.per_1000km() >= 2 * usual && beyond_mg_kg > precision->reproducibility &&
           now.over.km() >= median_distance_km(history) / 2;
}

bool wear_keeps_rising(const WearHistory& history) {
    if (!history.now) return false;
    auto rates = rates_of(history.earlier);
    rates.push_back(history.now->per_1000km());
    std::vector<double> order;
    for (std::size_t i = 0; i < rates.size(); ++i)
        order.push_back(static_cast<double>(i));
    const auto trend = stats::mann_kendall(order, rates);
    return trend && trend->s > 0 && trend->p_two_sided <= rising_p;
}

} // namespace sumpbook::oil
