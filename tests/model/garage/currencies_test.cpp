// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/currencies.h"

#include "tests/catch.h"

using namespace sumpbook;

namespace {

Currency of(const char* code) { return Currency::from_code(code).value(); }

Garage with(Entry entry) {
    Garage garage;
    Bike bike;
    bike.log.push_back({.name = {}, .id = {}, .recorded = {}, .earlier_ids = {}, .heads = {}, .value = std::move(entry)});
    garage.bikes.push_back(std::move(bike));
    return garage;
}

Entry paid(const char* code) {
    Entry entry;
    entry.body = Note{};
    entry.paid = Money{2010, of(code)};
    return entry;
}

} // namespace

TEST_CASE("Amounts and prices of every kind say their currency", "[currencies]") {
    CHECK(currencies_in(with(paid("EUR"))) == std::set{of("EUR")});
    Entry fuel;
    fuel.body = Fuel{};
    std::get<Fuel>(fuel.body).price = UnitPrice{Decimal{2}, of("GBP"), VolumeUnit::l};
    CHECK(currencies_in(with(fuel)) == std::set{of("GBP")});
    Entry job;
    Work work;
    work.labour_price = Money{100, of("CHF")};
    work.parts.push_back({.name = "cable", .number = {}, .quantity = {}, .price = Money{5, of("JPY")}, .replaces_number = {}});
    job.body = work;
    CHECK(currencies_in(with(job)) == std::set{of("CHF"), of("JPY")});
    Garage garage = with(Entry{});
    CHECK(currencies_in(garage).empty());
    garage.bikes[0].details.value.bought = Transfer{.date = {}, .odometer = {}, .price = Money{1, of("SEK")}};
    garage.bikes[0].plan.emplace_back();
    garage.bikes[0].plan[0].value.estimate = Money{1, of("NOK")};
    CHECK(currencies_in(garage) == std::set{of("NOK"), of("SEK")});
}

TEST_CASE("A garage without settings reckons in the only currency that it holds", "[currencies]") {
    const auto settings = settings_from_amounts(with(paid("GBP")));
    REQUIRE(settings);
    CHECK(settings->currency == of("GBP"));
    Garage two = with(paid("GBP"));
    two.bikes.push_back(with(paid("EUR")).bikes[0]);
    CHECK_FALSE(settings_from_amounts(two));
    CHECK_FALSE(settings_from_amounts(with(Entry{})));
    Garage settled = with(paid("GBP"));
    settled.settings.emplace();
    CHECK_FALSE(settings_from_amounts(settled));
}
