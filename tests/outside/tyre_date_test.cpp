// SPDX-License-Identifier: GPL-3.0-or-later
// Tyre date codes; sources stand in std-tyre-datecode.csv.
#include "model/garage/tyre_date.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::outside;

TEST_CASE("published tyre date codes", "[outside][tyre]") {
    const Date today = parse_iso_date("2026-01-01").value();
    for (const CheckRow& row : check_table("std-tyre-datecode.csv")) {
        TESTING_ROW(row);
        const auto date = read_tyre_date(row["code"], today);
        if (row.empty("year")) { // invalid codes
            CHECK_FALSE(date.has_value());
            continue;
        }
        REQUIRE(date.has_value());
        CHECK(date->week == static_cast<int>(row.number("week")));
        // The two sources of three-symbol codes list decades by different rules: theirs must be among ours.
        for (const double year : numbers_in(row["year"])) {
            CHECK(std::any_of(date->weeks.begin(), date->weeks.end(),
                              [&](const TyreWeek& week) { return week.year == static_cast<int>(year); }));
        }
        if (row.empty("week_start")) continue;
        REQUIRE(date->weeks.size() == 1);
        CHECK(iso_text(date->weeks[0].starts) == row["week_start"]);
        CHECK(iso_text(date->weeks[0].ends) == row["week_end"]);
    }
}
