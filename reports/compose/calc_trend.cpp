// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/calc_trend.h"

#include "model/stats/line_fit.h"
#include "model/stats/mann_kendall.h"
#include "model/stats/theil_sen.h"
#include "reports/compose/calc_figures.h"

#include <fmt/format.h>

#include <cmath>

namespace sumpbook::compose {
namespace {

using document::Document;
using document::Facts;
using document::Object;
using document::Value;

constexpr double asked_confidence = 0.95;

std::optional<Decimal> twelve_figures(double number) { return figures(number, 12); }

std::string words_of(double number) {
    const auto decimal = figures(number, 5);
    return decimal ? decimal->text() : "past the range of numbers";
}

std::string p_words(double p) { return p < 1e-6 ? "below 0.000001" : words_of(p); }

/// Everything that is known of a trend; each part absent where the points do not allow it.
struct Trend {
    std::size_t points = 0;
    std::optional<stats::LineFit> line;
    std::optional<stats::TheilSen> median_line;
    std::optional<stats::SlopeInterval> interval;
    std::optional<stats::MannKendall> test;
};

template <class Part, class Take>
Value part(const std::optional<Part>& part, Take take) {
    return part ? Value(take(*part)) : Value();
}

Value trend_json(const Trend& trend) {
    Object json = document::result();
    json.add("points", trend.points);
    json.add("theil_sen_slope",
             part(trend.median_line, [](const auto& line) { return twelve_figures(line.slope); }));
    json.add("theil_sen_intercept",
             part(trend.median_line, [](const auto& line) { return twelve_figures(line.intercept); }));
    json.add("slope_low",
             part(trend.interval, [](const auto& range) { return twelve_figures(range.slope.low); }));
    json.add("slope_high",
             part(trend.interval, [](const auto& range) { return twelve_figures(range.slope.high); }));
    json.add("slope_confidence",
             part(trend.interval, [](const auto& range) { return figures(range.confidence, 6); }));
    json.add("mann_kendall_s", part(trend.test, [](const auto& test) { return test.s; }));
    json.add("mann_kendall_variance",
             part(trend.test, [](const auto& test) { return twelve_figures(test.variance); }));
    json.add("mann_kendall_p_two_sided",
             part(trend.test, [](const auto& test) { return twelve_figures(test.p_two_sided); }));
    json.add("mann_kendall_exact", part(trend.test, [](const auto& test) { return test.exact; }));
    json.add("least_squares_slope",
             part(trend.line, [](const auto& line) { return twelve_figures(line.slope); }));
    json.add("least_squares_intercept",
             part(trend.line, [](const auto& line) { return twelve_figures(line.intercept); }));
    json.add("least_squares_slope_sd",
             part(trend.line, [](const auto& line) { return twelve_figures(line.slope_sd); }));
    json.add("residual_sd",
             part(trend.line, [](const auto& line) { return twelve_figures(line.residual_sd); }));
    return json;
}

/// Tenths of a per cent; smaller chances are not told apart in words.
std::string chance_words(double p) {
    if (p < 0.001) return "fewer than 1 in 1 000";
    return decimal_from_double(p * 100, 1).text() + " %";
}

std::string direction(const stats::MannKendall& test) {
    if (test.s == 0) return "By rank, y neither rises nor falls along x.";
    return fmt::format(
        "By rank, y {} along x. Chance alone would give so clear a rise or fall in {} of such series.",
        test.s > 0 ? "rises" : "falls", chance_words(test.p_two_sided));
}

std::string line_words(const stats::LineFit& line) {
    return fmt::format("y = {} {} {} x", words_of(line.intercept), line.slope < 0 ? '-' : '+',
                       words_of(std::abs(line.slope)));
}

Facts trend_facts(const Trend& trend) {
    Facts facts;
    if (trend.median_line) {
        facts.lines.emplace_back("Median slope (Theil-Sen)", words_of(trend.median_line->slope));
    }
    if (trend.interval) {
        facts.lines.emplace_back(
            "Range of the slope",
            fmt::format("{} to {}, confidence {} %", words_of(trend.interval->slope.low),
                        words_of(trend.interval->slope.high),
                        decimal_from_double(trend.interval->confidence * 100, 1).text()));
    }
    if (trend.test) {
        facts.lines.emplace_back("Score S (Mann-Kendall)",
                                 fmt::format("{}, variance {}, p {}{}", trend.test->s,
                                             words_of(trend.test->variance), p_words(trend.test->p_two_sided),
                                             trend.test->exact ? " exact" : " from the normal curve"));
    }
    if (trend.line) {
        facts.lines.emplace_back("Least-squares line", line_words(*trend.line));
    }
    return facts;
}

Document trend_text(const Trend& trend) {
    Document text;
    if (trend.test) text.sentence(direction(*trend.test));
    text.facts(trend_facts(trend));
    if (!trend.test) {
        text.sentence(
            fmt::format("{} points are too few to call a trend: from 4 on there is one, a line by least "
                        "squares from 3.",
                        trend.points));
    } else if (!trend.median_line) {
        text.sentence("Every x is the same, so there is no slope.");
    } else if (!trend.interval) {
        text.sentence("So few or so tied points leave the slope without a 95 % range.");
    }
    return text;
}

} // namespace

CalcAnswer trend_answer(std::span<const double> xs, std::span<const double> ys) {
    const Trend trend{xs.size(), stats::fit_line(xs, ys), stats::theil_sen(xs, ys),
                      stats::slope_interval(xs, ys, asked_confidence), stats::mann_kendall(xs, ys)};
    return {trend_json(trend), trend_text(trend)};
}

} // namespace sumpbook::compose
