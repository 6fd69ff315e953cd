// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/number_text.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

#include <string>

using namespace sumpbook;
using sumpbook::tests::decimals;

namespace {

std::string read(std::string_view text, DecimalMark mark = DecimalMark::unknown) {
    const auto number = read_number(text, mark);
    return number ? number->text() : "refused";
}

std::string sentence(std::string_view text, DecimalMark mark = DecimalMark::unknown) {
    const auto number = read_number(text, mark);
    return number ? "read as " + number->text() : number.error().sentence;
}

/// The whole part with `mark` between its groups of three.
std::string grouped(std::string digits, std::string_view mark) {
    for (auto at = static_cast<std::ptrdiff_t>(digits.size()) - 3; at > 0; at -= 3) {
        digits.insert(static_cast<std::size_t>(at), mark);
    }
    return digits;
}

} // namespace

TEST_CASE("Both decimal marks are read and no key is swallowed", "[number_text]") {
    // The trap: 12.5 typed in a German or French locale, or 12,5 in a British one, becoming 125.
    CHECK(read("12.5") == "12.5");
    CHECK(read("12,5") == "12.5");
    CHECK(read("12,50") == "12.50");
    CHECK(read("1.239") != "1.24");
    CHECK(read("0,5") == "0.5");
    CHECK(read(",5") == "0.5");
    CHECK(read(".5") == "0.5");
    CHECK(read("1859") == "1859");
    CHECK(read("007") == "7");
    CHECK(read("  12.5\t") == "12.5");
}

TEST_CASE("Two kinds of mark have one reading", "[number_text]") {
    CHECK(read("1.234,5") == "1234.5");
    CHECK(read("1,234.5") == "1234.5");
    CHECK(read("1.234.567,89") == "1234567.89");
    CHECK(read("1,234,567.89") == "1234567.89");
    CHECK(read("1.234.567") == "1234567");
    CHECK(read("1,234,567") == "1234567");
    CHECK(read("1.234,567") == "1234.567");
}

TEST_CASE("Group marks of several countries are read", "[number_text]") {
    CHECK(read("12\u202F345,6") == "12345.6");           // French: narrow no-break blank
    CHECK(read("12\u00A0345,6") == "12345.6");           // Swedish, Polish: no-break blank
    CHECK(read("1234,5") == "1234.5");                   // Polish: four digits are not grouped
    CHECK(read("12\u2019345.60") == "12345.60");         // Swiss: typographic apostrophe
    CHECK(read("12'345.60") == "12345.60");              // Swiss, typed: plain apostrophe
    CHECK(read("12 345") == "12345");                    // pasted: plain blank
    CHECK(read("1\u2009234\u2009567.5") == "1234567.5"); // SI: thin blank
    CHECK(read("1 234\u00A0567") == "1234567");          // blanks of two kinds are all blanks
}

TEST_CASE("One mark with three digits behind it has two readings and is asked back", "[number_text]") {
    CHECK(sentence("1.234") ==
          "1.234 can be read as 1234 or as 1.234; write 1234 for the first or 1.2340 for the second.");
    CHECK(sentence("1,234") ==
          "1,234 can be read as 1234 or as 1.234; write 1234 for the first or 1.2340 for the second.");
    CHECK(sentence("-12.345") == "-12.345 can be read as -12345 or as -12.345; write -12345 for the first or "
                                 "-12.3450 for the second.");
    for (const char* text : {"1.234", "1,234", "12.345", "123,456", "-1.234", " 1.000 "}) {
        INFO(text);
        CHECK(is_ambiguous_number(text));
        CHECK(read(text) == "refused");
    }
    CHECK(read("1.2340") == "1.2340");
}

TEST_CASE("What looks like it but has one reading is read", "[number_text]") {
    CHECK(read("0.234") == "0.234");
    CHECK(read("0,234") == "0.234");
    CHECK(read("012.345") == "12.345");
    CHECK(read("1234.567") == "1234.567");
    CHECK(read("1234,567") == "1234.567");
    CHECK(read(".234") == "0.234");
    CHECK(read("1 234.567") == "1234.567");
    CHECK(read("1'234,567") == "1234.567");
    for (const char* text : {"0.234", "1.2340", "1234.567", "1.234,5", "12.5", "1234", "x", ""}) {
        INFO(text);
        CHECK_FALSE(is_ambiguous_number(text));
    }
}

TEST_CASE("A known decimal mark decides, and the other one must group", "[number_text]") {
    CHECK(read("1.234", DecimalMark::point) == "1.234");
    CHECK(read("1.234", DecimalMark::comma) == "1234");
    CHECK(read("1,234", DecimalMark::point) == "1234");
    CHECK(read("1,234", DecimalMark::comma) == "1.234");
    CHECK(read("12,5", DecimalMark::point) == "refused");
    CHECK(read("12.5", DecimalMark::comma) == "refused");
    CHECK(read("12.34", DecimalMark::comma) == "refused");
    CHECK(read("1.234,5", DecimalMark::point) == "refused");
    CHECK(read("1 234,5", DecimalMark::comma) == "1234.5");
    CHECK(sentence("12,5", DecimalMark::point) ==
          "Here decimals stand after a point; a comma, a blank or an apostrophe can only group thousands, by "
          "three digits.");
}

