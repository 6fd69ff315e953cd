// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <optional>

namespace sumpbook::oil {

/// Rules for the viscosity of a mixture of two liquids at one temperature: an index of the viscosity is
/// averaged by share. The published chart for fuel in oil lies between them, so all are shown.
enum class BlendRule {
    refutas,    ///< ln ln(v + 0.8). SOURCE: Maples, Petroleum Refinery Process Economics, 2nd ed. 2000.
    double_log, ///< log log(v + 0.7), the scale of ASTM D341 charts.
    arrhenius,  ///< ln v. From memory.
};

/// Viscosity of a mixture with `fuel_share` (0 to 1) of fuel; absent where the rule has no index for one of
/// the two (Refutas up to 0.2 mm2/s, double log up to 0.3).
[[nodiscard]] std::optional<double> blended_mm2_s(BlendRule rule, double oil_mm2_s, double fuel_mm2_s,
                                                  double fuel_share);
/// The share of fuel (0 to 1) that would thin the new oil to the used one. Absent where the rule has no
/// index, and where the used oil is thinner than the fuel itself.
[[nodiscard]] std::optional<double> fuel_share(BlendRule rule, double new_mm2_s, double used_mm2_s,
                                               double fuel_mm2_s);

/// The temperature both viscosities were measured at.
enum class ViscosityAt { celsius_40, celsius_100 };
/// Viscosity taken for petrol: 0.35 mm2/s at 100 C, 0.5 at 40 C (DESIGN, from memory).
[[nodiscard]] double petrol_mm2_s(ViscosityAt at);

/// Petrol in the oil as its loss of viscosity suggests, in per cent, one figure a rule. An estimate: oil
/// also thins by shear and thickens with age.
struct FuelFromViscosity {
    std::optional<double> refutas_percent;
    std::optional<double> double_log_percent;
    std::optional<double> arrhenius_percent;
    double lowest_percent = 0;
    double highest_percent = 0;
};

/// 0 where the used oil is as thick as the new one or thicker. Refused unless the viscosities are above 0,
/// the new oil is thicker than petrol and at least one rule gives an answer.
[[nodiscard]] Result<FuelFromViscosity> petrol_from_viscosity(double new_mm2_s, double used_mm2_s,
                                                              ViscosityAt at);

} // namespace sumpbook::oil
