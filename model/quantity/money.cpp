// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/money.h"

namespace sumpbook {
namespace {

constexpr std::int64_t most_of_a_sum = 999'999'999'999'999'999; // 18 digits, as in Decimal

tl::unexpected<Problem> too_large(const Currency& currency) {
    return refuse("The amount is too large: at most " + text_of(Money{most_minor, currency}) + ".");
}

Result<Money> allowed(Wide minor, const Currency& currency) {
    if (minor > most_minor || minor < -most_minor) return too_large(currency);
    return Money{static_cast<std::int64_t>(minor), currency};
}

} // namespace

Decimal amount(const Money& money) { return {money.minor, money.currency.minor_digits()}; }
std::string amount_text(const Money& money) { return amount(money).text(); }
std::string text_of(const Money& money) { return amount_text(money) + " " + money.currency.code(); }

Result<Money> rounded_money(const Decimal& amount, const Currency& currency) {
    const int digits = currency.minor_digits();
    const Decimal in_minor_units = rounded(amount, digits);
    if (in_minor_units.scale() != digits) return too_large(currency);
    return allowed(in_minor_units.coefficient(), currency);
}

Result<Money> money_of(const Decimal& amount, const Currency& currency) {
    const auto money = rounded_money(amount, currency);
    if (money && sumpbook::amount(*money) != amount) {
        return refuse("An amount in " + currency.code() + " has at most " +
                          std::to_string(currency.minor_digits()) + " digits after the point.",
                      {.file = {}, .line = {}, .column = {}, .text = amount.text()});
    }
    return money;
}

Result<Money> price_of(const UnitPrice& price, const WrittenVolume& volume) {
    // volume x (nanolitres in its unit) / (nanolitres in the price's unit) x amount, rounded once; every
    // unit of volume is a whole number of nanolitres.
    constexpr std::int64_t picolitres_per_nanolitre = 1000;
    Wide numerator = Wide{volume.number.coefficient()} * price.amount.coefficient();
    int scale = volume.number.scale() + price.amount.scale() - price.currency.minor_digits();
    const Wide largest = Wide{1} << 70; // 2^70 x 10^4 x 2^33 stays below 2^127
    if (numerator > largest || numerator < -largest || scale > 18) return too_large(price.currency);
    Wide denominator = 1;
    for (; scale > 0; --scale)
        denominator *= 10;
    for (; scale < 0; ++scale)
        numerator *= 10;
    if (volume.unit != price.per) {
        numerator *= picolitres_in(volume.unit) / picolitres_per_nanolitre;
        denominator *= picolitres_in(price.per) / picolitres_per_nanolitre;
    }
    return allowed(divide_half_even(numerator, denominator), price.currency);
}

void MoneyByCurrency::add(const MoneyByCurrency& other) {
    for (const auto& [currency, minor] : other.minor_)
        minor_[currency] += minor;
}

std::vector<Money> MoneyByCurrency::amounts() const {
    std::vector<Money> all;
    for (const auto& [currency, minor] : minor_)
        all.push_back({held_within(minor, most_of_a_sum), currency});
    return all;
}

} // namespace sumpbook
