// SPDX-License-Identifier: GPL-3.0-or-later
// Two groups compared by counting, and the power of such comparisons. Sources stand in the tables: Box,
// Hunter and Hunter 1978 p. 100 for the shoes; stat-power.csv for the power of the t test.
#include "model/stats/power.h"
#include "model/stats/two_sample.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

using namespace sumpbook::outside;
using namespace sumpbook::stats;

namespace {

std::vector<double> shoes(const std::string& material) {
    std::vector<double> values;
    for (const CheckRow& row : check_table("stat-two-sample-data.csv")) {
        if (row["series"] != "bhh-shoes" || row["group"] != material) continue;
        row.count_as_tested();
        values.push_back(row.number("value"));
    }
    REQUIRE(values.size() == 10);
    return values;
}

/// A row such as "14/1024=0.013671875".
void check_counts(const std::string& key, const ExactTest& test) {
    const CheckRow& row = check_row("stat-expected.csv", key);
    TESTING_ROW(row);
    const auto expected = numbers_in(row["expected"]);
    CHECK(static_cast<double>(test.as_far) == expected.at(0));
    CHECK(static_cast<double>(test.all) == expected.at(1));
    CHECK(test.p_two_sided() == Approx(expected.at(2)).epsilon(1e-11));
}

std::size_t group_size(const CheckRow& row) { return static_cast<std::size_t>(row.number("n")); }

} // namespace

TEST_CASE("every swap of the ten pairs of shoes is counted", "[outside][two-sample]") {
    check_counts("two-sample | same | paired sign-flip exact p",
                 sign_flip_test(shoes("A"), shoes("B")).value());
}

TEST_CASE("every dealing of the twenty shoes to two groups is counted", "[outside][two-sample]") {
    check_counts("two-sample | same | unpaired exact permutation p (wrong analysis, power lesson)",
                 permutation_test(shoes("A"), shoes("B")).value());
}

TEST_CASE("power of two groups as published", "[outside][two-sample]") {
    for (const CheckRow& row : check_table("stat-power.csv")) {
        if (row["quantity"].find("two-sample t, n=10") != 0) continue;
        TESTING_ROW(row);
        const double power = two_sample_power(group_size(row), row.number("delta_or_slope_over_sigma"));
        CHECK(power == Approx(row.number("value")).margin(1e-6));
        CHECK(power == Approx(row.number("published_rounded")).margin(0.005));
    }
}

TEST_CASE("groups needed for the smallest shift that is found four times in five", "[outside][two-sample]") {
    for (const CheckRow& row : check_table("stat-power.csv")) {
        if (row["quantity"].find("two-sample t, two-sided 5%, smallest") != 0) continue;
        TESTING_ROW(row);
        const double shift = row.number("value");
        CHECK(two_sample_power(group_size(row), shift) == Approx(0.80).margin(1e-6));
        CHECK(group_size_needed(shift + 1e-5) == group_size(row));
        CHECK(group_size_needed(shift - 1e-5) == group_size(row) + 1);
    }
}
