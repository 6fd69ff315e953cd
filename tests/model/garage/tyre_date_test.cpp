// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/tyre_date.h"

#include "tests/catch.h"

#include <set>
#include <string>

using namespace sumpbook;

namespace {

Date day(const char* text) { return parse_iso_date(text).value(); }
const Date today = day("2024-06-15");

std::vector<int> years(const TyreDate& date) {
    std::vector<int> all;
    for (const TyreWeek& week : date.weeks)
        all.push_back(week.year);
    return all;
}

} // namespace

TEST_CASE("four digits name one week from Sunday to Saturday", "[tyre]") {
    const auto date = read_tyre_date("2319", today).value();
    CHECK(date.week == 23);
    REQUIRE(date.weeks.size() == 1);
    CHECK(date.weeks[0] == TyreWeek{2019, day("2019-06-09"), day("2019-06-15")});
}

TEST_CASE("week 01 is the first full week", "[tyre]") {
    // 1 January 2017 is a Sunday, 1 January 2018 a Monday
    CHECK(read_tyre_date("0117", today)->weeks[0].starts == day("2017-01-01"));
    CHECK(read_tyre_date("0118", today)->weeks[0].starts == day("2018-01-07"));
}

TEST_CASE("week 53 is accepted only where one starts in the year", "[tyre]") {
    // 53 Sundays, from the calendar: 2000 2006 2012 2017 2023 2028
    const std::set<int> long_years{2000, 2006, 2012, 2017, 2023, 2028};
    for (int year = 2000; year <= 2030; ++year) {
        const std::string code = "53" + std::to_string(year).substr(2);
        INFO(code);
        CHECK(read_tyre_date(code, day("2100-12-31")).has_value() == long_years.contains(year));
    }
    CHECK_FALSE(read_tyre_date("5417", today).has_value());
    CHECK_FALSE(read_tyre_date("0017", today).has_value());
}

TEST_CASE("a week that starts after today is refused, one that starts today is not", "[tyre]") {
    CHECK(read_tyre_date("2319", day("2019-06-08")).has_value() == false);
    CHECK(read_tyre_date("2319", day("2019-06-09")).has_value());
    CHECK(read_tyre_date("2319", day("2019-06-10")).has_value());
    CHECK(read_tyre_date("0199", today).error().sentence ==
          "This tyre date code lies in the future. Read it again on the sidewall.");
}

TEST_CASE("three digits leave the decade open", "[tyre]") {
    CHECK(years(read_tyre_date("439", today).value()) == std::vector<int>{1969, 1979, 1989, 1999});
    CHECK(years(read_tyre_date("018", today).value()) == std::vector<int>{1978, 1988, 1998});
    // years of 53 weeks up to 1999: 1972 1978 1984 1989 1995
    CHECK(years(read_tyre_date("539", today).value()) == std::vector<int>{1989});
    CHECK(years(read_tyre_date("532", today).value()) == std::vector<int>{1972});
    CHECK_FALSE(read_tyre_date("531", today).has_value());
}

TEST_CASE("what is no code is refused as typed", "[tyre]") {
    for (const char* code : {"", "12", "12345", "12A4", "23 19", "-119", "2.19"}) {
        INFO(code);
        const auto date = read_tyre_date(code, today);
        REQUIRE_FALSE(date.has_value());
        CHECK(date.error().kind == ProblemKind::refused);
        CHECK(date.error().place.text == code);
    }
}
