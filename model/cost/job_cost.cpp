// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/job_cost.h"

#include "model/stats/inverse.h"

#include <cmath>
#include <numeric>

namespace sumpbook::cost {

std::optional<JobCost> JobCost::from(std::optional<double> ln_estimate, const std::vector<double>& ln_costs) {
    if (!ln_estimate && ln_costs.empty()) return std::nullopt;
    const auto n = static_cast<double>(ln_costs.size());
    const double sum = std::accumulate(ln_costs.begin(), ln_costs.end(), 0.0);
    const double mean = ln_costs.empty() ? *ln_estimate : sum / n;
    double squares = 0;
    for (const double x : ln_costs)
        squares += (x - mean) * (x - mean);
    const double k0 = ln_estimate ? estimate_counts_as : 0;
    const double m0 = ln_estimate.value_or(mean);
    const double k = k0 + n;
    return JobCost((k0 * m0 + sum) / k, k, start_a + n / 2,
                   start_b + squares / 2 + k0 * n * (mean - m0) * (mean - m0) / (2 * k));
}

double JobCost::quantile_minor(double p) const {
    const double scale = std::sqrt(b_ * (k_ + 1) / (a_ * k_));
    return std::exp(m_ + stats::student_inverse(2 * a_, p) * scale);
}

} // namespace sumpbook::cost
