// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/fuel_total.h"

#include <cmath>

namespace sumpbook {
namespace {

/// How far a typed figure may be from the true one.
double half_step(const Decimal& number) { return 0.5 * std::pow(10.0, -number.scale()); }

double litres_in(VolumeUnit unit) { return Volume::from_picolitres(picolitres_in(unit)).litres(); }

double allowed_difference(const UnitPrice& price, const WrittenVolume& volume, const Money& total) {
    const double per_unit = litres_in(volume.unit) / litres_in(price.per);
    const double by_volume = half_step(volume.number) * per_unit * price.amount.to_double();
    const double by_price = half_step(price.amount) * per_unit * volume.number.to_double();
    return by_volume + by_price + std::pow(10.0, -total.currency.minor_digits());
}

} // namespace

std::optional<Money> contradicting_product(const Fuel& fuel, const std::optional<Money>& total) {
    if (!fuel.price || !fuel.volume || !total || fuel.price->currency != total->currency) return std::nullopt;
    const auto product = price_of(*fuel.price, *fuel.volume);
    if (!product) return std::nullopt;
    const double difference = std::abs(amount(*product).to_double() - amount(*total).to_double());
    if (difference <= allowed_difference(*fuel.price, *fuel.volume, *total)) return std::nullopt;
    return *product;
}

} // namespace sumpbook
