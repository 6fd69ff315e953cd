// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/not_priced.h"
#include "model/garage/garage.h"

#include <cstdint>
#include <vector>

namespace sumpbook::cost {

/// Money whose day and amount are known: the next payment of a cost that comes again, or an entry dated
/// later than today.
struct DatedCost {
    Date date; ///< Today where it was missed.
    std::string label;
    std::string category;
    std::int64_t minor = 0; ///< In the garage's currency, at the prices of its day.
    bool comes_again = false;
    bool missed = false; ///< Its day has passed without a payment being recorded: perhaps it was paid.
    bool operator==(const DatedCost&) const = default;
};

/// By date, up to and including `until` (numbers.md 5.5). A payment that was missed counts today, until the
/// next one falls due: where more than one was missed the owner pays without recording it (DESIGN). Those to
/// come stay on their days. The last payment drifts with the prices of its category; an entry
/// dated later than today costs what it says.
[[nodiscard]] std::vector<DatedCost> dated_costs(const Bike& bike, const GarageSettings& settings,
                                                 const Date& today, const Date& until,
                                                 std::vector<NotPriced>& not_priced);

} // namespace sumpbook::cost
