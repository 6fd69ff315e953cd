// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/written.h"

namespace sumpbook {

/// "45 N m" as the handbook or the wrench says it.
using WrittenTorque = Written<TorqueUnit>;

/// The torque in newton metres, for comparing and converting; every number is accepted.
/// SOURCE: pound 0.45359237 kg and yard 0.9144 m (1959 international yard and pound agreement), standard
/// acceleration of free fall 9.80665 m/s2 (3rd CGPM, 1901): 1 lbf ft = 1.3558179483314004 N m.
[[nodiscard]] double newton_metres_of(const WrittenTorque& written);
/// Newton metres as a figure in `unit`.
[[nodiscard]] double torque_in(TorqueUnit unit, double newton_metres);

} // namespace sumpbook
