// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/censored.h"

#include "model/stats/line_fit.h"
#include "model/stats/median.h"
#include "model/stats/paired.h"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

namespace sumpbook::stats {
namespace {

double count(std::span<const CensoredValue> values, auto condition) {
    return static_cast<double>(std::count_if(values.begin(), values.end(), condition));
}

/// The detected values from one detection limit up to the next, and the values below that limit.
struct Group {
    double limit = 0;                  ///< 0 for the detected values under the lowest limit.
    std::vector<double> detected;      ///< Rising.
    double below = 0;                  ///< Values below exactly this limit.
    double share_reaching = 0;         ///< Share of all values at the limit or above.
    double share_reaching_of_next = 0; ///< The same of the next limit; 0 for the last group.
};

double score(double share) { return boost::math::quantile(boost::math::normal{}, share); }

std::vector<double> limits_of(std::span<const CensoredValue> values) {
    std::set<double> limits{0.0};
    for (const CensoredValue& value : values) {
        if (value.below) limits.insert(value.number);
    }
    return {limits.begin(), limits.end()};
}

Group group_from(std::span<const CensoredValue> values, double limit, double next) {
    Group group;
    group.limit = limit;
    for (const CensoredValue& value : values) {
        if (!value.below && value.number >= limit && value.number < next)
            group.detected.push_back(value.number);
    }
    std::sort(group.detected.begin(), group.detected.end());
    group.below =
        count(values, [&](const CensoredValue& value) { return value.below && value.number == limit; });
    return group;
}

/// From the highest limit down: share reaching = that of the next + detected/(detected + all below) of the
/// rest.
std::vector<Group> groups_of(std::span<const CensoredValue> values) {
    const auto limits = limits_of(values);
    std::vector<Group> groups;
    for (std::size_t i = 0; i < limits.size(); ++i)
        groups.push_back(
            group_from(values, limits[i],
                       i + 1 < limits.size() ? limits[i + 1] : std::numeric_limits<double>::infinity()));
    double next = 0;
    for (auto group = groups.rbegin(); group != groups.rend(); ++group) {
        const auto detected = static_cast<double>(group->detected.size());
        const double below = count(values, [&](const CensoredValue& value) {
            return value.below ? value.number <= group->limit : value.number < group->limit;
        });
        group->share_reaching_of_next = next;
        if (detected + below > 0) next += detected / (detected + below) * (1 - next);
        group->share_reaching = next;
    }
    return groups;
}

/// Scores and logarithms of the detected values, and the scores of those below detection.
struct Plotted {
    std::vector<double> scores;
    std::vector<double> logs;
    std::vector<double> scores_below;
};

Plotted plotted(const std::vector<Group>& groups) {
    Plotted points;
    for (const Group& group : groups) {
        const double under = 1 - group.share_reaching;
        const double inside = group.share_reaching - group.share_reaching_of_next;
        const auto parts = static_cast<double>(group.detected.size() + 1);
        for (std::size_t i = 0; i < group.detected.size(); ++i) {
            points.scores.push_back(score(under + inside * static_cast<double>(i + 1) / parts));
            points.logs.push_back(std::log(group.detected[i]));
        }
        for (double i = 1; i <= group.below; ++i)
            points.scores_below.push_back(score(under * i / (group.below + 1)));
    }
    return points;
}

struct MeanAndSd {
    double mean = 0;
    double sd = 0;
};

MeanAndSd mean_and_sd(const std::vector<double>& numbers) {
    MeanAndSd result;
    for (const double number : numbers)
        result.mean += number / static_cast<double>(numbers.size());
    for (const double number : numbers)
        result.sd += (number - result.mean) * (number - result.mean);
    result.sd = std::sqrt(result.sd / static_cast<double>(numbers.size() - 1));
    return result;
}

} // namespace

std::optional<CensoredSummary> summary_of_censored(std::span<const CensoredValue> values) {
    CensoredSummary summary;
    for (const CensoredValue& value : values) {
        if (!(value.number > 0) || !std::isfinite(value.number)) return std::nullopt;
        ++(value.below ? summary.below : summary.detected);
    }
    const double share = static_cast<double>(summary.below) / static_cast<double>(values.size());
    if (summary.detected < fewest_detected || share > largest_share_below) return std::nullopt;
    const Plotted points = plotted(groups_of(values));
    const auto line = fit_line(points.scores, points.logs);
    if (!line) return std::nullopt;
    auto logs = points.logs;
    for (const double below : points.scores_below)
        logs.push_back(line->at(below));
    std::vector<double> numbers;
    for (const double log : logs)
        numbers.push_back(std::exp(log));
    const MeanAndSd of_logs = mean_and_sd(logs);
    const MeanAndSd plain = mean_and_sd(numbers);
    summary.mean_of_logs = of_logs.mean;
    summary.sd_of_logs = of_logs.sd;
    summary.mean = plain.mean;
    summary.sd = plain.sd;
    summary.median = median(std::move(numbers)).value();
    return summary;
}

std::vector<CurveStep> share_curve(std::span<const CensoredValue> values) {
    std::set<double> detected;
    for (const CensoredValue& value : values) {
        if (!value.below) detected.insert(value.number);
    }
    std::vector<CurveStep> curve;
    double share = 1;
    for (auto number = detected.rbegin(); number != detected.rend(); ++number) {
        curve.push_back({*number, share});
        const double at_most =
            count(values, [&](const CensoredValue& value) { return value.number <= *number; });
        const double here = count(
            values, [&](const CensoredValue& value) { return !value.below && value.number == *number; });
        share *= 1 - here / at_most;
    }
    std::reverse(curve.begin(), curve.end());
    return curve;
}

std::optional<double> quantile_of(const std::vector<CurveStep>& curve, double share) {
    const auto step =
        std::find_if(curve.begin(), curve.end(), [&](const CurveStep& each) { return each.share >= share; });
    return step == curve.end() ? std::nullopt : std::optional<double>(step->number);
}

double mean_of(const std::vector<CurveStep>& curve) {
    double mean = 0;
    double before = 0;
    for (const CurveStep& step : curve) {
        mean += step.number * (step.share - before);
        before = step.share;
    }
    return mean;
}

std::vector<double> ranked_numbers(std::span<const CensoredValue> values) {
    std::optional<double> highest;
    for (const CensoredValue& value : values) {
        if (value.below && (!highest || value.number > *highest)) highest = value.number;
    }
    std::vector<double> numbers;
    for (const CensoredValue& value : values) {
        const bool tied = highest && (value.below || value.number < *highest);
        numbers.push_back(tied ? *highest - 1 : value.number);
    }
    return numbers;
}

} // namespace sumpbook::stats
