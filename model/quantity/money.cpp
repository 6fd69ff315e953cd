// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/money.h"

namespace sumpbook {

Decimal amount(const Money& money) { return {money.minor, money.currency.minor_digits()}; }
std::string amount_text(const Money& money) { return amount(money).text(); }
std::string text_of(const Money& money) { return amount_text(money) + " " + money.currency.code(); }

Result<Money> rounded_money(const Decimal& amount, const Currency& currency) {
    const int digits = currency.minor_digits();
    const Decimal in_minor_units = rounded(amount, digits);
    if (in_minor_units.scale() != digits) return refuse("The amount is too large.");
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
    // number x (picolitres of its unit) / (picolitres of the price's unit) x amount, rounded once
    __extension__ using Wide = __int128;
    const int digits = price.currency.minor_digits();
    Wide numerator = Wide{volume.number.coefficient()} * price.amount.coefficient();
    int scale = volume.number.scale() + price.amount.scale() - digits;
    const Wide largest = Wide{1} << 70;
    if (numerator > largest || numerator < -largest || scale > 18) return refuse("The amount is too large.");
    Wide denominator = 1;
    for (; scale > 0; --scale) denominator *= 10;
    for (; scale < 0; ++scale) numerator *= 10;
    if (volume.unit != price.per) {
        constexpr std::int64_t common = 1'000'000; // every unit is a whole number of microlitres/1000
        numerator *= picolitres_in(volume.unit) / common;
        denominator *= picolitres_in(price.per) / common;
    }
    Wide minor = numerator / denominator;
    Wide rest = numerator % denominator;
    if (rest < 0) rest = -rest;
    if (rest * 2 > denominator || (rest * 2 == denominator && minor % 2 != 0)) minor += numerator < 0 ? -1 : 1;
    return Money{static_cast<std::int64_t>(minor), price.currency};
}

void MoneyByCurrency::add(const MoneyByCurrency& other) {
    for (const auto& [currency, minor] : other.minor_) minor_[currency] += minor;
}

std::vector<Money> MoneyByCurrency::amounts() const {
    std::vector<Money> all;
    for (const auto& [currency, minor] : minor_) all.push_back({minor, currency});
    return all;
}

} // namespace sumpbook
