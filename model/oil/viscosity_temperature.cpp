// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/viscosity_temperature.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace sumpbook::oil {
namespace {

constexpr double kelvin_at_0_celsius = 273.15;
/// The viscosities the equation is made for, in mm2/s (ASTM D341, scope; from memory).
constexpr double lowest_mm2_s = 0.21;
constexpr double highest_mm2_s = 2e7;

double z_of(double v) { return v + 0.7 + std::exp(-1.47 - 1.84 * v - 0.51 * v * v); }

double viscosity_of(double z) {
    const double w = z - 0.7;
    return w - std::exp(-0.7487 - 3.295 * w + 0.6119 * w * w - 0.3193 * w * w * w);
}

/// log10 log10 Z; absent outside the viscosities of the equation.
std::optional<double> double_log(double v) {
    if (!(v >= lowest_mm2_s && v <= highest_mm2_s)) return std::nullopt;
    return std::log10(std::log10(z_of(v)));
}

bool above_absolute_zero(double celsius) { return std::isfinite(celsius) && celsius > -kelvin_at_0_celsius; }

double log_kelvin(double celsius) { return std::log10(celsius + kelvin_at_0_celsius); }

} // namespace

Result<ViscosityLine> ViscosityLine::through(ViscosityPoint first, ViscosityPoint second) {
    if (!above_absolute_zero(first.celsius) || !above_absolute_zero(second.celsius)) {
        return refuse("A temperature must lie above absolute zero, -273.15 C.");
    }
    if (first.celsius == second.celsius) return refuse("Two different temperatures are needed.");
    if (first.celsius > second.celsius) std::swap(first, second);
    const auto cool = double_log(first.mm2_s);
    const auto warm = double_log(second.mm2_s);
    if (!cool || !warm)
        return refuse("The equation (ASTM D341) is made for viscosities from 0.21 to 20 000 000 mm2/s.");
    if (!(first.mm2_s > second.mm2_s)) {
        return refuse(
            "Oil thins as it warms: the warmer viscosity must be the lower one. Are the two figures "
            "the wrong way round?");
    }
    ViscosityLine line;
    line.b_ = (*cool - *warm) / (log_kelvin(second.celsius) - log_kelvin(first.celsius));
    line.a_ = *cool + line.b_ * log_kelvin(first.celsius);
    line.coolest_ = first.celsius;
    line.warmest_ = second.celsius;
    return line;
}

Result<double> ViscosityLine::mm2_s_at(double celsius) const {
    if (!above_absolute_zero(celsius)) {
        return refuse("A temperature must lie above absolute zero, -273.15 C.");
    }
    const double z = std::pow(10, std::pow(10, a_ - b_ * log_kelvin(celsius)));
    const double v = viscosity_of(z);
    if (!(v >= lowest_mm2_s && v <= highest_mm2_s)) {
        return refuse("At this temperature the equation (ASTM D341) gives no viscosity.");
    }
    return v;
}

bool ViscosityLine::extrapolates_to(double celsius) const { return celsius < coolest_ || celsius > warmest_; }

} // namespace sumpbook::oil
