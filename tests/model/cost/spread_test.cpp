// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/spread.h"

#include "tests/catch.h"

using namespace sumpbook::cost;

TEST_CASE("A quantile of N sums is the ceil(qN)-th smallest") {
    CHECK(spread_of({5}) == Spread{5, 5, 5, 5});
    CHECK(spread_of({40, 10, 30, 20}) == Spread{25, 10, 20, 40});
    // 1st, 5th and 9th of ten; 2nd, 6th and 10th of eleven.
    CHECK(spread_of({1, 2, 3, 4, 5, 6, 7, 8, 9, 10}) == Spread{6, 1, 5, 9}); // mean 5.5, half to even
    CHECK(spread_of({1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}) == Spread{6, 2, 6, 10});
    CHECK(spread_of({-3, -2}).mean_minor == -2); // -2.5
}

TEST_CASE("Only sums strictly above an amount exceed it") {
    CHECK(chance_above({1, 2, 3, 4}, 3) == 0.25);
    CHECK(chance_above({1, 2, 3, 4}, 4) == 0);
    CHECK(chance_above({1, 2, 3, 4}, 0) == 1);
}

TEST_CASE("A twelfth is rounded half to even") {
    CHECK(twelfth(148'000) == 12'333);
    CHECK(twelfth(6) == 0);
    CHECK(twelfth(18) == 2);
}
