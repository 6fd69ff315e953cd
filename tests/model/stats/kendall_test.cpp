// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/kendall.h"

#include "tests/catch.h"

#include <rapidcheck.h>

#include <algorithm>
#include <vector>

using namespace sumpbook::stats;
using Values = std::vector<double>;

TEST_CASE("the score counts pairs that rise together less pairs that do not") {
    const auto rising = kendall_score(Values{1, 2, 3, 4}, Values{1, 2, 3, 4});
    CHECK(rising.s == 6);
    CHECK(rising.pairs == 6);
    CHECK(rising.tau_a() == 1.0);
    CHECK(rising.tau_b() == 1.0);
    CHECK(kendall_score(Values{1, 2, 3, 4}, Values{4, 3, 2, 1}).s == -6);
    CHECK(kendall_score(Values{1, 2, 3}, Values{2, 1, 3}).s == 1);
}

TEST_CASE("the order in which points are listed does not matter") {
    const auto sorted = kendall_score(Values{1, 2, 3, 4}, Values{10, 30, 20, 40});
    const auto mixed = kendall_score(Values{3, 1, 4, 2}, Values{20, 10, 40, 30});
    CHECK(sorted.s == mixed.s);
    CHECK(sorted.variance == mixed.variance);
}

TEST_CASE("pairs tied in x or y add nothing to the score") {
    const auto score = kendall_score(Values{1, 1, 2}, Values{5, 6, 6});
    CHECK(score.s == 1);
    CHECK(score.tied_x == 1);
    CHECK(score.tied_y == 1);
    CHECK(score.tau_a() == Approx(1.0 / 3));
    CHECK(score.tau_b() == Approx(0.5));
}

TEST_CASE("without ties the variance is n(n-1)(2n+5)/18") {
    CHECK(kendall_score(Values{1, 2, 3, 4}, Values{1, 2, 3, 4}).variance == Approx(4 * 3 * 13 / 18.0));
}

TEST_CASE("no points, one point, everything tied") {
    const auto none = kendall_score({}, {});
    CHECK(none.s == 0);
    CHECK_FALSE(none.tau_a().has_value());
    CHECK_FALSE(kendall_score(Values{1}, Values{1}).tau_b().has_value());
    const auto level = kendall_score(Values{1, 2, 3}, Values{7, 7, 7});
    CHECK(level.variance == Approx(0).margin(1e-12));
    CHECK_FALSE(level.tau_b().has_value());
}

TEST_CASE("with ties on both sides the variance is that of all orders counted out") {
    // every order of y against x, 120 of them: no formula involved
    const Values xs{1, 1, 2, 3, 3};
    Values ys{1, 2, 2, 2, 5};
    double squares = 0;
    int orders = 0;
    std::vector<std::size_t> order{0, 1, 2, 3, 4};
    do {
        Values shuffled;
        for (const auto i : order)
            shuffled.push_back(ys[i]);
        const auto s = static_cast<double>(kendall_score(xs, shuffled).s);
        squares += s * s;
        ++orders;
    } while (std::next_permutation(order.begin(), order.end()));
    REQUIRE(orders == 120);
    CHECK(kendall_score(xs, ys).variance == Approx(squares / orders).epsilon(1e-12));
}

TEST_CASE("turning y round turns the sign of the score and nothing else") {
    CHECK(rc::check([](const std::vector<std::pair<std::int8_t, std::int8_t>>& points) {
        Values xs;
        Values ys;
        Values turned;
        for (const auto& [x, y] : points) {
            xs.push_back(x);
            ys.push_back(y);
            turned.push_back(-y);
        }
        const auto score = kendall_score(xs, ys);
        const auto back = kendall_score(xs, turned);
        RC_ASSERT(score.s == -back.s);
        RC_ASSERT(score.variance == back.variance);
    }));
}
