// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/censored.h"

#include "tests/catch.h"

#include <cmath>

using namespace sumpbook::stats;
using Values = std::vector<CensoredValue>;

TEST_CASE("Too few detected values have no summary", "[stats][censored]") {
    CHECK_FALSE(summary_of_censored(Values{}));
    CHECK_FALSE(summary_of_censored(Values{{1, true}, {2, false}, {3, false}}));
    CHECK_FALSE(summary_of_censored(Values{{0, false}, {2, false}, {3, false}}));
    Values mostly_below(13, CensoredValue{1, true});
    for (const double detected : {2.0, 3.0, 4.0})
        mostly_below.push_back({detected, false});
    CHECK_FALSE(summary_of_censored(mostly_below)); // 13 of 16
    mostly_below.erase(mostly_below.begin());
    CHECK(summary_of_censored(mostly_below)); // 12 of 15 are 80 %
}

TEST_CASE("Without values below detection a summary is the plain one", "[stats][censored]") {
    const auto summary = summary_of_censored(Values{{1, false}, {2, false}, {6, false}}).value();
    CHECK(summary.mean == Approx(3));
    CHECK(summary.median == Approx(2));
    CHECK(summary.sd == Approx(std::sqrt(7.0)));
    CHECK(summary.below == 0);
    CHECK(summary.detected == 3);
}

TEST_CASE("The curve of detected values alone climbs by equal steps", "[stats][censored]") {
    const auto curve = share_curve(Values{{3, false}, {1, false}, {2, false}, {2, false}});
    REQUIRE(curve.size() == 3);
    CHECK(curve[0].number == 1);
    CHECK(curve[0].share == Approx(0.25));
    CHECK(curve[1].share == Approx(0.75));
    CHECK(curve[2].share == 1);
    CHECK(quantile_of(curve, 0.5) == 2);
    CHECK(mean_of(curve) == Approx(2));
    CHECK(share_curve(Values{{1, true}}).empty());
    CHECK_FALSE(quantile_of({}, 0.5));
}

TEST_CASE("What may lie under a detection limit ties at the bottom", "[stats][censored]") {
    const auto ranks = ranked_numbers(Values{{1, true}, {2, false}, {3, true}, {3, false}, {5, false}});
    CHECK(ranks == std::vector<double>{2, 2, 2, 3, 5});
    CHECK(ranked_numbers(Values{{2, false}, {1, false}}) == std::vector<double>{2, 1});
}
