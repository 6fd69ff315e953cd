// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::cost {

/// What a job cost once: an entry's money, or the job's share of it.
struct Bill {
    std::string entry_id;
    Date date;
    std::string category;
    double minor = 0;       ///< As paid, in the garage's currency.
    double minor_today = 0; ///< At today's prices (numbers.md 5.5).
};

/// What jobs have cost, by the slug of the plan's item, or by the slot of a part that is renewed when it is
/// worn or old.
struct JobBills {
    std::map<std::string, std::vector<Bill>> by_job; ///< By date.
    /// The latest amount of a job that no exchange rate converts; such bills are left out.
    std::map<std::string, Money> without_rate;
    [[nodiscard]] std::vector<Bill> of(const std::string& job) const;
};

/// The past costs of each item of a bike's plan. `renewed`: slots whose part is a job of its own
/// (worn_parts.h): what is fitted there is that job's cost and no other's. An entry that does several items
/// at once is shared out among them by their estimates where all have one, else evenly; an item has no share
/// that another one of them includes, or that the owner has also done for nothing, unless that is so of all
/// (DESIGN). The oil an oil change took from the can counts with it, whichever way the garage counts oil.
/// Entries of which some money could not be converted are left out.
[[nodiscard]] JobBills job_bills(const Bike& bike, const GarageSettings& settings, const Date& today,
                                 const std::set<std::string>& renewed = {});

/// Of repairs; `without_rate`, where given, becomes the latest amount that no rate converts.
[[nodiscard]] std::vector<Bill> repair_bills(const Bike& bike, const GarageSettings& settings,
                                             const Date& today, std::optional<Money>* without_rate = nullptr);

/// Logarithms of the bills at today's prices.
[[nodiscard]] std::vector<double> ln_costs(const std::vector<Bill>& bills);

} // namespace sumpbook::cost
