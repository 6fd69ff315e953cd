// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/rates.h"

#include "model/oil/precision.h"
#include "model/oil/quantities.h"

#include <cmath>

namespace sumpbook::oil {
namespace {

/// Least and greatest possible amount of a value.
struct Ends {
    Decimal low;
    Decimal high;
};

std::optional<Ends> ends_of(const SampleValue& value) {
    const auto amount = in_oil_unit(value.number, value.unit.empty() ? "mg/kg" : value.unit, "mg/kg");
    if (!amount) return std::nullopt;
    if (value.state == ValueState::measured) return Ends{*amount, *amount};
    if (value.state == ValueState::below) return Ends{Decimal{0}, *amount};
    return std::nullopt;
}

/// The rise at one end of the range, and how it stands.
struct Rise {
    Decimal amount;
    bool noise_tested = false;
    bool is_noise = false;
    std::optional<bool> abnormal;
};

std::optional<Rise> rise_between(const std::string& element, const Decimal& from, const Decimal& to,
                                 const BetweenSamples& between, const std::optional<LimitRow>& trend_limit) {
    const auto amount = subtract(to, from);
    if (!amount) return std::nullopt;
    Rise rise{*amount, false, false, std::nullopt};
    if (const auto precision = element_precision(element, (from.to_double() + to.to_double()) / 2)) {
        const double noise =
            between.laboratories_differ ? precision->reproducibility : precision->repeatability;
        rise.noise_tested = true;
        rise.is_noise = std::abs(amount->to_double()) < noise;
    }
    if (trend_limit) rise.abnormal = reaches_trend(*amount, between.time, trend_limit->value);
    return rise;
}

void put_standing(ElementRate& rate, const Rise& low, const Rise& high, const RunningTime& time) {
    if (is_too_short(time)) {
        rate.standing = RateStanding::unreliable;
    } else if (low.is_noise && high.is_noise) {
        rate.standing = RateStanding::no_real_change;
    } else if (low.is_noise != high.is_noise || low.abnormal != high.abnormal) {
        rate.standing = RateStanding::open;
    } else {
        rate.abnormal = low.abnormal;
    }
}

std::pair<double, double> per_1000km(const Rise& low, const Rise& high, const Distance& distance) {
    return {low.amount.to_double() / distance.km() * 1000, high.amount.to_double() / distance.km() * 1000};
}

} // namespace

double RunningTime::hours() const { return amount.to_double() / per_hour.to_double(); }

bool is_too_short(const RunningTime& time) {
    const auto fewest = multiply(time.per_hour, Decimal{fewest_hours_for_rate});
    return !fewest || time.amount < *fewest;
}

double ppm_per_10h(double previous, double latest, double hours) { return (latest - previous) / hours * 10; }

double rate_error_ppm_per_10h(double hours) { return 10 / hours; }

std::optional<bool> reaches_trend(const Decimal& rise, const RunningTime& time,
                                  const Decimal& limit_ppm_per_10h) {
    const auto tenfold = multiply(rise, Decimal{10});
    if (!tenfold) return std::nullopt;
    const auto found = multiply(*tenfold, time.per_hour);
    const auto allowed = multiply(limit_ppm_per_10h, time.amount);
    if (!found || !allowed) return std::nullopt;
    return *found >= *allowed;
}

std::optional<ElementRate> element_rate(const SampleValue& previous, const SampleValue& latest,
                                        const BetweenSamples& between,
                                        const std::optional<LimitRow>& trend_limit) {
    const auto from = ends_of(previous);
    const auto to = ends_of(latest);
    if (!from || !to || between.time.amount <= Decimal{0}) return std::nullopt;
    const auto low = rise_between(latest.quantity, from->high, to->low, between, trend_limit);
    const auto high = rise_between(latest.quantity, from->low, to->high, between, trend_limit);
    if (!low || !high) return std::nullopt;
    ElementRate rate;
    rate.hours = between.time.hours();
    rate.metered = between.time.is_metered();
    rate.low_ppm_per_10h = ppm_per_10h(0, low->amount.to_double(), rate.hours);
    rate.high_ppm_per_10h = ppm_per_10h(0, high->amount.to_double(), rate.hours);
    rate.noise_tested = low->noise_tested;
    if (between.distance && *between.distance > Distance{})
        rate.ppm_per_1000km = per_1000km(*low, *high, *between.distance);
    put_standing(rate, *low, *high, between.time);
    return rate;
}

} // namespace sumpbook::oil
