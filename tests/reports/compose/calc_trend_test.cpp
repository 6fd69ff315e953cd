// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/calc_trend.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::compose;
using Values = std::vector<double>;

TEST_CASE("Sen's example as JSON", "[calc]") {
    // P. K. Sen 1968: slope 4, interval 3.71 to 4.38
    const auto answer = trend_answer(Values{1, 2, 3, 4, 10, 12, 18}, Values{9, 15, 19, 20, 45, 55, 78});
    CHECK(write::json(answer.json) == R"({
  "schema": 1,
  "points": 7,
  "theil_sen_slope": 4,
  "theil_sen_intercept": 4,
  "slope_low": 3.71428571429,
  "slope_high": 4.375,
  "slope_confidence": 0.969841,
  "mann_kendall_s": 21,
  "mann_kendall_variance": 44.3333333333,
  "mann_kendall_p_two_sided": 0.000396825396825,
  "mann_kendall_exact": true,
  "least_squares_slope": 4.02135231317,
  "least_squares_intercept": 5.70462633452,
  "least_squares_slope_sd": 0.0852261778504,
  "residual_sd": 1.32267387975
}
)");
}

TEST_CASE("what too few points do not allow is null, and the text says why", "[calc]") {
    const auto three = trend_answer(Values{1, 2, 3}, Values{2.5, 3.5, 4.25});
    const std::string json = write::json(three.json);
    CHECK(json.find("\"theil_sen_slope\": null") != std::string::npos);
    CHECK(json.find("\"mann_kendall_s\": null") != std::string::npos);
    CHECK(json.find("\"least_squares_slope\": 0.875") != std::string::npos);
    CHECK(write::text(three.text, {.width = 400}).find("3 points are too few to call a trend") !=
          std::string::npos);
    CHECK(write::text(trend_answer({}, {}).text, {.width = 400}).find("0 points are too few") !=
          std::string::npos);
}

TEST_CASE("one x only has no slope", "[calc]") {
    const auto answer = trend_answer(Values{1, 1, 1, 1}, Values{1, 2, 3, 4});
    CHECK(write::text(answer.text, {.width = 400}).find("Every x is the same") != std::string::npos);
}

TEST_CASE("a fall and a rise are told in words", "[calc]") {
    const Values xs{1, 2, 3, 4, 5};
    CHECK(write::text(trend_answer(xs, Values{9, 7, 6, 5, 1}).text, {.width = 400}).find("y falls along x") !=
          std::string::npos);
    // 2 of 120 orders: 1.7 %
    CHECK(write::text(trend_answer(xs, Values{1, 2, 3, 4, 5}).text, {.width = 400}).find("1.7 %") !=
          std::string::npos);
    CHECK(write::text(trend_answer(xs, Values{9, 7, 6, 5, 1}).text, {.width = 400}).find("y = 11 - 1.8 x") !=
          std::string::npos);
    CHECK(write::text(trend_answer(Values{1, 2, 3, 4}, Values{2, 4, 1, 3}).text, {.width = 400})
              .find("neither rises nor falls") != std::string::npos);
}
