// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/reasons.h"

#include "model/upkeep/expected_day.h"

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <limits>
#include <tuple>
#include <utility>

namespace sumpbook::upkeep {
namespace {

using usage::OutlookInput;

constexpr std::size_t most_reasons = 3;
constexpr int a_year = 365;
constexpr std::size_t season_months = 3;

/// The three months running with the greatest part of a year's distance; the first of them, 0 = January.
std::pair<std::size_t, double> high_season(const usage::ByMonth& share) {
    std::size_t best = 0;
    double most = 0;
    for (std::size_t first = 0; first < share.size(); ++first) {
        double sum = 0;
        for (std::size_t i = 0; i < season_months; ++i)
            sum += share[(first + i) % share.size()];
        if (sum > most) std::tie(best, most) = std::pair(first, sum);
    }
    return {best, most};
}

double days_laid_up(const usage::ByMonth& share) {
    double days = 0;
    for (std::size_t m = 0; m < share.size(); ++m)
        days += share[m] * usage::days_of_month[m];
    return days;
}

double remaining(const DueItem& item) {
    const auto& [distance, date, hours] = item.limits;
    switch (item.date_from.value_or(LimitKind::date)) {
    case LimitKind::distance:
        return (distance->at - item.now.distance.value_or(Distance{})).km();
    case LimitKind::hours:
        return hours->at_hours - item.now.engine_hours.value_or(0);
    case LimitKind::date:
        break;
    }
    return days_between(*item.now.date, date->at);
}

Reason reason(const DueItem& item, ReasonInput input, const std::optional<Date>& without, double value = 0) {
    Reason one{input, without, std::nullopt, value, 0};
    if (without) one.moves_days = days_between(*without, *item.date_p50);
    return one;
}

/// Without which there is no day: more than any number of days.
int size_of(const Reason& reason) {
    return reason.moves_days ? std::abs(*reason.moves_days) : std::numeric_limits<int>::max();
}

} // namespace

std::optional<Date> Reasons::without(OutlookInput input, const NextLimits& limits) {
    auto& outlook = outlooks_.at(static_cast<std::size_t>(input));
    if (!outlook) outlook.emplace(bike_.outlook().without(input));
    return day_of(expected_day(limits, *outlook, bike_.hours(), 0.5));
}

std::vector<Reason> Reasons::all(const DueItem& item) {
    const NextLimits& limits = item.limits;
    std::vector<Reason> found;
    const auto limit_left_out = [&](ReasonInput input, const NextLimits& others) {
        found.push_back(reason(item, input, day_of(expected_day(others, bike_, 0.5))));
    };
    if (limits.date) limit_left_out(ReasonInput::date_limit, {limits.distance, {}, limits.hours});
    if (limits.hours) limit_left_out(ReasonInput::hours_limit, {limits.distance, limits.date, {}});
    if (item.again) {
        const auto fresh = day_of(expected_day(item.again(item.now), bike_, 0.5));
        if (fresh) found.push_back(reason(item, ReasonInput::since_last, fresh, remaining(item)));
    }
    if (!limits.distance && !limits.hours) return found;

    const auto& outlook = bike_.outlook();
    const auto by_outlook = [&](ReasonInput input, OutlookInput left_out, double value) {
        found.push_back(reason(item, input, without(left_out, limits), value));
    };
    if (outlook.learnt())
        by_outlook(ReasonInput::riding, OutlookInput::riding, outlook.in_the_next(a_year).p50.km());
    const auto [month, share] = high_season(outlook.share_of_year());
    by_outlook(ReasonInput::season, OutlookInput::season, share);
    found.back().month = static_cast<unsigned>(month) + 1;
    by_outlook(ReasonInput::layups, OutlookInput::layups, days_laid_up(outlook.laid_up_share()));
    if (const auto age = outlook.reading_age_days(); age && *age > 0)
        by_outlook(ReasonInput::reading_age, OutlookInput::reading_age, *age);
    return found;
}

std::vector<Reason> Reasons::of(const DueItem& item) {
    if (!item.date_p50) return {};
    auto found = all(item);
    std::erase_if(found, [](const Reason& one) { return one.moves_days == 0; });
    std::ranges::stable_sort(found, std::ranges::greater{}, size_of);
    if (found.size() > most_reasons) found.resize(most_reasons);
    return found;
}

} // namespace sumpbook::upkeep
