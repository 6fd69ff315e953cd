// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/exchange.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::cost;

namespace {

Currency currency(const char* code) { return Currency::from_code(code).value(); }
Date day(const char* iso) { return parse_iso_date(iso).value(); }
Decimal number(const char* text) { return Decimal::parse(text).value(); }

GarageSettings with_rates() {
    GarageSettings settings;
    settings.currency = currency("EUR");
    settings.exchange_rates = {{day("2024-01-01"), currency("GBP"), currency("EUR"), number("1.15")},
                               {day("2024-06-01"), currency("GBP"), currency("EUR"), number("1.20")},
                               {day("2024-03-01"), currency("EUR"), currency("JPY"), number("160")},
                               {day("2024-03-01"), currency("KWD"), currency("EUR"), number("3.0005")}};
    return settings;
}

} // namespace

TEST_CASE("the latest rate dated on or before the amount converts") {
    const auto settings = with_rates();
    const Money ten{1000, currency("GBP")};
    CHECK(converted(ten, currency("EUR"), day("2024-05-31"), settings) == Money{1150, currency("EUR")});
    CHECK(converted(ten, currency("EUR"), day("2024-06-01"), settings) == Money{1200, currency("EUR")});
    CHECK_FALSE(converted(ten, currency("EUR"), day("2023-12-31"), settings).has_value());
    CHECK_FALSE(converted(ten, currency("USD"), day("2024-06-01"), settings).has_value());
}

TEST_CASE("an amount in its own currency needs no rate") {
    const Money euro{5, currency("EUR")};
    CHECK(converted(euro, currency("EUR"), day("1990-01-01"), GarageSettings{}) == euro);
}

TEST_CASE("a rate serves both ways round, and minor digits differ") {
    const auto settings = with_rates();
    // 1 EUR = 160 JPY: 12.34 EUR = 1974.4 JPY; yen have no minor unit
    CHECK(converted({1234, currency("EUR")}, currency("JPY"), day("2024-03-01"), settings) ==
          Money{1974, currency("JPY")});
    // 1000 JPY / 160 = 6.25 EUR
    CHECK(converted({1000, currency("JPY")}, currency("EUR"), day("2024-03-01"), settings) ==
          Money{625, currency("EUR")});
    // 1.234 KWD x 3.0005 = 3.702617 EUR
    CHECK(converted({1234, currency("KWD")}, currency("EUR"), day("2024-03-01"), settings) ==
          Money{370, currency("EUR")});
}

TEST_CASE("a half is rounded to even, below zero too") {
    GarageSettings settings;
    settings.exchange_rates = {{day("2024-01-01"), currency("GBP"), currency("EUR"), number("1.5")}};
    CHECK(converted({1, currency("GBP")}, currency("EUR"), day("2024-01-01"), settings)->minor == 2); // 1.5
    CHECK(converted({3, currency("GBP")}, currency("EUR"), day("2024-01-01"), settings)->minor == 4); // 4.5
    CHECK(converted({-1, currency("GBP")}, currency("EUR"), day("2024-01-01"), settings)->minor == -2);
    CHECK(converted({-3, currency("GBP")}, currency("EUR"), day("2024-01-01"), settings)->minor == -4);
}

TEST_CASE("a result past the largest amount, or past 128 bits on the way, is no conversion") {
    GarageSettings settings;
    settings.exchange_rates = {{day("2024-01-01"), currency("GBP"), currency("KWD"), number("2")}};
    const auto in_dinars = [&](std::int64_t pence) {
        return converted({pence, currency("GBP")}, currency("KWD"), day("2024-01-01"), settings);
    };
    CHECK(in_dinars(most_minor / 20) == Money{most_minor, currency("KWD")});
    CHECK_FALSE(in_dinars(most_minor / 20 + 1).has_value());
    CHECK_FALSE(in_dinars(-most_minor).has_value());
    settings.exchange_rates = {
        {day("2024-01-01"), currency("GBP"), currency("KWD"), number("999999999999999999")}};
    CHECK_FALSE(in_dinars(999'999'999'999'999'999).has_value());
}
