// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/table_fit.h"

#include "reports/write/text.h"
#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::write;

namespace {

document::Document example() {
    document::Document text;
    text.table({{{"State", {}}, {"What", {}}, {"Cost", document::Align::right}},
                {{{"due", document::Severity::caution},
                  {"the brake fluid of both circuits, and the pads", {}},
                  {"1 234.50 EUR", {}}},
                 {{"later", {}}, {"tyres", {}}, {"90.00 EUR", {}}}}});
    text.facts({{{"Source", "the page of the handbook that says how often"}}});
    return text;
}

} // namespace

TEST_CASE("a column knows its widest cell and its widest piece") {
    CHECK(with_cell({}, "about 3 456 km past") == TextColumn{19, 8});
    CHECK(with_cell({4, 12}, "") == TextColumn{4, 12});
}

TEST_CASE("the widest column is narrowed first, none below its narrowest") {
    CHECK(fitted_widths({{10, 5}, {40, 8}}, 60) == std::vector<std::size_t>{10, 40});
    CHECK(fitted_widths({{10, 5}, {40, 8}}, 30) == std::vector<std::size_t>{10, 20});
    CHECK(fitted_widths({{30, 5}, {40, 8}}, 40) == std::vector<std::size_t>{20, 20});
    CHECK(fitted_widths({{30, 25}, {40, 8}}, 40) == std::vector<std::size_t>{25, 15});
    CHECK(fitted_widths({{30, 25}, {40, 35}}, 40) == std::vector<std::size_t>{25, 35});
    CHECK(fitted_widths({{30, 2}, {6, 2}}, 5) == std::vector<std::size_t>{10, 6});
}

TEST_CASE("a table is wrapped inside its cells where a width is given, else it keeps its width") {
    const std::string fitted = "State  What                 Cost\n"
                               "due    the brake    1 234.50 EUR\n"
                               "       fluid of\n"
                               "       both\n"
                               "       circuits,\n"
                               "       and the\n"
                               "       pads\n"
                               "later  tyres           90.00 EUR\n"
                               "\n"
                               "Source  the page of the handbook\n"
                               "        that says how often\n";
    CHECK(write::text(example(), {.width = 80, .colour = false, .table_width = 32}) == fitted);
    const auto as_wide_as_needed = write::text(example(), {.width = 40});
    CHECK(as_wide_as_needed.find("the brake fluid of both circuits, and the pads  1 234.50 EUR\n") !=
          std::string::npos);
    CHECK(as_wide_as_needed.find("Source  the page of the handbook that says how often\n") !=
          std::string::npos);
}

TEST_CASE("the lines of a wrapped cell are coloured one by one") {
    document::Document text;
    text.table({{{"What", {}}}, {{{"front brake pads worn", document::Severity::danger}}}});
    CHECK(write::text(text, {.width = 80, .colour = true, .table_width = 12}) ==
          "What\n"
          "\x1B[1;31mfront brake \x1B[0m\n"
          "\x1B[1;31mpads worn   \x1B[0m\n");
}

TEST_CASE("a column with nothing in it stays out of text, and in plain lines, whose fields programs count") {
    document::Document text;
    text.table({{{"Year", {}}, {"Labour", document::Align::right}, {"Times", document::Align::right}},
                {{{"2025", {}}, {"", {}}, {"3", {}}}, {{"2026", {}}, {"", {}}, {"12", {}}}}});
    CHECK(write::text(text, {.width = 80}) == "Year  Times\n2025      3\n2026     12\n");
    CHECK(plain(text) == "2025\t\t3\n2026\t\t12\n");
    document::Document empty;
    empty.table({{{"Year", {}}, {"Labour", {}}}, {}});
    CHECK(write::text(empty, {.width = 80}) == "Year  Labour\n");
}
