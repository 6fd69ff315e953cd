// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/dates.h"
#include "model/quantity/money.h"
#include "model/quantity/units.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook {

/// One unit of `from` was worth `rate` of `to` on `date`.
struct ExchangeRate {
    Date date;
    Currency from;
    Currency to;
    Decimal rate;
    bool operator==(const ExchangeRate&) const = default;
};

enum class OilBoughtCounts : std::uint8_t { when_bought = 0, per_litre_used = 1 };

/// What holds for the whole garage.
struct GarageSettings {
    Currency currency;
    std::optional<std::string> home_country; ///< ISO 3166-1 alpha-2.
    DistanceUnit distance_unit = DistanceUnit::km;
    VolumeUnit volume_unit = VolumeUnit::l;
    ConsumptionUnit consumption_unit = ConsumptionUnit::l_per_100km;
    std::vector<std::string> categories;         ///< Empty: the default categories.
    std::map<std::string, Money> yearly_budgets; // money
    std::vector<ExchangeRate> exchange_rates;
    std::map<std::string, Decimal> price_drift_percent_a_year; ///< By category; absent: 3.
    OilBoughtCounts oil_bought_counts = OilBoughtCounts::when_bought;
    bool operator==(const GarageSettings&) const = default;
};

/// upkeep repairs fuel oil tyres insurance tax inspection storage gear purchase sale
[[nodiscard]] const std::vector<std::string>& default_categories();
/// The owner's own categories, or the default ones.
[[nodiscard]] const std::vector<std::string>& categories_of(const GarageSettings& settings);

} // namespace sumpbook
