// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_name.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;

TEST_CASE("An oil is named by its change, else by the sample", "[oil]") {
    OilGarage garage;
    const auto name = [&] {
        const OilRecord record = OilRecord::of(garage.garage, garage.bike());
        return oil_name_of(fill_of(record, *used_samples(garage.bike(), "engine").back()));
    };
    std::get<Sample>(garage.draw("2023-06-01", {value("Fe", "9")}).value.body).oil_name = "Fenland";
    CHECK(name() == "Fenland");
    garage.fill("2024-01-02", "10W-40", "Marsh 4T");
    std::get<Sample>(garage.draw("2024-06-01", {value("Fe", "9")}).value.body).oil_name = "Fenland";
    CHECK(name() == "Marsh 4T");
    std::get<OilChange>(garage.fill("2024-07-01").value.body).oil_name.reset();
    garage.draw("2024-09-01", {value("Fe", "9")});
    CHECK_FALSE(name());
}
