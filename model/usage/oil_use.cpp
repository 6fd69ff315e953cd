// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/oil_use.h"

#include "embedded/oil_consumption_csv.h"
#include "model/quantity/data_table.h"

#include <algorithm>

namespace sumpbook::usage {
namespace {

double per_1000km(double litres, Distance over) { return litres / over.km() * 1000; }

bool has_level(const OilEvent& event) { return event.litres_below_mark && event.distance; }

/// Between the first and the last known level.
void measure(FillOilUse& use) {
    const auto& events = use.fill.events;
    const auto first = std::ranges::find_if(events, has_level);
    const auto last = std::find_if(events.rbegin(), events.rend(), has_level);
    if (first == events.end() || *last->distance <= *first->distance) return;
    Volume added;
    for (auto event = std::next(first); event != last.base(); ++event) {
        if (event->volume_unknown) return;
        added += event->added;
    }
    use.litres_used = added.litres() + *last->litres_below_mark - *first->litres_below_mark;
    use.over = *last->distance - *first->distance;
    use.litres_per_1000km = per_1000km(*use.litres_used, *use.over);
}

void bound(FillOilUse& use) {
    const auto& events = use.fill.events;
    const auto is_top_up = [](const OilEvent& event) { return event.added > Volume{} && event.distance; };
    const auto last = std::find_if(events.rbegin(), events.rend(), is_top_up);
    if (last == events.rend() || !use.fill.oil_change_id || !events.front().distance) return;
    const Distance over = *last->distance - *events.front().distance;
    if (over > Distance{}) use.at_least_litres_per_1000km = per_1000km(use.topped_up.litres(), over);
}

FillOilUse use_of(const OilFill& fill) {
    FillOilUse use;
    use.fill = fill;
    for (const auto& event : fill.events)
        use.topped_up += event.added;
    measure(use);
    if (!use.litres_per_1000km) bound(use);
    return use;
}

std::optional<double> overall(const std::vector<FillOilUse>& fills, bool run_in) {
    double litres = 0;
    Distance over;
    for (const auto& use : fills) {
        if (use.fill.run_in != run_in || !use.litres_used) continue;
        litres += *use.litres_used;
        over += *use.over;
    }
    if (over <= Distance{}) return std::nullopt;
    return per_1000km(litres, over);
}

void compare_with_handbook(OilUseResult& result, const Decimal& figure) {
    result.against = OilUseAgainst::handbook;
    result.high_litres_per_1000km = figure.to_double();
}

void compare_with_published(OilUseResult& result) {
    result.against = OilUseAgainst::published;
    double low = 0;
    double high = 0;
    for (const auto& row : published_oil_use()) {
        if (row.run_in) continue;
        low = high > 0 ? std::min(low, row.litres_per_1000km) : row.litres_per_1000km;
        high = std::max(high, row.litres_per_1000km);
    }
    result.low_litres_per_1000km = low;
    result.high_litres_per_1000km = high;
}

OilUseVerdict verdict_on(double litres_per_1000km, const OilUseResult& against) {
    const bool above = litres_per_1000km > *against.high_litres_per_1000km;
    if (against.against == OilUseAgainst::handbook)
        return above ? OilUseVerdict::above : OilUseVerdict::within;
    if (above) return OilUseVerdict::above_range;
    return litres_per_1000km < *against.low_litres_per_1000km ? OilUseVerdict::below_range
                                                              : OilUseVerdict::in_range;
}

OilUseVerdict verdict_on(const FillOilUse& use, const OilUseResult& against) {
    if (use.fill.run_in) return OilUseVerdict::unknown;
    if (use.litres_per_1000km) return verdict_on(*use.litres_per_1000km, against);
    const auto& bound = use.at_least_litres_per_1000km;
    return bound && *bound > *against.high_litres_per_1000km ? verdict_on(*bound, against)
                                                             : OilUseVerdict::unknown;
}

void judge(OilUseResult& result) {
    if (result.litres_per_1000km) result.verdict = verdict_on(*result.litres_per_1000km, result);
    for (auto& use : result.fills)
        use.verdict = verdict_on(use, result);
}

} // namespace

const std::vector<PublishedOilUse>& published_oil_use() {
    static const auto rows = [] {
        std::vector<PublishedOilUse> read;
        for (const auto& row : read_data_table(data::oil_consumption_csv())) {
            if (const auto figure = row.number("litres_per_1000_km"))
                read.push_back({row["scope"], row["as_published"], figure->to_double(),
                                row["run_in"] == "yes", row["evidence"], row["source"]});
        }
        return read;
    }();
    return rows;
}

OilUseResult oil_use(const Bike& bike, const OdometerSeries& odometer, std::string_view compartment) {
    OilUseResult result;
    for (const auto& fill : oil_fills(bike, odometer, compartment))
        result.fills.push_back(use_of(fill));
    result.litres_per_1000km = overall(result.fills, false);
    result.run_in_litres_per_1000km = overall(result.fills, true);
    if (compartment != "engine") return result;
    if (const auto& figure = bike.details.value.handbook_oil_use_l_per_1000km)
        compare_with_handbook(result, *figure);
    else
        compare_with_published(result);
    judge(result);
    return result;
}

} // namespace sumpbook::usage
