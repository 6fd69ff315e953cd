// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/utf8.h"

#include "tests/catch.h"

#include <rapidcheck/catch.h>

#include <string>

using namespace sumpbook;

TEST_CASE("The first code point of a text", "[utf8]") {
    const auto is = [](std::string_view text, char32_t code_point, std::size_t bytes) {
        const auto first = utf8_first(text);
        return first.code_point == code_point && first.bytes == bytes;
    };
    // RFC 3629, section 7: the examples A, not-identical-to, alpha and a stump of tree.
    CHECK(is("A\u2262\u0391.", U'A', 1));
    CHECK(is("\xE2\x89\xA2\xCE\x91.", U'\u2262', 3));
    CHECK(is("\xCE\x91.", U'\u0391', 2));
    CHECK(is("\xF0\xA3\x8E\xB4", U'\U000233B4', 4));
    CHECK(is("", 0, 0));
}

TEST_CASE("Bytes that are not UTF-8 count as U+FFFD, one each", "[utf8]") {
    // RFC 3629, sections 3 and 10: overlong forms, surrogates, cut-off sequences, past U+10FFFF.
    for (const char* text :
         {"\x80", "\xC0\x80", "\xC1\xBF", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80",
          "\xF0\x80\x80\x80", "\xE2\x89", "\xE2\x41\x42", "\xFF", "\xFE"}) {
        const auto first = utf8_first(text);
        CHECK(first.code_point == U'\uFFFD');
        CHECK(first.bytes == 1);
    }
}

TEST_CASE("Properties of UTF-8", "[utf8][property]") {
    rc::prop("walking through any bytes ends and counts every byte once", [] {
        const auto text = *rc::gen::arbitrary<std::string>();
        std::size_t at = 0;
        while (at < text.size()) {
            const auto step = utf8_first(std::string_view(text).substr(at)).bytes;
            RC_ASSERT(step >= 1U && step <= 4U);
            at += step;
        }
        RC_ASSERT(at == text.size());
    });
}
