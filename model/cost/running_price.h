// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <optional>
#include <vector>

namespace sumpbook::cost {

/// What a litre cost on a day, in minor units of the garage's currency.
struct LitrePrice {
    Date date;
    double minor_per_litre = 0;
};

/// What a litre costs now: the median of the last three times it was bought, or of fewer (numbers.md 5.3).
struct RunningPrice {
    double minor_per_litre = 0;
    std::vector<LitrePrice> bought; ///< The ones it is the median of, by date.
};

struct FoundPrice {
    std::optional<RunningPrice>
        price; ///< Absent: never bought with an amount and a volume, or only as below.
    std::optional<Money> without_rate; ///< The latest amount that no rate converts.
};

/// From stops for fuel: the total paid over the volume, without a total the price on the pump.
[[nodiscard]] FoundPrice fuel_price(const Bike& bike, const GarageSettings& settings);
/// From oil bought by the can and top-ups with a price; oil changes have their filter and labour in theirs.
[[nodiscard]] FoundPrice oil_price(const Bike& bike, const GarageSettings& settings);

} // namespace sumpbook::cost
