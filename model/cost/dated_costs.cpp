// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/dated_costs.h"

#include "model/cost/exchange.h"
#include "model/cost/price_drift.h"
#include "model/cost/spent.h"
#include "model/upkeep/recurring_costs.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::cost {
namespace {

struct Days {
    Date today, until;
};

/// One payment was missed, and the one after it is still to come.
bool was_missed(const upkeep::ComingCost& coming, const Date& today) {
    return coming.next < today && today < plus_months(coming.counted_from, 2 * coming.every_months);
}

/// The days a cost comes again on, from today.
std::vector<Date> payment_days(const upkeep::ComingCost& coming, const Days& days) {
    const Date end = coming.until ? std::min(*coming.until, days.until) : days.until;
    std::vector<Date> all;
    for (int times = 1;; ++times) {
        const Date day = plus_months(coming.counted_from, times * coming.every_months);
        if (day > end) return all;
        if (day >= days.today) all.push_back(day);
    }
}

void add_coming(const upkeep::ComingCost& coming, const GarageSettings& settings, const Days& days,
                const std::string& bike, std::vector<DatedCost>& costs, std::vector<NotPriced>& not_priced) {
    const Entry& last = coming.last->value;
    const auto own = last.paid ? converted(*last.paid, settings.currency, last.date, settings) : std::nullopt;
    if (!own) {
        if (last.paid)
            not_priced.push_back({bike, coming.label, NotPricedBecause::no_rate, text_of(*last.paid)});
        else
            not_priced.push_back({bike, coming.label, NotPricedBecause::no_cost, {}});
        return;
    }
    const std::string category = branch_of(settings, coming.category);
    const double drift = drift_percent_a_year(settings, category);
    const auto add = [&](const Date& day, bool missed) {
        const double minor =
            static_cast<double>(own->minor) * price_factor(drift, days_between(last.date, day));
        costs.push_back({.date = day,
                         .label = coming.label,
                         .category = category,
                         .minor = std::llrint(minor),
                         .comes_again = true,
                         .missed = missed});
    };
    if (was_missed(coming, days.today)) add(days.today, true);
    for (const Date& day : payment_days(coming, days))
        add(day, false);
}

void add_planned(const Bike& bike, const GarageSettings& settings, const Days& days,
                 std::vector<DatedCost>& costs, std::vector<NotPriced>& not_priced) {
    for (const auto& line : spending_of(bike, settings)) {
        if (line.date <= days.today || line.date > days.until || is_purchase_or_sale(line.category)) continue;
        const std::string label = line.category + " on " + spelled_text(line.date);
        if (line.amount.currency == settings.currency)
            costs.push_back({line.date, label, line.category, line.amount.minor, false, false});
        else
            not_priced.push_back(
                {bike.details.value.name, label, NotPricedBecause::no_rate, text_of(line.amount)});
    }
}

} // namespace

std::vector<DatedCost> dated_costs(const Bike& bike, const GarageSettings& settings, const Date& today,
                                   const Date& until, std::vector<NotPriced>& not_priced) {
    std::vector<DatedCost> costs;
    const Days days{today, until};
    for (const auto& coming : upkeep::coming_costs(bike, today))
        add_coming(coming, settings, days, bike.details.value.name, costs, not_priced);
    add_planned(bike, settings, days, costs, not_priced);
    std::ranges::stable_sort(costs, {}, &DatedCost::date);
    return costs;
}

} // namespace sumpbook::cost
