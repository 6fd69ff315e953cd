// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/written.h"

namespace sumpbook {

/// "100 °C" as written.
using WrittenTemperature = Written<TemperatureUnit>;

/// The temperature in degrees Celsius; every number is accepted. F = 1.8 C + 32 (definition of the scale,
/// NIST SP 811, 2008, appendix B.8).
[[nodiscard]] double celsius_of(const WrittenTemperature& written);
/// Degrees Celsius as a figure in `unit`.
[[nodiscard]] double temperature_in(TemperatureUnit unit, double celsius);

} // namespace sumpbook
