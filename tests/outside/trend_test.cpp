// SPDX-License-Identifier: GPL-3.0-or-later
// Trends, control limits and changes against published examples. Sources stand in stat-expected.csv and
// stat-trend-data.csv: NIST Statistical Reference Datasets, Sen 1968, USEPA Unified Guidance 2009, EPA
// QA/G-9S and others.
#include "model/stats/change_point.h"
#include "model/stats/control_limits.h"
#include "model/stats/kendall_exact.h"
#include "model/stats/line_fit.h"
#include "model/stats/mann_kendall.h"
#include "model/stats/theil_sen.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <cmath>

using namespace sumpbook::outside;
using namespace sumpbook::stats;

namespace {

struct Series {
    std::vector<double> xs;
    std::vector<double> ys;
};

/// One series of a table of data; each of its rows counts as tested.
Series series(const std::string& file, const std::string& name, const char* x, const char* y) {
    Series points;
    for (const CheckRow& row : check_table(file)) {
        if (row["series"] != name) continue;
        row.count_as_tested();
        points.xs.push_back(row.number(x));
        points.ys.push_back(row.number(y));
    }
    REQUIRE_FALSE(points.xs.empty());
    return points;
}

Series trend_series(const std::string& name) { return series("stat-trend-data.csv", name, "x", "y"); }

/// Holds our values against those of one row, with the row's own tolerance.
void check_expected(const std::string& key, const std::vector<double>& ours) {
    const CheckRow& row = check_row("stat-expected.csv", key);
    TESTING_ROW(row);
    const auto expected = numbers_in(row["expected"]);
    REQUIRE(expected.size() == ours.size());
    for (std::size_t i = 0; i < ours.size(); ++i) {
        CHECK(ours[i] == Approx(expected[i]).epsilon(0).margin(row.number("abs_tolerance")));
    }
}

std::vector<double> score_of(const Series& points) {
    const auto trend = mann_kendall(points.xs, points.ys).value();
    return {static_cast<double>(trend.s), trend.variance, trend.z};
}

} // namespace

TEST_CASE("the least-squares line meets the certified values of NIST Norris", "[outside][trend]") {
    const Series norris = trend_series("nist-norris");
    const LineFit fit = fit_line(norris.xs, norris.ys).value();
    check_expected("trend | stat-trend-data.csv:nist-norris | intercept", {fit.intercept});
    check_expected("trend | same | slope", {fit.slope});
    check_expected("trend | same | sd of intercept", {fit.intercept_sd});
    check_expected("trend | same | sd of slope", {fit.slope_sd});
    check_expected("trend | same | residual sd", {fit.residual_sd});
    check_expected("trend | same | R-squared", {fit.r_squared.value()});
    const Interval next = prediction_interval(fit, 500, 0.95);
    check_expected("trend | same | 95% prediction interval at x=500", {next.low, next.high});
}

TEST_CASE("Sen's own example gives his slope and interval", "[outside][trend]") {
    const Series sen = trend_series("sen1968");
    const TheilSen line = theil_sen(sen.xs, sen.ys).value();
    check_expected("trend | stat-trend-data.csv:sen1968 | Theil-Sen slope", {line.slope});
    check_expected("trend | same | intercept median(y)-b*median(x); median(y-bx)",
                   {line.intercept, line.residual_intercept});
    // The printed "93 %" interval is that of ranks 4 and 18 of 21, whose exact confidence is 0.9698.
    const SlopeInterval range = slope_interval(sen.xs, sen.ys, 0.95).value();
    check_expected("trend | same | 93% CI", {range.slope.low, range.slope.high});
    CHECK(range.exact);
    CHECK(range.confidence == Approx(0.9698).margin(5e-5));
    CHECK(kendall_upper_tail(7, 13) == Approx(0.0345238).margin(5e-8));
}

TEST_CASE("Mann-Kendall scores of published series", "[outside][trend]") {
    check_expected("trend | stat-trend-data.csv:epa-qag9-ties | S;Var(S);Z",
                   score_of(trend_series("epa-qag9-ties")));
    check_expected("trend | stat-trend-data.csv:byhand14 | S;Var(S);Z", score_of(trend_series("byhand14")));
    check_expected("trend | stat-trend-data.csv:wi-nr-code | S",
                   {score_of(trend_series("wi-nr-code")).front()});
}

TEST_CASE("the sulfate and sodium examples of the Unified Guidance", "[outside][trend]") {
    const Series sulfate = trend_series("epa17-6-sulfate");
    const auto trend = mann_kendall(sulfate.xs, sulfate.ys).value();
    const auto score = kendall_score(sulfate.xs, sulfate.ys);
    const double slope = theil_sen(sulfate.xs, sulfate.ys)->slope;
    check_expected("trend | stat-trend-data.csv:epa17-6-sulfate | S;Var(S) as printed without/with ties;Z",
                   score_of(sulfate));
    // What the row calls tau-b is tau-a; tau-b is 0.7744897.
    check_expected("trend | same | Kendall tau-b;slope;p two-sided",
                   {score.tau_a().value(), slope, trend.p_two_sided});
    CHECK(score.tau_b().value() == Approx(0.7744897).margin(5e-8));
    CHECK(trend.p_two_sided == Approx(3.267574e-07).epsilon(1e-6)); // the row's tolerance is wider than p
    const auto range = slope_interval(sulfate.xs, sulfate.ys, 0.95).value();
    CHECK_FALSE(range.exact);
    check_expected("trend | same | 95% CI slope (interpolated ranks)", {range.slope.low, range.slope.high});

    const Series sodium = trend_series("epa17-7-sodium");
    const auto scores = score_of(sodium);
    check_expected("trend | stat-trend-data.csv:epa17-7-sodium | S;Var(S);slope",
                   {scores[0], scores[1], theil_sen(sodium.xs, sodium.ys)->slope});
}

