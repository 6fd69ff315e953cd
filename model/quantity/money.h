// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/currency.h"
#include "model/quantity/decimal.h"
#include "model/quantity/volume.h"
#include "model/quantity/wide.h"

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace sumpbook {

/// An amount in whole minor units (cents) of one currency. Amounts of two currencies are never added
/// or ordered: there is no operator for it; sum into a MoneyByCurrency instead.
struct Money {
    std::int64_t minor = 0;
    Currency currency;
    bool operator==(const Money&) const = default;
};

/// Largest amount that is accepted from outside, either sign, in minor units: 10 000 000 000 000.00 EUR
/// (DESIGN).
inline constexpr std::int64_t most_minor = 1'000'000'000'000'000;
[[nodiscard]] constexpr bool is_allowed(const Money& money) {
    return money.minor <= most_minor && money.minor >= -most_minor;
}

/// "12.34", "1234" for yen, "1.234" for dinars; without the code.
[[nodiscard]] std::string amount_text(const Money& money);
/// "12.34 EUR".
[[nodiscard]] std::string text_of(const Money& money);
[[nodiscard]] Decimal amount(const Money& money);
/// Refused when the number has more decimals than the currency has minor digits: a typed amount is
/// never rounded silently. Refused past `most_minor`, as are the two below.
[[nodiscard]] Result<Money> money_of(const Decimal& amount, const Currency& currency);
/// Rounded half to even to the minor unit; for computed amounts.
[[nodiscard]] Result<Money> rounded_money(const Decimal& amount, const Currency& currency);

/// Price of a unit of liquid as on the pump, with all its decimals: 1.859 EUR per L.
struct UnitPrice {
    Decimal amount;
    Currency currency;
    VolumeUnit per = VolumeUnit::l;
    bool operator==(const UnitPrice& other) const {
        return amount.same_as_written(other.amount) && currency == other.currency && per == other.per;
    }
};

/// Price x volume, rounded half to even to the minor unit. Exact before rounding; the volume may be in
/// another unit than the price.
[[nodiscard]] Result<Money> price_of(const UnitPrice& price, const WrittenVolume& volume);

/// A sum kept apart by currency. Exact inside for any number of amounts a garage can hold (16 million of 64
/// bits each stay below 128 bits), whatever the order.
class MoneyByCurrency {
public:
    void add(const Money& money) { minor_[money.currency] += money.minor; }
    void add(const MoneyByCurrency& other);
    /// A sum past the 18 digits of a Decimal comes out as 18 nines.
    [[nodiscard]] std::vector<Money> amounts() const;
    [[nodiscard]] bool empty() const { return minor_.empty(); }
    bool operator==(const MoneyByCurrency&) const = default;

private:
    std::map<Currency, Wide> minor_;
};

} // namespace sumpbook
