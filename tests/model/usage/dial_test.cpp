// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/dial.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::Dials;

TEST_CASE("Before any change the dial shows the true distance") {
    const Dials dials;
    CHECK(dials.true_distance(km("12345.6")) == Distance::from_km(12345.6));
    CHECK(dials.shown_at(Distance::from_whole_km(7)) == Distance::from_whole_km(7));
    CHECK_FALSE(dials.changed());
}

TEST_CASE("A new dial carries on from the last reading of the old one") {
    Dials dials;
    dials.change(day("2020-05-01"), {km("45000"), km("12")});
    CHECK(dials.true_distance(km("112")) == Distance::from_whole_km(45100));
    CHECK(dials.shown_at(Distance::from_whole_km(45100)) == Distance::from_whole_km(112));
}

TEST_CASE("A dial in miles after one in kilometres") {
    Dials dials;
    dials.change(day("2020-05-01"), {km("10000"), miles("0")});
    CHECK(dials.true_distance(miles("1000")) == Distance::from_km(11609.344));
}

TEST_CASE("Two changes add up") {
    Dials dials;
    dials.change(day("2020-05-01"), {km("10000"), km("0")});
    dials.change(day("2022-05-01"), {km("5000"), km("100")});
    CHECK(dials.true_distance(km("150")) == Distance::from_whole_km(15050));
}

TEST_CASE("A reading without an entry belongs to the dial of its day, on the day of change to the old one") {
    Dials dials;
    dials.change(day("2020-05-01"), {km("45000"), km("0")});
    CHECK(dials.true_distance(km("44990"), day("2020-05-01")) == Distance::from_whole_km(44990));
    CHECK(dials.true_distance(km("10"), day("2020-05-02")) == Distance::from_whole_km(45010));
}
