// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/outside/check_table.h"

#include "model/quantity/money.h"

#include <map>

using namespace sumpbook;
using namespace sumpbook::outside;

TEST_CASE("Amounts are printed with the minor digits of their currency", "[outside][money]") {
    for (const CheckRow& row : check_table("std-money-cases.csv")) {
        TESTING_ROW(row);
        const Currency currency = Currency::from_code(row["code"]).value();
        const Money money{static_cast<std::int64_t>(row.number("amount_minor")), currency};
        CHECK(currency.minor_digits() == row.number("display_decimals"));
        CHECK(amount_text(money) == row["text"]);
        CHECK(text_of(money) == row["text"] + " " + row["code"]);
        CHECK(money_of(Decimal::parse(row["text"]).value(), currency).value() == money);
    }
}

TEST_CASE("Currencies have the minor digits ISO 4217 gives them", "[outside][money]") {
    for (const CheckRow& row : check_table("std-currency.csv")) {
        TESTING_ROW(row);
        const auto currency = Currency::from_code(row["code"]);
        if (row.empty("minor_units")) { // "reserved for testing", "no currency": nothing is paid in them
            CHECK_FALSE(currency);
            continue;
        }
        REQUIRE(currency);
        CHECK(currency->code() == row["code"]);
        CHECK(currency->minor_digits() == row.number("minor_units"));
    }
}
