// SPDX-License-Identifier: GPL-3.0-or-later
// Repairs and the cost of a job against figures worked out apart; see stat-predictive-checks.csv.
#include "model/cost/job_cost.h"
#include "model/cost/repair_rate.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <cmath>

using namespace sumpbook::cost;
using namespace sumpbook::outside;

namespace {

constexpr auto table = "stat-predictive-checks.csv";

void check_all(const CheckRow& row, const std::vector<double>& found) {
    const auto expected = numbers_in(row["expected"]);
    REQUIRE(found.size() == expected.size());
    for (std::size_t i = 0; i < found.size(); ++i)
        CHECK(std::abs(found[i] - expected[i]) <= row.number("abs_tolerance"));
}

} // namespace

TEST_CASE("Repairs over a distance are the published counts", "[outside][forecast]") {
    constexpr double km_in_a_megametre = 1000;
    const auto rate = RepairRate::after(3, 25 * km_in_a_megametre);
    CHECK(rate.rate_km == 35 * km_in_a_megametre); // with the 10 Mm of the start
    const double next = 12 * km_in_a_megametre;
    const CheckRow& chances = check_row(table, "repairs: prior Gamma(0.5,10 Mm) + 3 events in 25 Mm; next 12 "
                                               "Mm | P(0),P(1),P(2),P(3)");
    {
        TESTING_ROW(chances);
        check_all(chances, {rate.chance_of(0, next), rate.chance_of(1, next), rate.chance_of(2, next),
                            rate.chance_of(3, next)});
    }
    const CheckRow& moments = check_row(table, "same | mean;variance");
    {
        TESTING_ROW(moments);
        check_all(moments, {rate.mean(next), rate.variance(next)});
    }
    const CheckRow& quantiles = check_row(table, "same | P10;P50;P90");
    {
        TESTING_ROW(quantiles);
        check_all(quantiles, {static_cast<double>(rate.quantile(next, 0.1)),
                              static_cast<double>(rate.quantile(next, 0.5)),
                              static_cast<double>(rate.quantile(next, 0.9))});
    }
}

TEST_CASE("The same rule foretells the next year of an engine of the valve seat study",
          "[outside][forecast]") {
    // Gamma(0.5, 0) and 48 events in 25 363 engine-days; the next 365 days of one engine.
    const RepairRate rate{RepairRate::start_events + 48, 25363};
    const CheckRow& none = check_row(
        table, "valveSeat: Gamma(0.5,0)+48 events in 25363 engine-days; one engine next 365 d | P(0)");
    {
        TESTING_ROW(none);
        check_all(none, {rate.chance_of(0, 365)});
    }
    const CheckRow& mean = check_row(table, "same | mean");
    {
        TESTING_ROW(mean);
        check_all(mean, {rate.mean(365)});
    }
}

TEST_CASE("The cost of a job learns from its bills as the published rule does", "[outside][forecast]") {
    const auto cost = JobCost::from(5.2, {5.0, 5.3, 5.1, 5.6}).value();
    const CheckRow& learnt =
        check_row(table, "NIG m0=5.2 k0=2 a0=3 b0=0.12, data 5.0 5.3 5.1 5.6 | mn;kn;an;bn");
    {
        TESTING_ROW(learnt);
        check_all(learnt, {cost.mean_ln(), cost.k(), cost.a(), cost.b()});
    }
    const CheckRow& range = check_row(table, "same | predictive t10 P10;P50;P90");
    {
        TESTING_ROW(range);
        check_all(range, {std::log(cost.quantile_minor(0.1)), std::log(cost.quantile_minor(0.5)),
                          std::log(cost.quantile_minor(0.9))});
    }
}
