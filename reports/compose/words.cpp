// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/words.h"

namespace sumpbook::compose {

std::string grouped(const Decimal& number) {
    std::string text = number.text();
    const std::size_t first = text.starts_with('-') ? 1 : 0;
    const std::size_t point = text.find('.');
    for (std::size_t at = point == std::string::npos ? text.size() : point; at > first + 3;) {
        at -= 3;
        text.insert(at, 1, ' ');
    }
    return text;
}

std::string words(Distance distance, DistanceUnit unit, int scale) {
    return grouped(in_unit(distance, unit, scale)) + " " + std::string(symbol(unit));
}

std::string words(const WrittenDistance& distance) {
    return grouped(distance.number) + " " + std::string(symbol(distance.unit));
}

std::string words(const WrittenVolume& volume) {
    return grouped(volume.number) + " " + std::string(symbol(volume.unit));
}

std::string words(Volume volume, VolumeUnit unit, int scale) {
    return grouped(in_unit(volume, unit, scale)) + " " + std::string(symbol(unit));
}

std::string words(const Money& money) { return grouped(amount(money)) + " " + money.currency.code(); }

std::string words(const MoneyByCurrency& money) {
    std::string text;
    for (const auto& amount : money.amounts())
        text += (text.empty() ? "" : " + ") + words(amount);
    return text;
}

std::string words(const Consumption& consumption, ConsumptionUnit unit) {
    const int scale = unit == ConsumptionUnit::l_per_100km ? 2 : 1;
    return grouped(decimal_from_double(consumption.in(unit), scale)) + " " + std::string(symbol(unit));
}

} // namespace sumpbook::compose
