// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/encoding.h"

#include "tests/catch.h"

#include <string>

using namespace sumpbook;
using namespace sumpbook::import;
using namespace std::string_literals;

TEST_CASE("UTF-8 is read with and without its mark") {
    const auto plain = decode_text("Öl,10\n");
    REQUIRE(plain);
    CHECK(plain->text == "Öl,10\n");
    CHECK(plain->encoding == Encoding::utf8);
    const auto marked = decode_text("\xEF\xBB\xBFÖl,10\n");
    REQUIRE(marked);
    CHECK(marked->text == "Öl,10\n");
    CHECK(marked->encoding == Encoding::utf8_with_mark);
}

// Byte sequences of the Unicode Standard, table 3-4 "Examples of Unicode encoding forms" (from memory):
// U+004D, U+0430, U+4E8C, U+10302 in UTF-16BE and UTF-8.
TEST_CASE("UTF-16 with its mark is read in both byte orders, letters beyond 16 bits included") {
    const std::string big = "\xFE\xFF\x00\x4D\x04\x30\x4E\x8C\xD8\x00\xDF\x02"s;
    const std::string little = "\xFF\xFE\x4D\x00\x30\x04\x8C\x4E\x00\xD8\x02\xDF"s;
    const std::string utf8 = "\x4D\xD0\xB0\xE4\xBA\x8C\xF0\x90\x8C\x82";
    REQUIRE(decode_text(big));
    CHECK(decode_text(big)->text == utf8);
    CHECK(decode_text(big)->encoding == Encoding::utf16_big);
    REQUIRE(decode_text(little));
    CHECK(decode_text(little)->text == utf8);
    CHECK(decode_text(little)->encoding == Encoding::utf16_little);
}

TEST_CASE("UTF-16 without a mark is read when the owner states it, big end first unless told otherwise") {
    CHECK_FALSE(decode_text("\x00\x4D"s));
    CHECK(decode_text("\x00\x4D"s, read_encoding("utf-16").value())->text == "M");
    CHECK(decode_text("\x4D\x00"s, read_encoding("utf-16le").value())->text == "M");
    CHECK(decode_text("\xFF\xFE\x4D\x00"s, read_encoding("utf-16").value())->text == "M");
    CHECK_FALSE(read_encoding("ebcdic"));
}

TEST_CASE("Half a UTF-16 character is refused with its line") {
    const auto lone = decode_text("\xFE\xFF\x00\x0A\xD8\x00\x00\x41"s);
    REQUIRE_FALSE(lone);
    CHECK(lone.error().place.line == 2U);
    CHECK_FALSE(decode_text("\xFE\xFF\x00\x41\x00"s));
}

// Unicode mapping table CP1252.TXT (from memory): 0x80 is the euro sign, 0xE4 is a umlaut, 0x81 is undefined.
TEST_CASE("Bytes that are no UTF-8 are Windows-1252") {
    const auto text = decode_text("Betrag (\x80);W\xE4hrung\n");
    REQUIRE(text);
    CHECK(text->encoding == Encoding::windows_1252);
    CHECK(text->text == "Betrag (€);Währung\n");
    const auto undefined = decode_text("a\nb\nc\x81\n");
    REQUIRE_FALSE(undefined);
    CHECK(undefined.error().place.line == 3U);
}

TEST_CASE("A file that mixes UTF-8 letters and other bytes is refused, unless the owner states what it is") {
    const std::string mixed = "Öl\nW\xE4hrung\n";
    const auto refused = decode_text(mixed);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().place.line == 2U);
    const auto stated = decode_text(mixed, Encoding::windows_1252);
    REQUIRE(stated);
    CHECK(stated->text == "Ã–l\nWährung\n");
    CHECK_FALSE(decode_text(mixed, Encoding::utf8));
}

TEST_CASE("Bytes that are no text are refused") {
    CHECK_FALSE(decode_text("a\0b"s));
    CHECK_FALSE(decode_text(std::string(largest_file_bytes + 1, 'a')));
    CHECK(decode_text("")->text.empty());
}

// RFC 3629, section 3: overlong forms, surrogates and values above 10FFFF are not UTF-8.
TEST_CASE("Forms that RFC 3629 rules out are not UTF-8") {
    for (const char* bytes :
         {"\xC0\x80", "\xE0\x80\x80", "\xED\xA0\x80", "\xF0\x80\x80\x80", "\xF4\x90\x80\x80", "\xF5"})
        CHECK_FALSE(decode_text(bytes, Encoding::utf8));
    CHECK(decode_text("\xF4\x8F\xBF\xBF", Encoding::utf8));
}
