// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/torque.h"

namespace sumpbook {
namespace {

constexpr double newtons_per_kgf = 9.80665;
constexpr double kg_per_lb = 0.45359237;
constexpr double m_per_in = 0.0254;

constexpr double newton_metres_in(TorqueUnit unit) {
    switch (unit) {
    case TorqueUnit::nm:
        return 1;
    case TorqueUnit::lbf_ft:
        return kg_per_lb * newtons_per_kgf * 12 * m_per_in;
    case TorqueUnit::lbf_in:
        return kg_per_lb * newtons_per_kgf * m_per_in;
    case TorqueUnit::kgf_m:
        return newtons_per_kgf;
    }
    return 1;
}

} // namespace

double newton_metres_of(const WrittenTorque& written) {
    return written.number.to_double() * newton_metres_in(written.unit);
}

double torque_in(TorqueUnit unit, double newton_metres) { return newton_metres / newton_metres_in(unit); }

} // namespace sumpbook