TEST_CASE("Marks in the wrong places are refused", "[number_text]") {
    for (const char* text : {"1.23.4", "1,23,4", "12.34.567", "1.2345.678", "1 23", "1 2345", "12 34 567",
                             "1'23", "1,234'567.8", "1.234 567,8", "1.234,567.8", "1,5,5", "..5", "1..5",
                             "0 123", ".5.", "1,23,45,678", "12,34,567.5"}) {
        INFO(text);
        CHECK(read(text) == "refused");
        CHECK(read_number(text).error().place.text == text);
    }
    CHECK_THAT(sentence("1,23,45,678"), Catch::Contains("wrong places")); // grouping by two, as in India
}

TEST_CASE("A number that ends in a mark lacks a digit", "[number_text]") {
    for (const char* text : {"12.", "12,", "1.234,", "12'"}) {
        INFO(text);
        CHECK(sentence(text) == "A digit is missing after the last mark of this number.");
    }
}

TEST_CASE("Signs", "[number_text]") {
    CHECK(read("-12.5") == "-12.5");
    CHECK(read("\u2212"
               "12,5") == "-12.5");
    CHECK(read("- 5") == "refused");
    CHECK(read("--5") == "refused");
    CHECK(read("5-") == "refused");
    CHECK(sentence("+5") == "\"+\" does not belong in a number.");
}

TEST_CASE("Anything else is refused and named", "[number_text]") {
    CHECK(sentence("") == "A number is missing here.");
    CHECK(sentence(" \u00A0 ") == "A number is missing here.");
    CHECK(sentence("-") == "There is no digit in this number.");
    CHECK(sentence("12.5 L") == "\"L\" does not belong in a number.");
    CHECK(sentence("1e3") == "\"e\" does not belong in a number.");
    CHECK(sentence("\u0661\u0662") == "\"\u0661\" does not belong in a number."); // Arabic-Indic digits
    CHECK(sentence("12\u20AC") == "\"\u20AC\" does not belong in a number.");
    CHECK(sentence("1234567890123456789") ==
          "The number has more digits than can be kept exactly (18, with 15 after the point).");
    CHECK(read("\xFF") == "refused");
}

TEST_CASE("A number is split from its unit", "[number_text]") {
    const auto split = [](std::string_view text, DecimalMark mark = DecimalMark::unknown) -> std::string {
        const auto parts = split_number_and_unit(text, mark);
        return parts ? parts->number.text() + "|" + std::string(parts->unit) : "refused";
    };
    CHECK(split("12.5 L") == "12.5|L");
    CHECK(split("12.5L") == "12.5|L");
    CHECK(split("12,5\u00A0l") == "12.5|l");
    CHECK(split(" 10 000 km ") == "10000|km");
    CHECK(split("4.9 L/100 km") == "4.9|L/100 km");
    CHECK(split("-5 \u00B0C") == "-5|\u00B0C");
    CHECK(split("42") == "42|");
    CHECK(split("1.234 L") == "refused");
    CHECK(split("1.234 L", DecimalMark::point) == "1.234|L");
    CHECK(split("L 12.5") == "refused");
    CHECK(split("3 1/2 L") == "refused");
    CHECK(split("") == "refused");
    CHECK(split("-") == "refused");
    CHECK(split("12 - 14 L") == "12|- 14 L");
}

TEST_CASE("Properties of typed numbers", "[number_text][property]") {
    rc::prop("the plain form is read back under its mark with its zeros", [] {
        const auto number = *decimals(1'000'000'000'000, 6);
        RC_ASSERT(read_number(number.text(), DecimalMark::point).value().same_as_written(number));
    });
    rc::prop("with any group mark and a decimal comma the number is the same", [] {
        const auto whole = *rc::gen::inRange<std::int64_t>(1000, 1'000'000'000);
        const auto cents = *rc::gen::inRange<std::int64_t>(0, 100);
        const auto mark =
            *rc::gen::element<std::string>(".", " ", "'", "\u00A0", "\u202F", "\u2009", "\u2019");
        const auto decimals = Decimal(100 + cents).text().substr(1);
        const auto number = read_number(grouped(std::to_string(whole), mark) + "," + decimals);
        RC_ASSERT(number.value().same_as_written(Decimal(whole * 100 + cents, 2)));
    });
    rc::prop("a text of digits and marks is read alike under both marks, or under one, or asked back", [] {
        const auto text =
            *rc::gen::container<std::string>(rc::gen::element('1', '0', '7', '.', ',', ' ', '\''));
        const auto point = read_number(text, DecimalMark::point);
        const auto comma = read_number(text, DecimalMark::comma);
        const auto either = read_number(text);
        if (point && comma && *point != *comma) {
            RC_ASSERT(!either && is_ambiguous_number(text));
        } else {
            RC_ASSERT(either.has_value() == (point || comma));
            RC_ASSERT(!is_ambiguous_number(text));
        }
        if (either && point) RC_ASSERT(either->same_as_written(*point));
        if (either && comma) RC_ASSERT(either->same_as_written(*comma));
    });
    rc::prop("the digits of a reading are the digits that were typed", [] {
        const auto text =
            *rc::gen::container<std::string>(rc::gen::element('1', '2', '3', '4', '7', '.', ',', ' ', '\''));
        const auto number = read_number(text);
        if (!number) return;
        const auto digits = [](std::string_view from) {
            std::string only;
            for (const char c : from) {
                if (c >= '0' && c <= '9') only += c;
            }
            only.erase(0, only.find_first_not_of('0'));
            return only;
        };
        RC_ASSERT(digits(number->text()) == digits(text));
    });
    rc::prop("no bytes make it do anything but read or refuse with a sentence", [] {
        const auto text = *rc::gen::arbitrary<std::string>();
        const auto number = read_number(text);
        RC_ASSERT(number.has_value() || !number.error().sentence.empty());
    });
}
