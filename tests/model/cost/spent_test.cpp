// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/spent.h"

#include "tests/catch.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::cost;

namespace {

Currency currency(const char* code) { return Currency::from_code(code).value(); }
Date day(const char* iso) { return parse_iso_date(iso).value(); }
Money euro(std::int64_t cents) { return {cents, currency("EUR")}; }

GarageSettings settings() {
    GarageSettings made;
    made.currency = currency("EUR");
    return made;
}

struct Log {
    Bike bike;
    Log() { bike.details.value.name = "Old twin"; }
    Entry& add(const char* date, EntryBody body, std::optional<Money> paid = std::nullopt) {
        LogEntry entry;
        entry.id = "a-" + std::to_string(bike.log.size() + 1);
        entry.value.date = day(date);
        entry.value.body = std::move(body);
        entry.value.paid = paid;
        bike.log.push_back(std::move(entry));
        return bike.log.back().value;
    }
};

} // namespace

TEST_CASE("a typed total wins; without it fuel is price times volume, rounded half to even") {
    Fuel fuel;
    fuel.volume = WrittenVolume{Decimal::parse("12.34").value(), VolumeUnit::l};
    fuel.price = UnitPrice{Decimal::parse("1.859").value(), currency("EUR"), VolumeUnit::l};
    Entry entry;
    entry.body = fuel;
    CHECK(money_of_entry(entry) == std::vector<Money>{euro(2294)}); // 22.94006
    entry.paid = euro(2300);
    CHECK(money_of_entry(entry) == std::vector<Money>{euro(2300)});
    fuel.volume.reset();
    entry.paid.reset();
    entry.body = fuel;
    CHECK(money_of_entry(entry).empty());
}

TEST_CASE("a job costs its parts and its labour, kept apart") {
    Log log;
    Work work;
    work.parts = {
        {.name = "oil filter", .price = euro(1290)}, {.name = "washer", .price = euro(110)}, {.name = "rag"}};
    work.labour_price = euro(6000);
    log.add("2024-05-02", work);
    const auto spent = spending_of(log.bike, settings());
    REQUIRE(spent.size() == 1);
    CHECK(spent[0].amount == euro(7400));
    CHECK(spent[0].parts == euro(1400));
    CHECK(spent[0].labour == euro(6000));
    CHECK(spent[0].entry_id == "a-1");
}

TEST_CASE("each kind of entry has its category") {
    Entry entry;
    std::vector<Versioned<PlanItem>> plan;
    const auto category = [&](EntryBody body) {
        entry.body = std::move(body);
        return category_of_entry(entry, plan);
    };
    CHECK(category(Fuel{}) == "fuel");
    CHECK(category(OilChange{}) == "oil");
    CHECK(category(TopUp{}) == "oil");
    CHECK(category(Fit{.slot = "front-tyre"}) == "tyres");
    CHECK(category(Fit{.slot = "battery"}) == "upkeep");
    CHECK(category(Modification{.what = "sprocket"}) == "gear");
    CHECK(category(Cost{.category = "insurance"}) == "insurance");
    CHECK(category(Work{}) == "repairs"); // satisfies nothing and was not planned
    CHECK(category(Work{.planned = true}) == "upkeep");
    entry.does = {"brake-fluid"};
    CHECK(category(Work{}) == "repairs"); // of no item of the plan
    plan.emplace_back().value.slug = "brake-fluid";
    CHECK(category(Work{}) == "upkeep");
}

TEST_CASE("a valuation is recorded and is never spending") {
    Log log;
    log.add("2024-05-02", Cost{.category = "insurance", .valuation = true}, euro(400'000));
    log.add("2024-05-03", Cost{.category = "insurance"}, euro(12'000));
    const auto spent = spending_of(log.bike, settings());
    REQUIRE(spent.size() == 1);
    CHECK(spent[0].amount == euro(12'000));
}

TEST_CASE("oil by the can counts when bought, or per litre used beside what the change itself cost") {
    Log log;
    log.add("2024-05-02", Cost{.category = "oil", .text = "4 L can"}, euro(4'000));
    log.add("2024-05-03", OilChange{.volume_in = WrittenVolume{Decimal{3}, VolumeUnit::l}}, euro(2'500));
    auto made = settings();
    CHECK(total_of(spending_of(log.bike, made)).amounts() == std::vector<Money>{euro(6'500)});
    made.oil_bought_counts = OilBoughtCounts::per_litre_used;
    const auto spent = spending_of(log.bike, made);
    REQUIRE(spent.size() == 1); // one amount, of one entry
    CHECK(spent[0].amount == euro(2'500 + 3'000));
}

TEST_CASE("the price of the bike counts once and apart") {
    Log log;
    log.bike.details.value.bought = Transfer{.date = day("2019-04-12"), .price = euro(420'000)};
    log.bike.details.value.sold = Transfer{.date = day("2024-04-12"), .price = euro(390'000)};
    auto spent = spending_of(log.bike, settings());
    REQUIRE(spent.size() == 2);
    CHECK(spent[0].amount == euro(420'000));
    CHECK(spent[1].amount == euro(-390'000));
    CHECK(std::ranges::all_of(spent, [](const Spending& s) { return is_purchase_or_sale(s.category); }));
    log.add("2019-04-12", Cost{.category = "purchase"}, euro(425'000));
    spent = spending_of(log.bike, settings());
    REQUIRE(spent.size() == 2);
    CHECK(spent[0].amount == euro(425'000));
}

TEST_CASE("two currencies stay apart without a rate and are converted with one, each amount by itself") {
    Log log;
    log.add("2024-05-02", Fuel{}, Money{333, currency("GBP")});
    log.add("2024-05-03", Fuel{}, Money{333, currency("GBP")});
    log.add("2024-05-04", Fuel{}, euro(1000));
    auto made = settings();
    CHECK(total_of(spending_of(log.bike, made)).amounts() ==
          std::vector<Money>{euro(1000), Money{666, currency("GBP")}});
    made.exchange_rates = {
        {day("2024-01-01"), currency("GBP"), currency("EUR"), Decimal::parse("1.15").value()}};
    const auto spent = spending_of(log.bike, made);
    // 3.33 x 1.15 = 3.8295 -> 3.83 twice, not 6.66 x 1.15 = 7.659 -> 7.66 by luck of one rounding
    CHECK(total_of(spent).amounts() == std::vector<Money>{euro(1000 + 2 * 383)});
    CHECK(spent[0].as_paid == Money{333, currency("GBP")});
    CHECK_FALSE(spent[2].as_paid.has_value());
}

TEST_CASE("groups add up to the total, whatever they are grouped by") {
    Log log;
    log.add("2023-12-31", Fuel{}, euro(1500));
    log.add("2024-01-01", Fuel{}, euro(1600));
    log.add("2024-01-15", Cost{.category = "insurance"}, euro(9000));
    const auto spent = spending_of(log.bike, settings());
    for (const auto by : {GroupBy::category, GroupBy::year, GroupBy::month, GroupBy::bike}) {
        MoneyByCurrency sum;
        std::size_t count = 0;
        for (const auto& [key, group] : grouped(spent, by)) {
            sum.add(group.total);
            count += group.count;
        }
        CHECK(sum == total_of(spent));
        CHECK(count == 3);
    }
    CHECK(grouped(spent, GroupBy::year).at("2024").total.amounts() == std::vector<Money>{euro(10'600)});
    CHECK(grouped(spent, GroupBy::month).contains("2023-12"));
    CHECK(grouped(spent, GroupBy::category).at("fuel").count == 2);
}
