// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <map>
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

/// The past costs of each item of a bike's plan, by slug and date. An entry that does several items at once
/// is shared out among them by their estimates where all have one, else evenly; an item that another one of
/// them includes has no share (DESIGN). Entries of which some money could not be converted are left out.
[[nodiscard]] std::map<std::string, std::vector<Bill>>
job_bills(const Bike& bike, const GarageSettings& settings, const Date& today);

/// Work that satisfies no plan item and was not planned.
[[nodiscard]] bool is_repair(const Entry& entry);
[[nodiscard]] std::vector<Bill> repair_bills(const Bike& bike, const GarageSettings& settings,
                                             const Date& today);

/// Logarithms of the bills at today's prices.
[[nodiscard]] std::vector<double> ln_costs(const std::vector<Bill>& bills);

} // namespace sumpbook::cost
