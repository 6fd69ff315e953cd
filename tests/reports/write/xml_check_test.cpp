// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/reports/write/xml_check.h"

#include "tests/catch.h"

using sumpbook::write::testing::read_markup;

TEST_CASE("The strict reader takes what is well-formed") {
    const auto read = read_markup("<!DOCTYPE html>\n<a id=\"x\"><b c=\"1 &lt; 2\"/>5 &amp; 6</a>\n");
    CHECK(read.fault.empty());
    CHECK(read.tags == std::vector<std::string>{"a", "b"});
    CHECK(read.ids == std::vector<std::string>{"x"});
    CHECK(read.names == std::vector<std::string>{"id", "c"});
    CHECK(read.text == "5 & 6\n");
}

TEST_CASE("The strict reader refuses what is not") {
    for (const char* bad :
         {"<a>", "<a></b>", "</a>", "<a><b></a></b>", "<a>&nbsp;</a>", "<a>&</a>", "<a b=c></a>",
          "<a b=\"<\"/>", "<a b=\"1\" b=\"2\"/>", "<a>]]></a>", "<a>\x01</a>", "<a>\xFF</a>", "<a/><b/>",
          "<a/>text", "<!-- x -->", "<a><![CDATA[x]]></a>", "<a b=\"1\"c=\"2\"/>", "<a", "<a b=\"1"}) {
        INFO(bad);
        CHECK_FALSE(read_markup(bad).fault.empty());
    }
}
