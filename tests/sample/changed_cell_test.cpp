// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sample/changed_cell.h"

#include "tests/catch.h"

using namespace sumpbook::sample;

TEST_CASE("One cell is changed and every other byte stays", "[sample]") {
    const std::string csv = "date,text,km\n2026-05-01,\"a, \"\"b\"\"\",12\n2026-05-02,,13\n";
    CHECK(cell_at(csv, {2, "text"}) == "a, \"b\"");
    CHECK(cell_at(csv, {3, "text"}).empty());
    CHECK(with_cell(csv, {3, "km"}, "14") ==
          "date,text,km\n2026-05-01,\"a, \"\"b\"\"\",12\n2026-05-02,,14\n");
    CHECK(with_cell(csv, {2, "text"}, "c") == "date,text,km\n2026-05-01,c,12\n2026-05-02,,13\n");
    CHECK(with_cell(csv, {3, "text"}, "d,e") ==
          "date,text,km\n2026-05-01,\"a, \"\"b\"\"\",12\n2026-05-02,\"d,e\",13\n");
    CHECK(with_cell("a;b\n1,5;2\n", {2, "a"}, "1,6") == "a;b\n1,6;2\n");
}

TEST_CASE("A place that is not there is told", "[sample]") {
    CHECK_THROWS_WITH(cell_at("a,b\n1,2\n", {3, "a"}), "there is no line 3");
    CHECK_THROWS_WITH(cell_at("a,b\n1,2\n", {2, "c"}), "there is no column \"c\"");
}
