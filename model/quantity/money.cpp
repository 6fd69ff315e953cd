// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/money.h"

#include <limits>

namespace sumpbook {
namespace {

tl::unexpected<Problem> too_large() { return refuse("The amount is too large."); }

} // namespace

Decimal amount(const Money& money) { return {money.minor, money.currency.minor_digits()}; }
std::string amount_text(const Money& money) { return amount(money).text(); }
std::string text_of(const Money& money) { return amount_text(money) + " " + money.currency.code(); }

Result<Money> rounded_money(const Decimal& amount, const Currency& currency) {
    const int digits = currency.minor_digits();
    const Decimal in_minor_units = rounded(amount, digits);
    if (in_minor_units.scale() != digits) return too_large();
    return Money{in_minor_units.coefficient(), currency};
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
    __extension__ using Wide = __int128;
    constexpr std::int64_t picolitres_per_nanolitre = 1000;
    Wide numerator = Wide{volume.number.coefficient()} * price.amount.coefficient();
    int scale = volume.number.scale() + price.amount.scale() - price.currency.minor_digits();
    const Wide largest = Wide{1} << 70; // 2^70 x 10^4 x 2^33 stays below 2^127
    if (numerator > largest || numerator < -largest || scale > 18) return too_large();
    Wide denominator = 1;
    for (; scale > 0; --scale)
        denominator *= 10;
    for (; scale < 0; ++scale)
        numerator *= 10;
    if (volume.unit != price.per) {
        numerator *= picolitres_in(volume.unit) / picolitres_per_nanolitre;
        denominator *= picolitres_in(price.per) / picolitres_per_nanolitre;
    }
    Wide minor = numerator / denominator;
    Wide rest = numerator % denominator;
    if (rest < 0) rest = -rest;
    if (rest * 2 > denominator || (rest * 2 == denominator && minor % 2 != 0))
        minor += numerator < 0 ? -1 : 1;
    if (minor > std::numeric_limits<std::int64_t>::max() ||
        minor < std::numeric_limits<std::int64_t>::min()) {
        return too_large();
    }
    return Money{static_cast<std::int64_t>(minor), price.currency};
}

void MoneyByCurrency::add(const MoneyByCurrency& other) {
    for (const auto& [currency, minor] : other.minor_)
        minor_[currency] += minor;
}

std::vector<Money> MoneyByCurrency::amounts() const {
    std::vector<Money> all;
    for (const auto& [currency, minor] : minor_)
        all.push_back({minor, currency});
    return all;
}

} // namespace sumpbook
