// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/entry_fields_lists.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::cli;

namespace {

TypedAs as(DecimalMark mark = DecimalMark::unknown) {
    TypedAs typed;
    typed.mark = mark;
    typed.currency = Currency::from_code("EUR").value();
    typed.today = day("2024-06-01");
    return typed;
}

Decimal price(const std::string& text, DecimalMark mark = DecimalMark::unknown) {
    INFO(text);
    const auto read = typed_unit_price("--price", text, as(mark));
    REQUIRE(read);
    return read->amount;
}

} // namespace

TEST_CASE("A price on the pump is read with its three decimals") {
    CHECK(price("1.859 EUR/L") == number("1.859"));
    CHECK(price("1,859") == number("1.859"));
    CHECK(price(" 1.859 EUR") == number("1.859"));
    CHECK(price("12345 EUR/L") == number("12345"));
    CHECK(price("1 234.5") == number("1234.5"));
}

TEST_CASE("The mark that the owner stated counts for a price too") {
    CHECK(price("1.859", DecimalMark::comma) == number("1859"));
    CHECK(price("1,859", DecimalMark::comma) == number("1.859"));
    CHECK_FALSE(typed_unit_price("--price", "1.85.9", as()));
}
