// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/text.h"

#include "tests/catch.h"

using namespace sumpbook::plot;

TEST_CASE("Numbers are grouped by blanks whatever the locale", "[plot][text]") {
    CHECK(grouped_number(48210, 0) == "48 210");
    CHECK(grouped_number(-1234.5, 2) == "-1 234.50");
    CHECK(grouped_number(999, 0) == "999");
    CHECK(grouped_number(1234567.25, 1) == "1 234 567.2");
    CHECK(grouped_number(-0.0, 1) == "0.0");
    CHECK(grouped_number(-0.04, 1) == "0.0");
}

TEST_CASE("Texts are shortened with an ellipsis, at whole letters", "[plot][text]") {
    const std::string text = "Kinematic viscosity, mm\u00B2/s";
    CHECK(shortened(text, 1000, 12) == text);
    for (double width = 0; width < 300; width += 3) {
        const std::string kept = shortened(text, width, 12);
        CAPTURE(width, kept);
        CHECK(text_width(kept, 12) <= width);
        CHECK((kept.empty() || kept == text || kept.ends_with("\u2026")));
    }
    CHECK(shortened(text, 5, 12).empty());
    CHECK(shortened("", 5, 12).empty());
}

TEST_CASE("Texts are wrapped at blanks, a long word where it must be", "[plot][text]") {
    using Lines = std::vector<std::string>;
    CHECK(wrapped("one two three", 1000, 12, 2) == Lines{"one two three"});
    const Lines two = wrapped("one two three four five six seven eight nine ten", 120, 12, 2);
    REQUIRE(two.size() == 2);
    CHECK(two[0].find("one") == 0);
    CHECK(two[1].ends_with("\u2026"));
    const Lines word = wrapped(std::string(80, 'w'), 120, 12, 3);
    REQUIRE(word.size() == 3);
    for (const std::string& line : word)
        CHECK(text_width(line, 12) <= 120);
    CHECK(wrapped("", 100, 12, 2).empty());
}
