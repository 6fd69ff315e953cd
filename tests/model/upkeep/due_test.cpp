// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/due.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

std::vector<std::string> slugs(const std::vector<DueItem>& items) {
    std::vector<std::string> found;
    for (const auto& item : items)
        found.push_back(item.slug);
    return found;
}

} // namespace

TEST_CASE("The list runs overdue, due, unknown, soon, later, earlier days first") {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2022-01-01");
    log.add("2022-01-01", Note{});
    log.plan("later").repeat.months = 60;
    log.plan("unknown").repeat.distance = km("500");
    log.plan("overdue").repeat.months = 12;
    log.plan("due").repeat.months = 23;
    log.plan("soon-2").repeat.months = 26;
    log.plan("soon-1").repeat.months = 25;
    const auto items = due_items(BikeToday(log.bike, day("2024-01-01")));
    CHECK(slugs(items) == std::vector<std::string>{"overdue", "due", "unknown", "soon-1", "soon-2", "later"});
    CHECK(needs_attention(items));
}

TEST_CASE("Several bikes stand in one list, and a bike that was sold in none") {
    BikeLog first("Tourer");
    BikeLog second("Old twin");
    for (auto* log : {&first, &second}) {
        log->bike.details.value.in_service_date = day("2022-01-01");
        log->plan("brake-fluid").repeat.months = 24;
    }
    const std::vector<const Bike*> bikes{&first.bike, &second.bike};
    CHECK(due_items(bikes, day("2023-01-01")).size() == 2);
    CHECK_FALSE(needs_attention(due_items(bikes, day("2023-01-01"))));
    second.bike.details.value.sold = Transfer{day("2022-12-31"), {}, {}};
    CHECK(due_items(bikes, day("2023-01-01")).size() == 1);
}

TEST_CASE("Each item of a bike has a name of its own") {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2022-01-01");
    log.plan("cost-tax").repeat.months = 24;
    log.plan("cost-tax-2").repeat.months = 24;
    Cost tax;
    tax.category = "tax";
    tax.every_months = 12;
    log.add("2023-03-01", tax);
    auto found = slugs(due_items(BikeToday(log.bike, day("2023-06-01"))));
    std::ranges::sort(found);
    CHECK(found == std::vector<std::string>{"cost-tax", "cost-tax-2", "cost-tax-3"});
}
