// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace sumpbook::cost {

/// Why a forecast says nothing about the cost of something.
enum class NotPricedBecause {
    no_cost,        ///< Neither an estimate nor a past cost.
    no_day,         ///< Nothing to count the job from: never recorded here.
    no_consumption, ///< Not two full fills with readings; for oil no two known levels.
    no_price,       ///< Never bought with an amount and a volume.
    no_rate,        ///< An amount in a currency without an exchange rate.
    no_reading,     ///< The job comes by distance, and the odometer was never read.
    no_plan,        ///< The bike has no upkeep plan.
    outside_plan,   ///< Spent in the last 12 months on what nothing in the forecast stands for.
};
/// "no-cost", "no-day", ...
[[nodiscard]] std::string_view slug(NotPricedBecause reason);
/// "no estimate and no past cost".
[[nodiscard]] std::string_view words(NotPricedBecause reason);

/// Something that will cost money, of which it is not known how much: listed, never silently 0.
struct NotPriced {
    std::string bike;
    std::string
        what; ///< "Valve clearance", "fuel", "repairs"; of outside_plan the categories: "gear, tyres".
    NotPricedBecause because = NotPricedBecause::no_cost;
    /// The amount that could not be converted, or was spent outside the plan: "30.00 GBP"; else empty.
    std::string amount;
    bool operator==(const NotPriced&) const = default;
};

} // namespace sumpbook::cost
