// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

namespace sumpbook::oil {

/// A kinematic viscosity with the temperature it was measured at.
struct ViscosityPoint {
    double celsius = 0;
    double mm2_s = 0;
};

/// How one oil thins with heat, through two measured points: log log Z = a - b log T, T in kelvin,
/// logarithms to base 10.
///
/// SOURCE: ASTM D341, Z = v + 0.7 + exp(-1.47 - 1.84 v - 0.51 v^2) and back v = (Z - 0.7) -
/// exp(-0.7487 - 3.295 (Z - 0.7) + 0.6119 (Z - 0.7)^2 - 0.3193 (Z - 0.7)^3). The exponential terms matter
/// below 2 mm2/s only and vanish above it, so the full form serves throughout.
class ViscosityLine {
public:
    /// Refused unless the temperatures differ and lie above absolute zero, both viscosities lie in
    /// 0.21 to 2 x 10^7 mm2/s and the warmer one is the lower.
    [[nodiscard]] static Result<ViscosityLine> through(ViscosityPoint first, ViscosityPoint second);

    /// Refused at or below absolute zero and where the result would leave that range.
    [[nodiscard]] Result<double> mm2_s_at(double celsius) const;
    /// True outside the two measured temperatures: the figure rests on the equation alone there.
    [[nodiscard]] bool extrapolates_to(double celsius) const;

    [[nodiscard]] double a() const { return a_; }
    [[nodiscard]] double b() const { return b_; }

private:
    double a_ = 0;
    double b_ = 0;
    double coolest_ = 0;
    double warmest_ = 0;
};

} // namespace sumpbook::oil
