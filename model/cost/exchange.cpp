// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/exchange.h"

#include "model/quantity/wide.h"

namespace sumpbook::cost {
namespace {

Wide power_of_ten(int exponent) {
    Wide power = 1;
    for (; exponent > 0; --exponent)
        power *= 10;
    return power;
}

/// Absent past 128 bits.
std::optional<Wide> product(Wide a, Wide b) {
    Wide result = 0;
    return __builtin_mul_overflow(a, b, &result) ? std::nullopt : std::optional(result);
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
    const Wide to_digits = power_of_ten(to.minor_digits());
    const Wide from_digits = power_of_ten(amount.currency.minor_digits());
    const Wide rate_top = rate->rate.coefficient();
    const Wide rate_bottom = power_of_ten(rate->rate.scale());
    const bool forward = rate->from == amount.currency;
    const auto numerator = product(amount.minor, to_digits * (forward ? rate_top : rate_bottom));
    if (!numerator) return std::nullopt;
    const Wide minor = divide_half_even(*numerator, from_digits * (forward ? rate_bottom : rate_top));
    if (minor > most_minor || minor < -most_minor) return std::nullopt;
    return Money{static_cast<std::int64_t>(minor), to};
}

} // namespace sumpbook::cost
