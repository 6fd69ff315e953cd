// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/currency.h"
#include "model/quantity/decimal.h"
#include "model/quantity/volume.h"

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

/// "12.34", "1234" for yen, "1.234" for dinars; without the code.
[[nodiscard]] std::string amount_text(const Money& money);
/// "12.34 EUR".
[[nodiscard]] std::string text_of(const Money& money);
[[nodiscard]] Decimal amount(const Money& money);
/// Refused when the number has more decimals than the currency has minor digits: a typed amount is
/// never rounded silently.
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

/// A sum kept apart by currency.
class MoneyByCurrency {
public:
    void add(const Money& money) { minor_[money.currency] += money.minor; }
    void add(const MoneyByCurrency& other);
    [[nodiscard]] std::vector<Money> amounts() const;
    [[nodiscard]] bool empty() const { return minor_.empty(); }
    bool operator==(const MoneyByCurrency&) const = default;

private:
    std::map<Currency, std::int64_t> minor_;
};

} // namespace sumpbook
