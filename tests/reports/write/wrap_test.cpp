// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/wrap.h"

#include "tests/catch.h"

using sumpbook::write::wrapped;

TEST_CASE("lines break at blanks, a word wider than the line stands alone") {
    CHECK(wrapped("one two three", 7) == "one two\nthree");
    CHECK(wrapped("one two three", 80) == "one two three");
    CHECK(wrapped("a incomprehensible b", 5) == "a\nincomprehensible\nb");
    CHECK(wrapped("", 10).empty());
}

TEST_CASE("the groups of a number and its unit stay on one line") {
    CHECK(wrapped("cleared at 3 000 km on", 14) == "cleared at\n3 000 km on");
    CHECK(wrapped("cost 1 234.50 EUR, paid", 12) == "cost\n1 234.50 EUR,\npaid");
    CHECK(wrapped("about 12 345 678 mi", 12) == "about\n12 345 678 mi");
    CHECK(wrapped("used 4.96 L/100 km now", 11) == "used\n4.96 L/100 km\nnow");
    CHECK(wrapped("used 0.3 L/1 000 km now", 11) == "used\n0.3 L/1 000 km\nnow");
    CHECK(wrapped("filled (3 456 km)", 11) == "filled\n(3 456 km)");
    CHECK(wrapped("with 98 N m, then", 9) == "with\n98 N m,\nthen");
    CHECK(wrapped("took 5 US gal today", 8) == "took\n5 US gal\ntoday");
}

TEST_CASE("numbers that only stand side by side are not held together") {
    CHECK(wrapped("on 3 May 2024 at", 10) == "on 3 May\n2024 at");
    CHECK(wrapped("in 2024, 300 days", 10) == "in 2024,\n300 days");
    CHECK(wrapped("of 2 4567 left", 6) == "of 2\n4567\nleft");
    CHECK(wrapped("is 2.5 300 of", 7) == "is 2.5\n300 of");
    CHECK(wrapped("take 12 of them", 8) == "take 12\nof them");
}

TEST_CASE("characters of more than one byte are one column") {
    CHECK(wrapped("\xC3\xA4\xC3\xB6\xC3\xBC ab", 6) == "\xC3\xA4\xC3\xB6\xC3\xBC ab");
    CHECK(sumpbook::write::columns_of("\xE2\x80\x94x") == 2);
}
