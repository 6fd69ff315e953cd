// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

namespace sumpbook::oil {

/// The two reference oils an oil is compared with: viscosities at 40 C of an oil of viscosity index 0 (L)
/// and of one of 100 (H), both with the oil's own viscosity at 100 C.
struct ReferenceOils {
    double l_mm2_s = 0;
    double h_mm2_s = 0;
};

/// SOURCE: ASTM D2270 / ISO 2909, Table 1 with linear interpolation from 2.0 up to and including 70 mm2/s;
/// above it L = 0.8353 Y^2 + 14.67 Y - 216, H = 0.1684 Y^2 + 11.85 Y - 97. Refused below 2.0.
[[nodiscard]] Result<ReferenceOils> reference_oils(double kv100_mm2_s);

/// How little an oil thins with heat; a pure number, higher is steadier. May be negative.
struct ViscosityIndex {
    double exact = 0;
    int whole = 0; ///< As reported: the nearest whole number, half to even.
    ReferenceOils reference;
};

/// From kinematic viscosities at 40 and at 100 C. Refused below 2.0 mm2/s at 100 C, where the index is not
/// defined, and where the oil would not thin with heat.
///
/// SOURCE: ASTM D2270 / ISO 2909: procedure A, (L - U)/(L - H) x 100, where U is H or more; else B,
/// (10^N - 1)/0.00715 + 100 with N = (log H - log U)/log Y. Whole numbers: the standard; half to even: from
/// memory.
[[nodiscard]] Result<ViscosityIndex> viscosity_index(double kv40_mm2_s, double kv100_mm2_s);

} // namespace sumpbook::oil
