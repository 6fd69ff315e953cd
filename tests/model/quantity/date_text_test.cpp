// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/dates.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

using namespace sumpbook;

namespace {

std::string read(std::string_view text, DateOrder order = DateOrder::unknown) {
    const auto date = read_date(text, order);
    return date ? iso_text(*date) : "refused";
}

std::string sentence(std::string_view text, DateOrder order = DateOrder::unknown) {
    const auto date = read_date(text, order);
    return date ? "read as " + iso_text(*date) : date.error().sentence;
}

} // namespace

TEST_CASE("An ISO date has ten characters and names a real day", "[dates]") {
    CHECK(iso_text(parse_iso_date("2024-02-29").value()) == "2024-02-29");
    CHECK(parse_iso_date("1900-01-01"));
    CHECK(parse_iso_date("2100-12-31"));
    // What a lenient %F takes: short fields, two-digit years, signs, text behind.
    for (const char* text : {"2024-2-9",
                             "24-02-09",
                             "+2024-02-09",
                             "0000-01-01",
                             "-2024-02-09",
                             "2024-02-09x",
                             " 2024-02-09",
                             "2024-02-09 ",
                             "2024/02/09",
                             "20240209",
                             "2024-13-01",
                             "2024-00-01",
                             "2024-01-00",
                             "2023-02-29",
                             "1899-12-31",
                             "2101-01-01",
                             "",
                             "2024-02",
                             "12024-02-09",
                             "2024-Feb-9",
                             "2024-02--9"}) {
        INFO(text);
        const auto date = parse_iso_date(text);
        REQUIRE_FALSE(date);
        CHECK(date.error().kind == ProblemKind::refused);
        CHECK(date.error().place.text == text);
    }
}

TEST_CASE("A day the month does not have is refused by name", "[dates]") {
    CHECK(sentence("31.02.2024") == "February 2024 has 29 days, so there is no day 31.");
    CHECK(sentence("2023-02-29") == "February 2023 has 28 days, so there is no day 29.");
    CHECK(sentence("02/31/2024", DateOrder::month_day_year) ==
          "February 2024 has 29 days, so there is no day 31.");
    CHECK(sentence("02/31/2024") == "February 2024 has 29 days, so there is no day 31.");
    CHECK(sentence("31 April 2024") == "April 2024 has 30 days, so there is no day 31.");
    CHECK(sentence("31/11/1900") == "November 1900 has 30 days, so there is no day 31.");
    CHECK(sentence("29 Feb 1900") == "February 1900 has 28 days, so there is no day 29.");
    CHECK(sentence("2024-13-01") == "There is no month 13.");
    CHECK(sentence("12/31/2024", DateOrder::day_month_year) == "There is no month 31.");
    CHECK(sentence("0 Mar 2024") == "March 2024 has 31 days, so there is no day 0.");
    CHECK(sentence("1 Mar 1776") == "The year 1776 is outside 1900 to 2100.");
}

TEST_CASE("Dates as people type them", "[dates]") {
    CHECK(read("2024-12-31") == "2024-12-31");
    CHECK(read("2024/12/31") == "2024-12-31");
    CHECK(read("2024.3.1") == "2024-03-01");
    CHECK(read("31.12.2024") == "2024-12-31");
    CHECK(read("31/12/2024") == "2024-12-31");
    CHECK(read("31-12-2024") == "2024-12-31");
    CHECK(read("12/31/2024") == "2024-12-31");
    CHECK(read(" 31.12.2024 ") == "2024-12-31");
    CHECK(read("3.3.2024") == "2024-03-03");
    for (const char* text : {"3 Mar 2024", "3 March 2024", "3. March 2024", "3-Mar-2024", "March 3, 2024",
                             "Mar 3 2024", "MAR 03, 2024", "3 march 2024", "3Mar2024"}) {
        INFO(text);
        CHECK(read(text) == "2024-03-03");
    }
    CHECK(read("1 Sept 2024") == "2024-09-01");
    CHECK(read("1 May 2024") == "2024-05-01");
}

