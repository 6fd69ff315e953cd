// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/reaching.h"

#include "tests/catch.h"

#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

TEST_CASE("The bounds of the line are at the level where it is reached", "[stats][reaching]") {
    const auto fit = fit_line(Values{0, 2, 4, 6}, Values{10, 8.2, 5.9, 4.1}).value();
    const auto when = reaching(fit, 3, true, 0.80);
    REQUIRE(when.earliest);
    REQUIRE(when.middle);
    REQUIRE(when.latest);
    CHECK(fit.at(*when.middle) == Approx(3));
    CHECK(prediction_interval(fit, *when.earliest, 0.80).low == Approx(3));
    CHECK(prediction_interval(fit, *when.latest, 0.80).high == Approx(3));
    CHECK(*when.earliest < *when.middle);
    CHECK(*when.middle < *when.latest);
}

TEST_CASE("Rising is falling turned over", "[stats][reaching]") {
    const Values xs{0, 2, 4, 6};
    const auto down = reaching(fit_line(xs, Values{10, 8.2, 5.9, 4.1}).value(), 3, true, 0.80);
    const auto up = reaching(fit_line(xs, Values{-10, -8.2, -5.9, -4.1}).value(), -3, false, 0.80);
    CHECK(*up.earliest == Approx(*down.earliest));
    CHECK(*up.middle == Approx(*down.middle));
    CHECK(*up.latest == Approx(*down.latest));
}

TEST_CASE("A doubtful slope has no latest, the wrong way no middle", "[stats][reaching]") {
    const auto doubtful = reaching(fit_line(Values{0, 1, 2}, Values{10, 6, 9}).value(), 3, true, 0.80);
    CHECK(doubtful.earliest);
    CHECK_FALSE(doubtful.latest);
    const auto away = reaching(fit_line(Values{0, 1, 2, 3}, Values{10, 11, 12, 13}).value(), 3, true, 0.80);
    CHECK_FALSE(away.earliest);
    CHECK_FALSE(away.middle);
    CHECK_FALSE(away.latest);
}

TEST_CASE("A perfect line has no width, a level passed at the start is reached at 0", "[stats][reaching]") {
    const auto fit = fit_line(Values{0, 1, 2}, Values{10, 8, 6}).value();
    const auto when = reaching(fit, 2, true, 0.80);
    CHECK(*when.earliest == Approx(4));
    CHECK(*when.middle == Approx(4));
    CHECK(*when.latest == Approx(4));
    const auto passed = reaching(fit, 12, true, 0.80);
    CHECK(passed.earliest == 0);
    CHECK(passed.middle == 0);
    CHECK(passed.latest == 0);
}
