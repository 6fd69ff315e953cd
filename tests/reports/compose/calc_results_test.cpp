// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/calc_results.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::compose;

namespace {

Decimal number(const char* text) { return Decimal::parse(text).value(); }
Date day(const char* text) { return parse_iso_date(text).value(); }
std::string text_of(const CalcAnswer& answer) { return write::text(answer.text, {.width = 400}); }

CalcAnswer grade(const char* kv100, std::optional<Decimal> hths = {}) {
    return grade_answer(number(kv100), hths, oil::classify(number(kv100), hths));
}

} // namespace

TEST_CASE("the viscosity index is whole, with the figure before rounding beside it", "[calc]") {
    const auto answer =
        viscosity_index_answer(number("73.3"), number("8.86"), *oil::viscosity_index(73.3, 8.86));
    CHECK(write::json(answer.json) == R"({
  "schema": 1,
  "viscosity_index": 92,
  "viscosity_index_unrounded": 92.43,
  "kv40_mm2_s": 73.3,
  "kv100_mm2_s": 8.86
}
)");
}

TEST_CASE("a grade is text, or null with the candidates", "[calc]") {
    CHECK(write::json(grade("14.2").json).find("\"grade\": \"40\"") != std::string::npos);
    const std::string ambiguous = write::json(grade("5.5").json);
    CHECK(ambiguous.find("\"grade\": null,\n  \"candidates\": [\n    \"8\",\n    \"12\"\n  ]") !=
          std::string::npos);
    CHECK(ambiguous.find("\"outcome\": \"ambiguous\"") != std::string::npos);
    CHECK(text_of(grade("5.5")).find("lies in the bands of SAE 8 and 12") != std::string::npos);
    CHECK(text_of(grade("7.0")).find("12, 16 and 20") != std::string::npos);
    CHECK(write::json(grade("30").json).find("\"candidates\": [],\n  \"outcome\": \"no-band\"") !=
          std::string::npos);
    CHECK(write::json(grade("13", number("3.2")).json).find("\"outcome\": \"sheared\"") != std::string::npos);
    CHECK(text_of(grade("13", number("3.5"))).find("0W-40, 5W-40 and 10W-40 only") != std::string::npos);
}

TEST_CASE("an extrapolated viscosity is marked", "[calc]") {
    const auto within = viscosity_at_answer(80, 8.53321, false);
    CHECK(text_of(within) == "8.5332 mm2/s at 80 °C (ASTM D341).\n");
    CHECK(text_of(viscosity_at_answer(-20, 6298.47, true)).find("equation alone") != std::string::npos);
}

TEST_CASE("a VIN is valid when it is well formed and its check digit matches, whatever the country",
          "[calc]") {
    const std::string european =
        write::json(vin_answer("WP0ZZZ99ZTS392124", inspect_vin("WP0ZZZ99ZTS392124")).json);
    CHECK(european.find("\"well_formed\": true,\n  \"check_digit_matches\": false,\n  \"valid\": false,\n  "
                        "\"expected_check_digit\": \"8\"") != std::string::npos);
    const auto right = vin_answer("1M8GDM9AXKP042788", inspect_vin("1M8GDM9AXKP042788"));
    CHECK(write::json(right.json).find("\"valid\": true") != std::string::npos);
    CHECK(text_of(right).find("1989 or 2019") != std::string::npos);
    CHECK(text_of(vin_answer("123", inspect_vin("123"))).find("this one has 3") != std::string::npos);
}

TEST_CASE("a tyre's week has its first day, unless the decade is open", "[calc]") {
    const Date today = day("2024-06-15");
    const auto four = tyre_date_answer("2319", *read_tyre_date("2319", today), today);
    const std::string json = write::json(four.json);
    CHECK(json.find("\"week\": 23,\n  \"year\": 2019,\n  \"week_start\": \"2019-06-09\"") !=
          std::string::npos);
    CHECK(text_of(four).find("5.0 years ago") != std::string::npos);
    const auto three = tyre_date_answer("439", *read_tyre_date("439", today), today);
    CHECK(write::json(three.json).find("\"week\": 43,\n  \"year\": null,\n  \"week_start\": null") !=
          std::string::npos);
    CHECK(text_of(three).find("1989") != std::string::npos);
}

TEST_CASE("consumption is given in every unit", "[calc]") {
    // 50 mpg (US): published conversion 4.704292 L/100 km
    const auto answer =
        consumption_answer(*consumption_of(Written<ConsumptionUnit>{50, ConsumptionUnit::mpg_us}));
    CHECK(write::json(answer.json) == R"({
  "schema": 1,
  "l_per_100km": 4.704292,
  "km_per_l": 21.257185,
  "mpg_us": 50,
  "mpg_imp": 60.047496
}
)");
}