TEST_CASE("An order settles dates that have two readings; without it they are asked back", "[dates]") {
    CHECK(read("03/04/2024", DateOrder::day_month_year) == "2024-04-03");
    CHECK(read("03/04/2024", DateOrder::month_day_year) == "2024-03-04");
    CHECK(sentence("03/04/2024") ==
          "03/04/2024 can be read as 3 Apr 2024 or as 4 Mar 2024; write the month as a "
          "word, or write 2024-04-03 or 2024-03-04.");
    CHECK(read("3.4.2024") == "refused");
    CHECK(read("03/04/2024", DateOrder::year_month_day) == "refused");
    CHECK(read("2024-03-04", DateOrder::month_day_year) == "2024-03-04");
    CHECK(read("2024-03-04", DateOrder::day_month_year) == "2024-03-04");
}

TEST_CASE("Two-digit years are refused, never guessed", "[dates]") {
    for (const char* text : {"31.12.24", "12/31/24", "24-02-09", "3 Mar 24", "Mar 3, 24"}) {
        INFO(text);
        CHECK(sentence(text) == "Write the year with all four digits.");
    }
}

TEST_CASE("Anything else is no date", "[dates]") {
    for (const char* text :
         {"31.12/2024", "31 12 2024", "2024", "Mar 2024", "3 Ma 2024", "3 M\u00E4rz 2024", "3 Mrz 2024",
          "3 Mai 2024", "31.12.20245", "031.12.2024", "2024-12-31T10:00", "2024-12-31.", "x", "-",
          "3 Mar 2024 x", "-3 Mar 2024", "3 / Mar / 2024", "Mar 3, 24 2024", "3 4 Mar"}) {
        INFO(text);
        CHECK(read(text) == "refused");
    }
    CHECK(sentence("") == "A date is missing here.");
    CHECK(sentence("3 Mrz 2024") == "\"Mrz\" is not the English name of a month.");
    CHECK_THAT(sentence("yesterday"), Catch::StartsWith("This is not a date."));
}

TEST_CASE("Dates and moments are written in one form each", "[dates]") {
    CHECK(spelled_text(parse_iso_date("2024-03-03").value()) == "3 Mar 2024");
    CHECK(spelled_text(parse_iso_date("2024-12-31").value()) == "31 Dec 2024");
    CHECK(iso_text(RecordedTime{0}) == "1970-01-01T00:00:00Z");
    CHECK(iso_text(RecordedTime{1'709'460'900}) == "2024-03-03T10:15:00Z");
    CHECK(iso_text(RecordedTime{-1}) == "1969-12-31T23:59:59Z");
}

TEST_CASE("Properties of date texts", "[dates][property]") {
    rc::prop("ISO text and back is the same day", [] {
        const auto date = *tests::days();
        RC_ASSERT(parse_iso_date(iso_text(date)).value() == date);
        RC_ASSERT(read_date(iso_text(date)).value() == date);
    });
    rc::prop("the spelled form is read back", [] {
        const auto date = *tests::days();
        RC_ASSERT(read_date(spelled_text(date)).value() == date);
    });
    rc::prop("a date with the year last is read by its order, and without one the same or not at all", [] {
        const auto date = *tests::days();
        const auto iso = iso_text(date);
        const auto mark = *rc::gen::element<std::string>(".", "/", "-");
        const auto text = iso.substr(8, 2) + mark + iso.substr(5, 2) + mark + iso.substr(0, 4);
        RC_ASSERT(read_date(text, DateOrder::day_month_year).value() == date);
        const auto unordered = read_date(text);
        RC_ASSERT(!unordered || *unordered == date);
        RC_ASSERT(unordered.has_value() ==
                  (static_cast<unsigned>(date.day()) > 12 ||
                   static_cast<unsigned>(date.day()) == static_cast<unsigned>(date.month())));
    });
    rc::prop("no text makes it do anything but read a day of 1900 to 2100 or refuse", [] {
        const auto text = *rc::gen::container<std::string>(
            rc::gen::element('1', '2', '0', '9', '-', '.', '/', ' ', 'M', 'a', 'r'));
        const auto date = read_date(text);
        if (date) {
            RC_ASSERT(date->ok());
            RC_ASSERT(date->year() >= std::chrono::year{1900} && date->year() <= std::chrono::year{2100});
        } else {
            RC_ASSERT(!date.error().sentence.empty());
        }
    });
}
