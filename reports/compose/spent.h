// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/oil_by_the_litre.h"
#include "model/cost/per_distance.h"
#include "model/cost/spent.h"
#include "reports/document/document.h"
#include "reports/document/value.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace sumpbook::compose {

/// What was spent on some bikes in some time, ready to be shown.
struct SpentReport {
    std::optional<Date> from;  ///< First day asked for; absent: from the start of the record.
    std::optional<Date> until; ///< Last day asked for; absent: until today.
    cost::GroupBy by = cost::GroupBy::category;
    std::vector<cost::Spending> spending; ///< Buying and selling the bikes among it.
    std::vector<std::pair<std::string, cost::CostOfDistance>> of_distance; ///< By bike, where known.
    /// By bike, where the garage counts oil per litre used: bought by the can up to the last day and not
    /// used, so that it is in no sum.
    std::vector<std::pair<std::string, cost::OilWorth>> oil_left;
    DistanceUnit distance_unit = DistanceUnit::km;
    bool prices_left_out = false; ///< Of the file, when it was handed over.
};

/// Adds what was spent on a bike in the report's days, up to today, and the cost of its distance in them.
void add_spent(SpentReport& report, const Bike& bike, const GarageSettings& settings, Date today);

/// {"schema": 1, "by": ..., "items": [...], "running": [...], "bought_and_sold": [...], ...}. An item is one
/// group of one bike; `entries` is how many amounts it is made of. Items and `running`, their sums, leave out
/// buying and selling the bikes.
[[nodiscard]] document::Value spent_json(const SpentReport& report);
/// What answers about money say where `prices_left_out`.
[[nodiscard]] std::string prices_left_out_words();
[[nodiscard]] document::Document spent_text(const SpentReport& report);

} // namespace sumpbook::compose
