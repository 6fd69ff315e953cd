// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/calc_trend_file.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::cli;
using Values = std::vector<double>;

namespace {

Result<PairedColumns> read(const char* csv, DecimalMark mark = DecimalMark::unknown) {
    return read_paired_columns(csv, "wear.csv", mark);
}

} // namespace

TEST_CASE("x and y are found by their headings among others", "[calc]") {
    const auto columns = read("i,Y, X \n1,2.5,10\n2,3.125,20\n").value();
    CHECK(columns.xs == Values{10, 20});
    CHECK(columns.ys == Values{2.5, 3.125});
    CHECK(read("y,x\r\n1,2\r\n").value().xs == Values{2});
}

TEST_CASE("semicolons and tabs separate columns, and leave the comma to decimals", "[calc]") {
    CHECK(read("x;y\n1;2,5\n")->ys == Values{2.5});
    CHECK(read("x\ty\n1\t2,5\n")->ys == Values{2.5});
    CHECK(read("x;y\n1;2,125\n").has_value() == false); // two readings
    CHECK(read("x;y\n1;2,125\n", DecimalMark::comma)->ys == Values{2.125});
}

TEST_CASE("a cell that is no number is refused with its line", "[calc]") {
    const auto columns = read("x,y\n1,2\n2,<3\n");
    REQUIRE_FALSE(columns.has_value());
    CHECK(columns.error().place == Place{.file = "wear.csv", .line = 3, .column = "y", .text = "<3"});
    CHECK_FALSE(read("x,y\n1,2\n2\n").has_value());
    CHECK_FALSE(read("x,y\n1,\n").has_value());
}

TEST_CASE("without both headings there is nothing to read", "[calc]") {
    CHECK_FALSE(read("").has_value());
    CHECK_FALSE(read("a,b\n1,2\n").has_value());
    CHECK_FALSE(read("x\n1\n").has_value());
    CHECK(read("x,y\n").value().xs.empty());
}
