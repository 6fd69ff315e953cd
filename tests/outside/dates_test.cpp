// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/outside/check_table.h"

#include "model/quantity/dates.h"

#include <fmt/format.h>

using namespace sumpbook;
using namespace sumpbook::outside;

TEST_CASE("Calendar dates fall on their published ordinal day; week dates are refused", "[outside][dates]") {
    int dates = 0;
    for (const CheckRow& row : check_table("std-iso8601.csv")) {
        if (row["calendar"].size() != 10) continue;
        TESTING_ROW(row);
        const Date date = parse_iso_date(row["calendar"]).value();
        const Date new_year = date.year() / 1 / 1;
        CHECK(fmt::format("{}-{:03}", static_cast<int>(date.year()), days_between(new_year, date) + 1) ==
              row["ordinal"]);
        CHECK(iso_text(date) == row["calendar"]);
        CHECK_FALSE(read_date(row["week"]));
        CHECK_FALSE(read_date(row["ordinal"]));
        ++dates;
    }
    CHECK(dates == 6);
}
