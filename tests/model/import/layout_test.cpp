// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/layout.h"

#include "tests/catch.h"

#include <string>

using namespace sumpbook;
using namespace sumpbook::import;

TEST_CASE("The separator is the one under which the heading is understood") {
    CHECK(find_table("date,odometer,volume\n2024-05-01,100,10\n", ImportKind::fuel, {})->separator == ',');
    CHECK(find_table("date;odometer;volume\n2024-05-01;100;10,5\n", ImportKind::fuel, {})->separator == ';');
    CHECK(find_table("date\todometer\tvolume\n", ImportKind::fuel, {})->separator == '\t');
    CHECK(find_table("date|odometer|volume\n", ImportKind::fuel, {})->separator == '|');
}

TEST_CASE("Lines above the heading are set apart with their numbers") {
    const auto table =
        find_table("# my fuel\n\nBike: the red one, since 2019\nDate,Odometer,Litres\n2024-05-01,100,10\n",
                   ImportKind::fuel, {});
    REQUIRE(table);
    CHECK(table->heading_line == 4);
    CHECK(table->before.size() == 2);
    REQUIRE(table->rows.size() == 1);
    CHECK(table->rows[0].line == 5);
}

TEST_CASE("A file without known headings is refused, and a map can name them") {
    const std::string text = "wann;wo;wieviel\n2024-05-01;Hof;10\n";
    CHECK_FALSE(find_table(text, ImportKind::readings, {}));
    ImportOptions options;
    options.map = {{"wann", "date"}, {"wieviel", "odometer"}};
    const auto table = find_table(text, ImportKind::readings, options);
    REQUIRE(table);
    CHECK(table->separator == ';');
}

TEST_CASE("An unclosed quote is reported rather than another separator guessed") {
    const auto table = find_table("date;note\n2024-05-01;\"open\n", ImportKind::readings, {});
    REQUIRE_FALSE(table);
    CHECK(table.error().place.line == 2U);
}
