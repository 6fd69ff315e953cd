// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/coolant.h"
#include "tests/model/oil/oil_garage.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

namespace {

CoolantSign sign_of(const std::vector<SampleValue>& used, const std::vector<SampleValue>& fresh = {},
                    std::optional<Cooling> cooling = Cooling::liquid, const char* profile = "motorcycle") {
    RatingBasis basis;
    basis.profile = find_profile(profile).value();
    basis.engine.fuel = FuelType::petrol;
    basis.reference.values = fresh;
    std::vector<RatedValue> values;
    for (const SampleValue& each : used)
        values.push_back(rate_value(each, basis));
    return coolant_sign(values, cooling);
}

using Metals = std::vector<std::string>;

} // namespace

TEST_CASE("Sodium is named from 100 and potassium from 150 mg/kg", "[oil]") {
    CHECK_FALSE(sign_of({value("Na", "99.9")}).is_named());
    CHECK(sign_of({value("Na", "100")}).metals == Metals{"Na"});
    CHECK_FALSE(sign_of({value("K", "149")}).is_named());
    CHECK(sign_of({value("K", "150")}).metals == Metals{"K"});
}

TEST_CASE("Both are named from 20 above the new oil", "[oil]") {
    CHECK(sign_of({value("Na", "20"), value("K", "20")}).metals == Metals{"Na", "K"});
    CHECK_FALSE(sign_of({value("Na", "20"), value("K", "19")}).is_named());
    CHECK_FALSE(
        sign_of({value("Na", "25"), value("K", "25")}, {value("Na", "6"), value("K", "1")}).is_named());
    CHECK(sign_of({value("Na", "26"), value("K", "21")}, {value("Na", "6"), value("K", "1")}).is_named());
}

TEST_CASE("A judged metal is not named again, and boron never is", "[oil]") {
    const std::vector<SampleValue> fresh{value("Na", "2"), value("K", "1")};
    CHECK_FALSE(sign_of({value("Na", "120"), value("K", "2")}, fresh, Cooling::liquid, "dd").is_named());
    CHECK_FALSE(sign_of({value("B", "500")}).is_named());
}

TEST_CASE("Without coolant the metals are named and lift nothing", "[oil]") {
    const auto high = std::vector<SampleValue>{value("Na", "140")};
    CHECK(sign_of(high, {}, Cooling::air).is_named());
    CHECK_FALSE(sign_of(high, {}, Cooling::air).lifts());
    CHECK_FALSE(sign_of(high, {}, Cooling::oil).lifts());
    CHECK(sign_of(high, {}, std::nullopt).lifts());
}
