// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/money.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

#include <type_traits>

using namespace sumpbook;
using sumpbook::tests::ten_to_18;

namespace {

template <class T>
concept CanAdd = requires(T a, T b) {
    a + b;
};
template <class T>
concept CanOrder = requires(T a, T b) {
    a < b;
};

static_assert(std::is_trivially_copyable_v<Money>);
static_assert(!CanAdd<Money> && !CanOrder<Money>);

Currency currency(std::string_view code) { return Currency::from_code(code).value(); }

UnitPrice price(std::string_view amount, std::string_view code, VolumeUnit per) {
    return {Decimal::parse(amount).value(), currency(code), per};
}

std::string total(const UnitPrice& price, std::string_view number, VolumeUnit unit) {
    const auto money = price_of(price, {Decimal::parse(number).value(), unit});
    return money ? text_of(*money) : money.error().sentence;
}

} // namespace

TEST_CASE("A typed amount is kept to the minor unit or refused", "[money]") {
    CHECK(money_of(Decimal(1234, 2), currency("EUR"))->minor == 1234);
    CHECK(money_of(Decimal(12), currency("EUR"))->minor == 1200);
    CHECK(money_of(Decimal(12500, 3), currency("EUR"))->minor == 1250); // 12.500 is 12.50
    CHECK(money_of(Decimal(1234), currency("JPY"))->minor == 1234);
    const auto too_fine = money_of(Decimal(12345, 3), currency("EUR"));
    REQUIRE_FALSE(too_fine);
    CHECK(too_fine.error().sentence == "An amount in EUR has at most 2 digits after the point.");
    CHECK(too_fine.error().place.text == "12.345");
    CHECK_FALSE(money_of(Decimal(15, 1), currency("JPY")));
    CHECK_FALSE(money_of(Decimal(ten_to_18 - 1), currency("EUR")));
}

TEST_CASE("A computed amount rounds half to even", "[money]") {
    CHECK(rounded_money(Decimal(12345, 3), currency("EUR"))->minor == 1234);
    CHECK(rounded_money(Decimal(12355, 3), currency("EUR"))->minor == 1236);
    CHECK(rounded_money(Decimal(-12345, 3), currency("EUR"))->minor == -1234);
    CHECK(rounded_money(Decimal(25, 1), currency("JPY"))->minor == 2);
}

TEST_CASE("The pump's price times the volume, rounded once", "[money]") {
    CHECK(total(price("1.859", "EUR", VolumeUnit::l), "12.5", VolumeUnit::l) == "23.24 EUR"); // 23.2375
    CHECK(total(price("1.859", "EUR", VolumeUnit::l), "-12.5", VolumeUnit::l) == "-23.24 EUR");
    CHECK(total(price("0.005", "EUR", VolumeUnit::l), "1", VolumeUnit::l) == "0.00 EUR"); // half to even
    CHECK(total(price("0.015", "EUR", VolumeUnit::l), "1", VolumeUnit::l) == "0.02 EUR");
    CHECK(total(price("165", "JPY", VolumeUnit::l), "10.25", VolumeUnit::l) == "1691 JPY"); // 1691.25
    CHECK(total(price("2", "KWD", VolumeUnit::l), "10", VolumeUnit::l) == "20.000 KWD");
}

TEST_CASE("Price and volume may be in different units", "[money]") {
    CHECK(total(price("3.899", "USD", VolumeUnit::us_gal), "3.785411784", VolumeUnit::l) == "3.90 USD");
    CHECK(total(price("1", "USD", VolumeUnit::l), "1000", VolumeUnit::us_gal) ==
          "3785.41 USD"); // 3785.411784
    CHECK(total(price("1", "GBP", VolumeUnit::l), "1000", VolumeUnit::imp_gal) == "4546.09 GBP");
    CHECK(total(price("1", "USD", VolumeUnit::us_qt), "1000", VolumeUnit::us_gal) == "4000.00 USD");
    CHECK(total(price("1", "USD", VolumeUnit::us_gal), "1000", VolumeUnit::imp_gal) ==
          "1200.95 USD"); // 1200.949925...
    CHECK(total(price("10", "EUR", VolumeUnit::l), "250", VolumeUnit::ml) == "2.50 EUR");
}

