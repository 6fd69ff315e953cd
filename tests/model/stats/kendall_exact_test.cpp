// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/kendall_exact.h"

#include "tests/catch.h"

#include <stdexcept>

using namespace sumpbook::stats;

TEST_CASE("three values have six orders with scores 3 1 1 -1 -1 -3") {
    CHECK(kendall_orders_reaching(3, 5) == 0);
    CHECK(kendall_orders_reaching(3, 3) == 1);
    CHECK(kendall_orders_reaching(3, 2) == 1);
    CHECK(kendall_orders_reaching(3, 1) == 3);
    CHECK(kendall_orders_reaching(3, -1) == 5);
    CHECK(kendall_orders_reaching(3, -3) == 6);
    CHECK(kendall_orders_reaching(3, -99) == 6);
}

TEST_CASE("all orders of twenty values still fit") {
    CHECK(kendall_orders_reaching(20, -190) == 2'432'902'008'176'640'000U); // 20!
    CHECK(kendall_upper_tail(20, -190) == 1.0);
    CHECK_THROWS_AS(kendall_upper_tail(21, 0), std::out_of_range);
    CHECK_THROWS_AS(kendall_upper_tail(0, 0), std::out_of_range);
}

TEST_CASE("the critical score is the smallest whose tail is small enough, equality counting") {
    CHECK(kendall_critical(4, 1.0 / 24) == 6);
    CHECK_FALSE(kendall_critical(4, 0.0416).has_value()); // four points cannot reach it
    CHECK(kendall_critical(4, 4.0 / 24) == 4);
    CHECK(kendall_critical(1, 1) == 0);
    CHECK(kendall_critical(3, 1) == -3);
}
