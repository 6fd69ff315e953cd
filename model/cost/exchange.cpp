// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/exchange.h"

#include <limits>

namespace sumpbook::cost {
namespace {

__extension__ using Wide = __int128;

Wide power_of_ten(int exponent) {
    Wide power = 1;
    for (; exponent > 0; --exponent)
        power *= 10;
    return power;
}

std::optional<std::int64_t> rounded_half_even(Wide numerator, Wide denominator) {
    Wide quotient = numerator / denominator;
    Wide rest = numerator % denominator;
    if (rest < 0) rest = -rest;
    if (rest * 2 > denominator || (rest * 2 == denominator && quotient % 2 != 0))
        quotient += numerator < 0 ? -1 : 1;
    if (quotient > std::numeric_limits<std::int64_t>::max() ||
        quotient < std::numeric_limits<std::int64_t>::min()) {
        return std::nullopt;
    }
    return static_cast<std::int64_t>(quotient);
}

const ExchangeRate* latest_rate(const Currency& from, const Currency& to, const Date& date,
                                const GarageSettings& settings) {
    const ExchangeRate* latest = nullptr;
    for (const auto& rate : settings.exchange_rates) {
        const bool fits = (rate.from == from && rate.to == to) || (rate.from == to && rate.to == from);
        if (!fits || rate.date > date || rate.rate <= Decimal{0}) continue;
        if (latest == nullptr || rate.date >= latest->date) latest = &rate;
    }
    return latest;
}

} // namespace

std::optional<Money> converted(const Money& amount, const Currency& to, const Date& date,
                               const GarageSettings& settings) {
    if (amount.currency == to) return amount;
    const ExchangeRate* rate = latest_rate(amount.currency, to, date, settings);
    if (rate == nullptr) return std::nullopt;
    // minor / 10^(digits from) x rate x 10^(digits to), one rounding at the end
    Wide numerator = Wide{amount.minor} * power_of_ten(to.minor_digits());
    Wide denominator = power_of_ten(amount.currency.minor_digits());
    const Wide rate_top = rate->rate.coefficient();
    const Wide rate_bottom = power_of_ten(rate->rate.scale());
    const bool forward = rate->from == amount.currency;
    numerator *= forward ? rate_top : rate_bottom;
    denominator *= forward ? rate_bottom : rate_top;
    const auto minor = rounded_half_even(numerator, denominator);
    if (!minor) return std::nullopt;
    return Money{*minor, to};
}

} // namespace sumpbook::cost
