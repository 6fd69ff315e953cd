// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/decimal.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

#include <cmath>
#include <limits>
#include <stdexcept>
#include <type_traits>

using namespace sumpbook;
using sumpbook::tests::decimals;
using sumpbook::tests::ten_to_18;

static_assert(std::is_trivially_copyable_v<Decimal>);
static_assert(std::is_nothrow_move_constructible_v<Decimal>);
static_assert(!std::is_constructible_v<Decimal, std::string>);
static_assert(Decimal{}.is_zero() && Decimal{}.scale() == 0);

TEST_CASE("A decimal keeps the zeros it was written with", "[decimal]") {
    for (const char* text :
         {"0", "12.50", "-0.005", "100", "0.000000000000001", "999999999999999999", "-999.999999999999999"}) {
        INFO(text);
        CHECK(Decimal::parse(text).value().text() == text);
    }
    CHECK(Decimal(1250, 2) == Decimal(125, 1));
    CHECK_FALSE(Decimal(1250, 2).same_as_written(Decimal(125, 1)));
    CHECK(Decimal(-5, 3).text() == "-0.005");
}

TEST_CASE("The plain form has one sign, digits and one point", "[decimal]") {
    CHECK(Decimal::parse("+12.5").value() == Decimal(125, 1));
    CHECK(Decimal::parse(".5").value() == Decimal(5, 1));
    CHECK(Decimal::parse("12.").value() == Decimal(12));
    for (const char* text :
         {"", "-", ".", "+-1", "1.2.3", "1,2", " 1", "1 ", "1e3", "0x10", "nan", "inf", "1_000"}) {
        INFO(text);
        const auto number = Decimal::parse(text);
        REQUIRE_FALSE(number);
        CHECK(number.error().kind == ProblemKind::refused);
        CHECK(number.error().place.text == text);
    }
}

TEST_CASE("More than 18 digits, or 15 after the point, are refused and not rounded", "[decimal]") {
    CHECK(Decimal::parse("999999999999999999"));
    CHECK_FALSE(Decimal::parse("1000000000000000000"));
    CHECK(Decimal::parse("0.123456789012345"));
    CHECK_FALSE(Decimal::parse("0.1234567890123456"));
    CHECK(Decimal::parse("000000000000000000000001"));
}

TEST_CASE("Decimals are ordered by value at every scale", "[decimal]") {
    CHECK(Decimal(1, 15) > Decimal(0));
    CHECK(Decimal(999'999'999'999'999'999, 0) > Decimal(999'999'999'999'999'999, 15));
    CHECK(Decimal(-1, 1) < Decimal(1, 15));
    CHECK((Decimal(10, 1) <=> Decimal(1)) == std::strong_ordering::equal);
}

TEST_CASE("Sums and products are exact or refused", "[decimal]") {
    CHECK(add(Decimal(1, 1), Decimal(2, 1)).value() == Decimal(3, 1));
    CHECK(add(Decimal(150, 2), Decimal(5, 1)).value().same_as_written(Decimal(200, 2)));
    CHECK(subtract(Decimal(1), Decimal(1, 15)).value() == Decimal(999'999'999'999'999, 15));
    CHECK_FALSE(add(Decimal(ten_to_18 - 1), Decimal(1)));
    CHECK_FALSE(add(Decimal(ten_to_18 - 1), Decimal(1, 1)));
    CHECK(multiply(Decimal(1859, 3), Decimal(125, 1)).value() == Decimal(232375, 4));
    CHECK(multiply(Decimal(1, 8), Decimal(10, 8)).value() == Decimal(1, 15));
    CHECK_FALSE(multiply(Decimal(1, 8), Decimal(1, 8)));
    CHECK_FALSE(multiply(Decimal(ten_to_18 - 1), Decimal(2)));
}

TEST_CASE("Halves round to the even neighbour", "[decimal]") {
    CHECK(rounded(Decimal(125, 2), 1).same_as_written(Decimal(12, 1)));
    CHECK(rounded(Decimal(135, 2), 1).same_as_written(Decimal(14, 1)));
    CHECK(rounded(Decimal(-125, 2), 1).same_as_written(Decimal(-12, 1)));
    CHECK(rounded(Decimal(-126, 2), 1).same_as_written(Decimal(-13, 1)));
    CHECK(rounded(Decimal(5, 1), 3).same_as_written(Decimal(500, 3)));
    CHECK(rounded(Decimal(ten_to_18 - 1), 1).same_as_written(Decimal(ten_to_18 - 1)));
    CHECK(decimal_ratio(1, 8, 2).same_as_written(Decimal(12, 2)));
    CHECK(decimal_ratio(3, 8, 2).same_as_written(Decimal(38, 2)));
    CHECK(decimal_ratio(-2, 3, 3).same_as_written(Decimal(-667, 3)));
}

