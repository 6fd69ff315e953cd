// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/csv_rows.h"

#include "tests/catch.h"

#include <string>
#include <vector>

using namespace sumpbook;
using namespace sumpbook::import;
using Cells = std::vector<std::string>;

namespace {

std::vector<Cells> cells_of(std::string_view text, char separator = ',') {
    std::vector<Cells> all;
    const auto rows = split_rows(text, separator).value();
    for (const auto& row : rows)
        all.push_back(row.cells);
    return all;
}

} // namespace

// RFC 4180, section 2, rules 1 and 2, with the RFC's own example.
TEST_CASE("Records end in CR LF; the last line break is optional") {
    const std::vector<Cells> two = {{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
    CHECK(cells_of("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == two);
    CHECK(cells_of("aaa,bbb,ccc\r\nzzz,yyy,xxx") == two);
}

// RFC 4180, section 2, rule 6, with the RFC's own example.
TEST_CASE("A quoted field may hold a line break") {
    const auto rows = split_rows("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", ',').value();
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].cells == Cells{"aaa", "b\r\nbb", "ccc"});
    CHECK(rows[0].line == 1);
    CHECK(rows[1].line == 3);
}

// RFC 4180, section 2, rule 7, with the RFC's own example; rule 4: blanks are part of a field.
TEST_CASE("A doubled quote stands for one, blanks are kept") {
    CHECK(cells_of("\"aaa\",\"b\"\"bb\",\"ccc\"") == std::vector<Cells>{{"aaa", "b\"bb", "ccc"}});
    CHECK(cells_of(" a , b") == std::vector<Cells>{{" a ", " b"}});
    CHECK(cells_of("\"\",x") == std::vector<Cells>{{"", "x"}});
}

TEST_CASE("Other separators and line ends are read, and lines are counted") {
    const auto rows = split_rows("a;b\rc;d\ne;f\r\n\n\ng;h\n\n\n", ';').value();
    REQUIRE(rows.size() == 4);
    CHECK(rows[1].line == 2);
    CHECK(rows[3].line == 6);
    CHECK(rows[3].cells == Cells{"g", "h"});
    CHECK(cells_of("a\tb|c", '\t') == std::vector<Cells>{{"a", "b|c"}});
    CHECK(cells_of("a\tb|c", '|') == std::vector<Cells>{{"a\tb", "c"}});
}

TEST_CASE("Quotes where the standard has none are kept whole and pointed out") {
    const auto rows = split_rows("5\" wheel,x\n\"A\" brand,y\n", ',').value();
    CHECK(rows[0].cells == Cells{"5\" wheel", "x"});
    CHECK(rows[0].stray_quotes == std::vector<std::size_t>{0});
    CHECK(rows[1].cells == Cells{"\"A\" brand", "y"});
    CHECK(rows[1].stray_quotes == std::vector<std::size_t>{0});
}

TEST_CASE("A quote that never closes is refused with the line on which it opens") {
    const auto rows = split_rows("a,b\nc,\"d\ne,f\n", ',');
    REQUIRE_FALSE(rows);
    CHECK(rows.error().place.line == 2U);
}

TEST_CASE("Ragged rows keep the cells they have") {
    CHECK(cells_of("a,b,c\n1\n1,2,3,4\n") ==
          std::vector<Cells>{{"a", "b", "c"}, {"1"}, {"1", "2", "3", "4"}});
    CHECK_FALSE(split_rows(std::string(most_cells_a_row + 5, ','), ','));
}
