// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/change_point.h"

#include "tests/catch.h"

#include <cmath>
#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

TEST_CASE("a change is looked for from twelve values on") {
    CHECK_FALSE(change_point(Values(11, 1.0)).has_value());
    CHECK(change_point(Values(12, 1.0)).has_value());
}

TEST_CASE("a step is found where it stands") {
    const auto change = change_point(Values{1, 1, 1, 1, 1, 1, 1, 1, 9, 9, 9, 9}).value();
    CHECK(change.last_before == 8);
    CHECK(change.k == 32); // each of 8 below each of 4
    CHECK(change.p == Approx(2 * std::exp(-6.0 * 32 * 32 / (12 * 12 * 12 + 12 * 12))));
    CHECK(change_point(Values{9, 9, 9, 9, 9, 9, 9, 9, 1, 1, 1, 1})->last_before == 8);
}

TEST_CASE("of several places with the same difference the first is named") {
    const auto change = change_point(Values{1, 1, 1, 1, 1, 5, 5, 9, 9, 9, 9, 9}).value();
    CHECK(change.last_before == 5);
    CHECK(change.k == 35);
    const auto tie = change_point(Values{1, 1, 1, 1, 5, 5, 5, 5, 1, 1, 1, 1}).value();
    CHECK(tie.last_before == 4);
    CHECK(tie.k == 16);
}

TEST_CASE("a level series shows no change") {
    const auto change = change_point(Values(12, 3.0)).value();
    CHECK(change.k == 0);
    CHECK(change.p == 1.0);
}
