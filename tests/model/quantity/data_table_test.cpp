// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/data_table.h"

#include "tests/catch.h"

#include <stdexcept>

using namespace sumpbook;

TEST_CASE("Data files: remarks, heading, rows, quoted cells", "[data_table]") {
    const auto rows =
        read_data_table("# a remark\nname,value,note\niron,12.50,\"one, \"\"two\"\"\"\r\n\ntin,,\n");
    REQUIRE(rows.size() == 2);
    CHECK(rows[0]["name"] == "iron");
    CHECK(rows[0]["note"] == "one, \"two\"");
    CHECK(rows[0].required("value").same_as_written(Decimal(1250, 2)));
    CHECK(rows[1]["note"].empty());
    CHECK_FALSE(rows[1].number("value"));
    CHECK(read_data_table("").empty());
    CHECK(read_data_table("a,b\n").empty());
}

TEST_CASE("A faulty data file is a fault of the program", "[data_table]") {
    CHECK_THROWS_AS(read_data_table("a,b\n1\n"), std::logic_error);
    CHECK_THROWS_AS(read_data_table("a,b\n1,2,3\n"), std::logic_error);
    const auto rows = read_data_table("a,b\nx,\n");
    CHECK_THROWS_AS(rows.at(0)["c"], std::logic_error);
    CHECK_THROWS_AS(rows.at(0).number("a"), std::logic_error);
    CHECK_THROWS_AS(rows.at(0).required("b"), std::logic_error);
}