TEST_CASE("A ratio keeps as many decimals as 18 digits allow", "[decimal]") {
    CHECK(decimal_ratio(9'000'000'000'000'000'00, 1, 3).same_as_written(Decimal(900'000'000'000'000'000)));
    CHECK(decimal_ratio(1, 3, 99).same_as_written(Decimal(333'333'333'333'333, 15)));
    CHECK_THROWS_AS(decimal_ratio(std::numeric_limits<std::int64_t>::max(), 1, 0), std::domain_error);
}

TEST_CASE("Scaling to whole units is exact before it rounds once", "[decimal]") {
    CHECK(scaled_to_integer(Decimal(12345, 3), 1'609'344'000, 1).value() == 19'867'351'680);
    CHECK(scaled_to_integer(Decimal(5, 1), 1, 1).value() == 0);
    CHECK(scaled_to_integer(Decimal(15, 1), 1, 1).value() == 2);
    CHECK(scaled_to_integer(Decimal(1), 2, 3).value() == 1);
    CHECK_FALSE(scaled_to_integer(Decimal(10'000'000'000), 1'000'000'000, 1));
}

TEST_CASE("Doubles leave as the nearest decimal", "[decimal]") {
    CHECK(decimal_from_double(0.1 + 0.2, 2).text() == "0.30");
    CHECK(decimal_from_double(2.5, 0).text() == "2");
    CHECK(decimal_from_double(3.5, 0).text() == "4");
    CHECK(decimal_from_double(-0.001, 2).text() == "0.00");
    CHECK(decimal_from_double(1e16, 3).text() == "10000000000000000.0");
    CHECK(decimal_from_double(1e-300, 15).is_zero());
    for (const double wrong : {1e18, -1e300, std::numeric_limits<double>::infinity(), std::nan("")}) {
        CHECK_THROWS_AS(decimal_from_double(wrong, 2), std::domain_error);
    }
}

TEST_CASE("A decimal becomes the nearest double", "[decimal]") {
    CHECK(Decimal(1, 1).to_double() == 0.1);
    CHECK(Decimal(3785411784, 9).to_double() == 3.785411784);
    CHECK(Decimal(-123456789012345678, 15).to_double() == -123.456789012345678);
}

TEST_CASE("Properties of decimals", "[decimal][property]") {
    rc::prop("text and back is the same number with the same zeros", [] {
        const auto number = *decimals(ten_to_18, Decimal::max_scale);
        RC_ASSERT(Decimal::parse(number.text()).value().same_as_written(number));
    });
    rc::prop("what is added and taken away again leaves no trace", [] {
        const auto a = *decimals(1'000'000'000'000, 3);
        const auto b = *decimals(1'000'000'000'000, 3);
        RC_ASSERT(subtract(add(a, b).value(), b).value() == a);
        RC_ASSERT(add(a, b).value() == add(b, a).value());
    });
    rc::prop("multiplying distributes over adding", [] {
        const auto a = *decimals(1'000'000, 3);
        const auto b = *decimals(1'000'000, 3);
        const auto c = *decimals(10'000, 2);
        RC_ASSERT(multiply(add(a, b).value(), c).value() ==
                  add(multiply(a, c).value(), multiply(b, c).value()).value());
    });
    rc::prop("rounding moves a number by at most half a unit and twice is once", [] {
        const auto number = *decimals(1'000'000'000'000'000, 6);
        const int scale = *rc::gen::inRange(0, 7);
        const Decimal once = rounded(number, scale);
        const Decimal off = subtract(once, number).value();
        const Decimal half(5, scale + 1);
        RC_ASSERT(off <= half && Decimal(-off.coefficient(), off.scale()) <= half);
        RC_ASSERT(rounded(once, scale).same_as_written(once));
    });
    rc::prop("order agrees with the sign of the difference", [] {
        const auto a = *decimals(1'000'000, 6);
        const auto b = *decimals(1'000'000, 6);
        RC_ASSERT((a < b) == subtract(a, b).value().is_negative());
    });
    rc::prop("a decimal of 15 digits survives the way through a double", [] {
        const auto number = *decimals(1'000'000'000'000'000, 6);
        RC_ASSERT(decimal_from_double(number.to_double(), number.scale()).same_as_written(number));
    });
}
