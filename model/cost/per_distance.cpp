// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/per_distance.h"

namespace sumpbook::cost {

std::optional<CostOfDistance> cost_of_distance(const std::vector<Spending>& spending,
                                               const usage::OdometerSeries& odometer, const Date& from,
                                               const Date& to) {
    const auto covered = odometer.period(from, to);
    if (!covered || covered->distance <= Distance{}) return std::nullopt;
    MoneyByCurrency sum;
    for (const auto& line : spending) {
        const bool inside = line.date >= covered->from && line.date <= covered->to;
        if (inside && !is_purchase_or_sale(line.category)) sum.add(line.amount);
    }
    const auto amounts = sum.amounts();
    if (amounts.size() != 1) return std::nullopt;
    return CostOfDistance{amounts.front(), covered->distance, covered->from, covered->to,
                          static_cast<double>(amounts.front().minor) / covered->distance.km()};
}

} // namespace sumpbook::cost
