// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace sumpbook::cost {

/// What a job may cost, in minor units of today's prices: its logarithm is normal with unknown mean and
/// spread, known as far as an estimate and past bills go. Normal-inverse-gamma, numbers.md 5.2; SOURCE of the
/// update: Bernardo and Smith, "Bayesian theory", normal model with unknown mean and precision (from memory);
/// figures in stat-predictive-checks.csv.
class JobCost {
public:
    /// An estimate counts as two bills, and a bill spreads by about a quarter until bills show otherwise.
    /// DESIGN (numbers.md 5.2).
    static constexpr double estimate_counts_as = 2;
    static constexpr double start_a = 3;
    static constexpr double start_b = 0.12;

    /// `ln_estimate`: logarithm of the estimate, or of another guess; `ln_costs`: of past costs at today's
    /// prices. Absent where there is neither.
    [[nodiscard]] static std::optional<JobCost> from(std::optional<double> ln_estimate,
                                                     const std::vector<double>& ln_costs);

    [[nodiscard]] double mean_ln() const { return m_; }
    [[nodiscard]] double k() const { return k_; }
    [[nodiscard]] double a() const { return a_; }
    [[nodiscard]] double b() const { return b_; }
    /// v of numbers.md 5.2: the spread simulated with.
    [[nodiscard]] double variance_ln() const { return b_ / (a_ - 1) * (k_ + 1) / k_; }
    /// Of one job, by Student's t: the cost not passed with chance p.
    [[nodiscard]] double quantile_minor(double p) const;

private:
    JobCost(double m, double k, double a, double b)
        : m_(m)
        , k_(k)
        , a_(a)
        , b_(b) {}
    double m_, k_, a_, b_;
};

} // namespace sumpbook::cost
