// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/temperature.h"

namespace sumpbook {

double celsius_of(const WrittenTemperature& written) {
    const double number = written.number.to_double();
    return written.unit == TemperatureUnit::fahrenheit ? (number - 32) / 1.8 : number;
}

double temperature_in(TemperatureUnit unit, double celsius) {
    return unit == TemperatureUnit::fahrenheit ? celsius * 1.8 + 32 : celsius;
}

} // namespace sumpbook
