// SPDX-License-Identifier: GPL-3.0-or-later
// Series with values below detection against published results; sources stand in stat-expected.csv: USEPA
// Unified Guidance 2009 p. 15-10, and the printed examples of two statistics packages.
#include "model/stats/censored.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

using namespace sumpbook::outside;
using namespace sumpbook::stats;

namespace {

std::vector<CensoredValue> series(const std::string& name) {
    std::vector<CensoredValue> values;
    for (const CheckRow& row : check_table("stat-censored-data.csv")) {
        if (row["series"] != name) continue;
        row.count_as_tested();
        values.push_back({row.number("value"), row["below_limit"] == "1"});
    }
    REQUIRE_FALSE(values.empty());
    return values;
}

/// As many of the row's figures as are given, in its order.
void check_expected(const std::string& key, const std::vector<double>& ours) {
    const CheckRow& row = check_row("stat-expected.csv", key);
    TESTING_ROW(row);
    const auto expected = numbers_in(row["expected"]);
    REQUIRE(expected.size() >= ours.size());
    for (std::size_t i = 0; i < ours.size(); ++i)
        CHECK(ours[i] == Approx(expected[i]).epsilon(0).margin(row.number("abs_tolerance")));
}

} // namespace

TEST_CASE("regression on order statistics, one detection limit after another", "[outside][censored]") {
    const auto manganese = summary_of_censored(series("epa15-1-manganese")).value();
    check_expected("censored | same | robust ROS (plotting constant 0) meanlog;sdlog",
                   {manganese.mean_of_logs, manganese.sd_of_logs});
    const auto iron = summary_of_censored(series("dfe-summer-iron")).value();
    check_expected("censored | same | ROS median;mean;sd", {iron.median, iron.mean, iron.sd});
}

TEST_CASE("the product-limit curve of iron in summer", "[outside][censored]") {
    const auto curve = share_curve(series("dfe-summer-iron"));
    // What the row calls sd is sqrt(n) x the standard error of the mean, which is not computed.
    check_expected("censored | same | KM median;mean;sd", {quantile_of(curve, 0.5).value(), mean_of(curve)});
}
