// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/sae_grade_shear.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;

TEST_CASE("after shear a 30 may be thinner than its band, other grades may not", "[grade]") {
    CHECK(after_shear_floor_mm2_s({10, 30}) == Decimal::parse("9.0").value());
    CHECK(position_in(*band_of({10, 30}), Decimal::parse("9.0").value()) == BandPosition::below);
    CHECK(after_shear_floor_mm2_s({20, 60}) == Decimal::parse("21.9").value());
    CHECK(after_shear_floor_mm2_s({{}, 40}) == Decimal::parse("12.5").value()); // no xW-40
    CHECK_FALSE(after_shear_floor_mm2_s({10, 45}).has_value());
}
