// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/currency.h"

#include "tests/catch.h"

#include <algorithm>
#include <type_traits>

using namespace sumpbook;

static_assert(std::is_trivially_copyable_v<Currency>);
static_assert(!std::is_constructible_v<Currency, const char*>);

TEST_CASE("A currency is made from its ISO 4217 code only", "[currency]") {
    CHECK(Currency::from_code("EUR")->code() == "EUR");
    CHECK(Currency::from_code("gbp")->code() == "GBP");
    for (const char* code : {"", "EU", "EURO", "\u20AC", "E R", "EU1", "cod"}) {
        INFO(code);
        const auto currency = Currency::from_code(code);
        REQUIRE_FALSE(currency);
        CHECK_THAT(currency.error().sentence, Catch::Contains("\"" + std::string(code) + "\""));
        CHECK(currency.error().place.text == code);
    }
}

TEST_CASE("Minor digits differ between currencies", "[currency]") {
    CHECK(Currency::from_code("EUR")->minor_digits() == 2);
    CHECK(Currency::from_code("JPY")->minor_digits() == 0);
    CHECK(Currency::from_code("KWD")->minor_digits() == 3);
    CHECK(Currency{}.code() == "XXX");
    CHECK(Currency{}.minor_digits() == 0);
}

TEST_CASE("Every listed currency can be made from its code and has 0 to 4 minor digits", "[currency]") {
    const auto all = all_currencies();
    CHECK(all.size() > 150);
    CHECK(std::is_sorted(all.begin(), all.end()));
    for (const Currency& currency : all) {
        INFO(currency.code());
        CHECK(Currency::from_code(currency.code()).value() == currency);
        CHECK(currency.minor_digits() >= 0);
        CHECK(currency.minor_digits() <= 4);
    }
}