TEST_CASE("An amount past the range is refused", "[money]") {
    CHECK(total(price("999999999", "EUR", VolumeUnit::ml), "999999999", VolumeUnit::imp_gal) ==
          "The amount is too large: at most 10000000000000.00 EUR.");
    CHECK(total(price("999999999999999999", "EUR", VolumeUnit::l), "999999999", VolumeUnit::l) ==
          "The amount is too large: at most 10000000000000.00 EUR.");
}

TEST_CASE("The largest amount is accepted, one minor unit more is refused", "[money]") {
    CHECK(money_of(Decimal(most_minor, 2), currency("EUR"))->minor == most_minor);
    CHECK(money_of(Decimal(-most_minor, 2), currency("EUR"))->minor == -most_minor);
    CHECK(money_of(Decimal(most_minor + 1, 2), currency("EUR")).error().sentence ==
          "The amount is too large: at most 10000000000000.00 EUR.");
    CHECK_FALSE(money_of(Decimal(-most_minor - 1, 2), currency("EUR")));
    CHECK(money_of(Decimal(most_minor + 1), currency("JPY")).error().sentence ==
          "The amount is too large: at most 1000000000000000 JPY.");
    CHECK(total(price("10000000", "EUR", VolumeUnit::l), "1000000", VolumeUnit::l) ==
          "10000000000000.00 EUR");
    CHECK(total(price("10000000.01", "EUR", VolumeUnit::l), "1000000", VolumeUnit::l) ==
          "The amount is too large: at most 10000000000000.00 EUR.");
}

TEST_CASE("A sum of the largest amounts does not overflow and is held at 18 nines", "[money]") {
    MoneyByCurrency sum;
    for (int i = 0; i < 10'000; ++i)
        sum.add(Money{most_minor, currency("EUR")}); // 10^19: past 64 bits
    CHECK(text_of(sum.amounts().front()) == "9999999999999999.99 EUR");
    MoneyByCurrency taken_back;
    for (int i = 0; i < 9'999; ++i)
        taken_back.add(Money{-most_minor, currency("EUR")});
    CHECK(text_of(taken_back.amounts().front()) == "-9999999999999999.99 EUR");
    sum.add(taken_back); // inside, the sum was exact
    CHECK(sum.amounts() == std::vector<Money>{{most_minor, currency("EUR")}});
    for (int doubling = 0; doubling < 24; ++doubling) // 16 million times and more
        sum.add(MoneyByCurrency(sum));
    CHECK(text_of(sum.amounts().front()) == "9999999999999999.99 EUR");
}

TEST_CASE("Currencies are summed apart", "[money]") {
    MoneyByCurrency sum;
    CHECK(sum.empty());
    sum.add(Money{100, currency("EUR")});
    sum.add(Money{250, currency("EUR")});
    sum.add(Money{5, currency("CHF")});
    MoneyByCurrency more;
    more.add(Money{-350, currency("EUR")});
    more.add(Money{1, currency("USD")});
    sum.add(more);
    CHECK(sum.amounts() ==
          std::vector<Money>{{5, currency("CHF")}, {0, currency("EUR")}, {1, currency("USD")}});
}

TEST_CASE("Properties of money", "[money][property]") {
    rc::prop("an amount printed and read again is the same", [] {
        const Money money{*rc::gen::inRange<std::int64_t>(-1'000'000'000'000, 1'000'000'000'000),
                          currency(*rc::gen::element<std::string>("EUR", "JPY", "KWD", "CLF"))};
        RC_ASSERT(money_of(Decimal::parse(amount_text(money)).value(), money.currency).value() == money);
    });
    rc::prop("a price is off by at most half a minor unit in any units", [] {
        const auto units = rc::gen::element(VolumeUnit::l, VolumeUnit::ml, VolumeUnit::us_gal,
                                            VolumeUnit::imp_gal, VolumeUnit::us_qt);
        const WrittenVolume volume{Decimal(*rc::gen::inRange<std::int64_t>(1, 100'000), 3), *units};
        const UnitPrice each{Decimal(*rc::gen::inRange<std::int64_t>(1, 10'000), 3), currency("EUR"), *units};
        const double expected = each.amount.to_double() * 100 * volume.number.to_double() *
                                static_cast<double>(picolitres_in(volume.unit)) /
                                static_cast<double>(picolitres_in(each.per));
        const double off = static_cast<double>(price_of(each, volume)->minor) - expected;
        RC_ASSERT(off <= 0.5 + 1e-6 * expected && off >= -0.5 - 1e-6 * expected);
    });
}
