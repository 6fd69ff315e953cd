// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/labels.h"

#include "tests/catch.h"

#include <algorithm>
#include <random>

using namespace sumpbook::plot;

TEST_CASE("Labels that have room stay where they want to be", "[labels]") {
    CHECK(pushed_apart({{10, 10}, {50, 10}, {30, 10}}, 0, 100) == std::vector<double>{10, 50, 30});
    CHECK(pushed_apart({}, 0, 10) == std::vector<double>{});
}

TEST_CASE("Labels that want the same place share it evenly", "[labels]") {
    CHECK(pushed_apart({{50, 10}, {50, 10}}, 0, 100) == std::vector<double>{45, 55});
    CHECK(pushed_apart({{50, 10}, {52, 10}, {90, 10}}, 0, 100) == std::vector<double>{46, 56, 90});
    CHECK(pushed_apart({{0, 10}, {0, 10}}, 0, 100) == std::vector<double>{5, 15});
    CHECK(pushed_apart({{100, 10}, {99, 10}}, 0, 100) == std::vector<double>{95, 85});
}

TEST_CASE("Labels that cannot all fit have no places", "[labels]") {
    CHECK_FALSE(pushed_apart({{5, 10}, {5, 10}}, 0, 19));
    CHECK(pushed_apart({{5, 10}, {5, 10}}, 0, 20).has_value());
}

TEST_CASE("Whatever labels want, none lies on another or outside", "[labels]") {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> wanted(-20, 220), length(4, 14);
    for (int round = 0; round < 500; ++round) {
        std::vector<Wish> wishes(static_cast<std::size_t>(1 + round % 14));
        for (Wish& wish : wishes)
            wish = {wanted(random), length(random)};
        const auto found = pushed_apart(wishes, 0, 200);
        REQUIRE(found.has_value());
        for (std::size_t i = 0; i < wishes.size(); ++i) {
            REQUIRE((*found)[i] - wishes[i].length / 2 >= -1e-6);
            REQUIRE((*found)[i] + wishes[i].length / 2 <= 200 + 1e-6);
            for (std::size_t j = 0; j < i; ++j)
                REQUIRE(std::abs((*found)[i] - (*found)[j]) >=
                        (wishes[i].length + wishes[j].length) / 2 - 1e-6);
        }
    }
}

TEST_CASE("Flags keep clear of each other and of each other's poles", "[labels]") {
    using Rows = std::vector<std::optional<int>>;
    CHECK(rows_of({{10, 13, 60}, {100, 103, 150}}, 3) == Rows{0, 0});
    // The pole at 30 would go through the label of the one at 10, which therefore flies higher.
    CHECK(rows_of({{10, 13, 60}, {30, 33, 80}}, 3) == Rows{1, 0});
    CHECK(rows_of({{10, 13, 60}, {20, 23, 70}, {30, 33, 80}}, 3) == Rows{2, 1, 0});
    CHECK(rows_of({{10, 13, 60}, {20, 23, 70}, {30, 33, 80}}, 2) == Rows{std::nullopt, 1, 0});
    // To the left of its pole at the right edge.
    CHECK(rows_of({{80, 83, 99}, {100, 50, 97}}, 3) == Rows{0, 1});
}
