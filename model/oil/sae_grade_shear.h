// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/sae_grade.h"

namespace sumpbook::oil {

/// Least viscosity at 100 C, mm2/s, that an oil for wet clutches must keep after shearing: 9.0, 12.0 and
/// 15.0 for xW-30, xW-40 and xW-50, other grades the lower end of their band. 9.0 lies below the band of a
/// 30 grade, so "out of grade" and "below the floor after shear" are two findings. Absent for a grade
/// outside SAE J300.
///
/// SOURCE: JASO T 903, editions 2016 and 2023 (sae_grade_shear.csv).
[[nodiscard]] std::optional<Decimal> after_shear_floor_mm2_s(const SaeGrade& grade);

} // namespace sumpbook::oil
