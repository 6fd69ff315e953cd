// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/fuel_findings.h"

#include "model/stats/median.h"
#include "model/usage/fuel.h"

#include <map>

namespace sumpbook::review {
namespace {

/// The median of enough figures; absent for too few, or where it is no measure.
std::optional<double> usual(const std::vector<double>& figures) {
    if (figures.size() < fewest_to_compare) return std::nullopt;
    const auto middle = stats::median(figures);
    return middle && *middle > 0 ? middle : std::nullopt;
}

bool is_far_outside(double figure, double median) {
    return figure > median * far_outside_factor || figure < median / far_outside_factor;
}

std::string text(double number, int scale) { return decimal_from_double(number, scale).text(); }

std::string stretch_sentence(const usage::FuelSpan& span, DistanceUnit unit, double median) {
    const std::string over = in_unit(span.distance, unit, 0).text() + " " + std::string(symbol(unit));
    return "From the full fill before it " + text(span.fuel.litres(), 2) + " L over " + over + " would be " +
           text(span.consumption->litres_per_100km, 1) +
           " L/100 km; the middle one of this bike's stretches is " + text(median, 1) +
           " L/100 km. Look at both readings, at the volume, and whether a stop between them "
           "was not recorded.";
}

void add_consumption(const Bike& bike, std::vector<Finding>& findings) {
    const auto use = usage::fuel_use(bike, usage::OdometerSeries::of(bike));
    std::vector<double> figures;
    for (const auto& span : use.spans) {
        if (span.consumption) figures.push_back(span.consumption->litres_per_100km);
    }
    const auto median = usual(figures);
    if (!median) return;
    for (const auto& span : use.spans) {
        if (!span.consumption || !is_far_outside(span.consumption->litres_per_100km, *median)) continue;
        Finding finding = make_finding("consumption-unusual", bike.details.value.name,
                                       stretch_sentence(span, bike.details.value.odometer_unit, *median));
        finding.entry_ids = {span.to_id, span.from_id};
        findings.push_back(std::move(finding));
    }
}

struct Price {
    double of_a_litre = 0;
    Currency currency;
};

std::optional<Price> price_of_a_litre(const Entry& entry) {
    const auto& fuel = std::get<Fuel>(entry.body);
    if (fuel.price) {
        const auto litre = volume_of({Decimal{1}, fuel.price->per});
        return Price{fuel.price->amount.to_double() / litre->litres(), fuel.price->currency};
    }
    if (!entry.paid || !fuel.volume) return std::nullopt;
    const auto volume = volume_of(*fuel.volume);
    if (!volume || volume->litres() <= 0) return std::nullopt;
    return Price{amount(*entry.paid).to_double() / volume->litres(), entry.paid->currency};
}

void add_prices(const Bike& bike, std::vector<Finding>& findings) {
    std::map<Currency, std::vector<double>> prices;
    for (const auto* entry : entries_of<Fuel>(bike)) {
        if (const auto price = price_of_a_litre(entry->value))
            prices[price->currency].push_back(price->of_a_litre);
    }
    std::map<Currency, std::optional<double>> medians;
    for (const auto& [currency, figures] : prices)
        medians[currency] = usual(figures);
    for (const auto* entry : entries_of<Fuel>(bike)) {
        const auto price = price_of_a_litre(entry->value);
        if (!price) continue;
        const auto& median = medians.at(price->currency);
        if (!median || !is_far_outside(price->of_a_litre, *median)) continue;
        const std::string unit = " " + std::string(price->currency.code()) + "/L";
        Finding finding = make_finding("fuel-price-unusual", bike.details.value.name,
                                       "It comes to " + text(price->of_a_litre, 3) + unit +
                                           "; the middle one of this bike's fills is " + text(*median, 3) +
                                           unit + ". Look at the volume and at what was paid.");
        finding.entry_ids = {entry->id};
        findings.push_back(std::move(finding));
    }
}

} // namespace

std::vector<Finding> fuel_findings(const Bike& bike) {
    std::vector<Finding> findings;
    add_consumption(bike, findings);
    add_prices(bike, findings);
    return findings;
}

} // namespace sumpbook::review
