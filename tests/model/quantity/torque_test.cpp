// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/torque.h"

#include "tests/catch.h"

using namespace sumpbook;

TEST_CASE("Torques compare in newton metres whatever the wrench says", "[torque]") {
    CHECK(newton_metres_of({Decimal(45), TorqueUnit::nm}) == 45);
    CHECK(newton_metres_of({Decimal(12), TorqueUnit::lbf_in}) ==
          Approx(newton_metres_of({Decimal(1), TorqueUnit::lbf_ft})));
    CHECK(newton_metres_of({Decimal(33), TorqueUnit::lbf_ft}) == Approx(44.742).margin(0.0005));
    for (const auto unit : {TorqueUnit::nm, TorqueUnit::lbf_ft, TorqueUnit::lbf_in, TorqueUnit::kgf_m}) {
        CHECK(torque_in(unit, newton_metres_of({Decimal(45, 1), unit})) == Approx(4.5).epsilon(1e-14));
    }
    CHECK(text_of(WrittenTorque{Decimal(450, 1), TorqueUnit::nm}) == "45.0 N m");
}
