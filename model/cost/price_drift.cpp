// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/price_drift.h"

#include <cmath>

namespace sumpbook::cost {

double drift_percent_a_year(const GarageSettings& settings, std::string_view category) {
    const auto& drifts = settings.price_drift_percent_a_year;
    if (const auto own = drifts.find(std::string(category)); own != drifts.end())
        return own->second.to_double();
    if (const auto leaf = category.rfind('/'); leaf != std::string_view::npos)
        return drift_percent_a_year(settings, category.substr(leaf + 1));
    return usual_drift_percent;
}

double price_factor(double percent_a_year, double days) {
    constexpr double days_a_year = 365.25;
    constexpr double hundred = 100;
    const double yearly = 1 + percent_a_year / hundred;
    return yearly <= 0 ? 0 : std::pow(yearly, days / days_a_year);
}

} // namespace sumpbook::cost
