// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/outside/check_table.h"

#include "model/import/csv_rows.h"

using namespace sumpbook;
using namespace sumpbook::outside;

namespace {

using Cells = std::vector<std::string>;

std::vector<Cells> cells_of(std::string_view text) {
    std::vector<Cells> all;
    const auto rows = import::split_rows(text, ',').value();
    for (const auto& row : rows) all.push_back(row.cells);
    return all;
}

/// The table writes line ends as the word CRLF.
std::string with_line_ends(std::string text) {
    for (auto at = text.find(" CRLF "); at != std::string::npos; at = text.find(" CRLF "))
        text.replace(at, 6, "\r\n");
    return text;
}

const CheckRow& row_that_says(const std::vector<CheckRow>& rows, std::string_view words) {
    for (const auto& row : rows) {
        if (row["rule"].find(words) != std::string::npos) return row;
    }
    FAIL("no such row");
    return rows.front();
}

} // namespace

// RFC 4180, section 2.
TEST_CASE("Records end with CR LF, the last one with or without it", "[outside][csv]") {
    const auto rows = check_table("std-rfc4180.csv");
    const auto& row = row_that_says(rows, "one record per line");
    TESTING_ROW(row);
    const std::string text = with_line_ends(row["example_in"]);
    const std::vector<Cells> expected{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    CHECK(cells_of(text) == expected);
    CHECK(cells_of(text + "\r\n") == expected);
}

TEST_CASE("Blanks are data, and a comma at the end begins an empty cell", "[outside][csv]") {
    const auto rows = check_table("std-rfc4180.csv");
    TESTING_ROW(row_that_says(rows, "spaces are data"));
    CHECK(cells_of(" a ,b\r\n") == std::vector<Cells>{{" a ", "b"}});
    CHECK(cells_of("a,b,\r\n") == std::vector<Cells>{{"a", "b", ""}});
}

TEST_CASE("Quoted cells hold line breaks and doubled quotes", "[outside][csv]") {
    const auto rows = check_table("std-rfc4180.csv");
    const auto& breaks = row_that_says(rows, "must be quoted");
    {
        TESTING_ROW(breaks);
        CHECK(cells_of(with_line_ends(breaks["example_in"])) ==
              std::vector<Cells>{{"aaa", "b\r\nbb", "ccc"}});
    }
    const auto& doubled = row_that_says(rows, "is doubled");
    TESTING_ROW(doubled);
    CHECK(cells_of(doubled["example_in"]) == std::vector<Cells>{{"aaa", "b\"bb", "ccc"}});
}

TEST_CASE(
    "A bare quote in an unquoted cell is kept and named; other characters than ASCII are taken as UTF-8",
    "[outside][csv]") {
    const auto rows = check_table("std-rfc4180.csv");
    TESTING_ROW(row_that_says(rows, "TEXTDATA"));
    const auto odd = import::split_rows("17\" wheel,ok\r\n", ',').value();
    REQUIRE(odd.size() == 1);
    CHECK(odd[0].cells == Cells{"17\" wheel", "ok"});
    CHECK(odd[0].stray_quotes == std::vector<std::size_t>{0});
    CHECK(cells_of("Öl,huile à moteur\r\n") == std::vector<Cells>{{"Öl", "huile à moteur"}});
}