TEST_CASE("the exact distribution of Kendall's score, every entry", "[outside][trend]") {
    check_expected("kendall | stat-kendall-exact.csv | P(S>=6|n=4);P(S>=8|n=5);P(S>=21|n=10)",
                   {kendall_upper_tail(4, 6), kendall_upper_tail(5, 8), kendall_upper_tail(10, 21)});
    for (const CheckRow& row : check_table("stat-kendall-exact.csv")) {
        TESTING_ROW(row);
        const int n = static_cast<int>(row.number("n"));
        const int s = static_cast<int>(row.number("S"));
        CHECK(std::to_string(kendall_orders_reaching(n, s)) == row["permutations_with_S_or_more"]);
        CHECK(kendall_upper_tail(n, s) == Approx(row.number("p_upper")).epsilon(1e-8));
    }
}

TEST_CASE("critical scores of the published table", "[outside][trend]") {
    for (const CheckRow& row : check_table("stat-kendall-critical.csv")) {
        TESTING_ROW(row);
        const int n = static_cast<int>(row.number("n"));
        for (const char* alpha : {"0.20", "0.10", "0.05", "0.025", "0.01", "0.005"}) {
            const std::string column = std::string("S_min_one_sided_alpha_") + alpha;
            const auto critical = kendall_critical(n, std::strtod(alpha, nullptr));
            INFO(column);
            CHECK((critical ? std::to_string(*critical) : std::string{}) == row[column]);
        }
    }
}

TEST_CASE("individuals chart of the NIST flow rates", "[outside][control]") {
    // Check C19 holds the same ten values and limits.
    const CheckRow& c19 = check_row("oil-worked-checks.csv", "C19");
    const Series flow = series("stat-control-data.csv", "nist-flowrate", "i", "x");
    CHECK(numbers_in(c19["inputs"]) == flow.ys);
    const auto limits = individuals_limits(flow.ys).value();
    check_expected("control | stat-control-data.csv:nist-flowrate | mean;mean MR;UCL;LCL (d2=1.128)",
                   {limits.mean, limits.mean_moving_range, limits.upper, limits.lower});
    TESTING_ROW(c19);
    const auto expected = numbers_in(c19["expected"]);
    const double tolerance = c19.number("tolerance");
    CHECK(limits.mean == Approx(expected.at(0)).margin(tolerance));
    CHECK(limits.mean_moving_range == Approx(expected.at(1)).margin(tolerance));
    CHECK(limits.upper == Approx(expected.at(2)).margin(tolerance));
    CHECK(limits.lower == Approx(expected.at(3)).margin(tolerance));
}

TEST_CASE("constants of the chart are the printed ones, rounded to three decimals", "[outside][control]") {
    const CheckRow& row =
        check_row("stat-expected.csv", "control | stat-control-constants.csv | d2(2);d3(2);E2(2);D4(2)");
    TESTING_ROW(row);
    const auto constants = numbers_in(row["expected"]);
    const CheckRow& of_two = check_row("stat-control-constants.csv", "2");
    TESTING_ROW(of_two);
    CHECK(of_two.number("d2") == constants.at(0));
    CHECK(of_two.number("D4") == constants.at(3));
    const auto limits = individuals_limits(std::vector<double>{0, 1, 0, 1, 0, 1, 0, 1}).value();
    CHECK(3 / (limits.upper - limits.mean) == Approx(std::round(constants.at(0) * 1000) / 1000));
    CHECK(limits.moving_range_upper == Approx(std::round(constants.at(3) * 1000) / 1000));
}

TEST_CASE("the flow of the Nile changes after 1898", "[outside][trend]") {
    const Series nile = series("stat-changepoint-data.csv", "nile", "i", "x");
    const auto change = change_point(nile.ys).value();
    const CheckRow& row =
        check_row("stat-expected.csv",
                  "change | stat-changepoint-data.csv:nile | Pettitt K;position;least-squares break");
    TESTING_ROW(row);
    const auto expected = numbers_in(row["expected"]); // the least-squares break is not computed here
    CHECK(static_cast<double>(change.k) == expected.at(0));
    CHECK(static_cast<double>(change.last_before) == expected.at(1));
    CHECK(nile.xs.at(change.last_before - 1) + 1870 == expected.at(2)); // the series begins in 1871

    const auto trend = mann_kendall(nile.xs, nile.ys).value();
    const CheckRow& scores = check_row("stat-expected.csv", "change | same | Mann-Kendall S;Var;Z");
    TESTING_ROW(scores);
    const auto published = numbers_in(scores["expected"]);
    CHECK(static_cast<double>(trend.s) == published.at(0));
    CHECK(trend.variance == Approx(published.at(1)).margin(5e-7)); // six decimals printed
    CHECK(trend.z == Approx(published.at(2)).margin(scores.number("abs_tolerance")));
}
