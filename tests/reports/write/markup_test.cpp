// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/markup.h"

#include "tests/catch.h"
#include "tests/reports/write/hostile.h"
#include "tests/reports/write/xml_check.h"

#include <rapidcheck/catch.h>

using namespace sumpbook::write;
using testing::read_markup;

namespace {

/// In an element and in an attribute.
std::string framed(const std::string& text) {
    return "<p title=\"" + markup(text) + "\">" + markup(text) + "</p>";
}

} // namespace

TEST_CASE("The five characters of markup become entities") {
    CHECK(markup("<a href=\"x\" b='y'>&amp;</a>") ==
          "&lt;a href=&quot;x&quot; b=&#39;y&#39;&gt;&amp;amp;&lt;/a&gt;");
    CHECK(markup("Öhlin 10W-40, 5 × 3, 日本") == "Öhlin 10W-40, 5 × 3, 日本");
}

TEST_CASE("What cannot be seen, or turns text round, is shown as a replacement character") {
    const std::string seen = "\xEF\xBF\xBD";
    CHECK(markup("\xE2\x80\xAEtxt") == seen + "txt");
    CHECK(markup(std::string_view("a\0b", 3)) == "a" + seen + "b");
    CHECK(markup("\x1B[31m") == seen + "[31m");
    CHECK(markup("\xE2\x80\xA8") == seen);    // line separator
    CHECK(markup("\xEF\xBF\xBE") == seen);    // U+FFFE, not a character
    CHECK(markup("\xE2<") == seen + "&lt;");  // a broken character does not swallow the next
    CHECK(markup("\xC0\xBC") == seen + seen); // an overlong <
    CHECK(markup("one\r\ntwo\tthree") == "one  two three");
}

TEST_CASE("Hostile text is text, in elements and in attributes") {
    for (const auto& text : testing::hostile_texts()) {
        INFO(text);
        const auto read = read_markup(framed(text));
        CHECK(read.fault.empty());
        CHECK(read.tags == std::vector<std::string>{"p"});
        CHECK(read.names == std::vector<std::string>{"title"});
    }
    rc::prop("any bytes", [](const std::string& text) {
        const auto read = read_markup(framed(text));
        RC_ASSERT(read.fault.empty());
        RC_ASSERT(read.tags.size() == 1U);
    });
    rc::prop("printable text comes back as it was", [] {
        const auto text = *rc::gen::container<std::string>(rc::gen::inRange<char>(' ', '\x7F'));
        RC_ASSERT(read_markup(framed(text)).text == text);
    });
}
