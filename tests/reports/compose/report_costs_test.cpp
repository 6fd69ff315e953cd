// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_costs.h"

#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

cost::Spending spending(std::string_view date, std::string category, std::string_view amount,
                        std::string_view currency = "EUR") {
    cost::Spending line;
    line.bike = "Tourer";
    line.date = day(date);
    line.category = std::move(category);
    line.amount = money(amount, currency);
    return line;
}

std::string text_of(const compose::CostsOfBikes& costs) {
    const compose::ReportFront front{.bikes = {"Tourer"},
                                     .as_of = day("2026-05-03"),
                                     .garage_file = "my.sumpbook",
                                     .fingerprint = "7k2mf",
                                     .records = 4};
    return write::text(compose::report_costs(front, costs), {.width = 200, .colour = false});
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("Sums stand by year and category; buying the bike is none of them", "[compose][report]") {
    compose::CostsOfBikes costs;
    costs.spent.spending = {spending("2024-05-01", "purchase", "5000"), spending("2025-03-01", "fuel", "20"),
                            spending("2025-04-01", "fuel", "22.50"), spending("2026-04-01", "oil", "60")};
    const auto text = text_of(costs);
    CHECK(holds(
        text, "Running costs since 1 Mar 2025: 102.50 EUR. In 2026 so far: 60.00 EUR; in 2025: 42.50 EUR."));
    CHECK(holds(text, "Category       2025       2026    Together\n"
                      "fuel      42.50 EUR          -   42.50 EUR\n"
                      "oil               -  60.00 EUR   60.00 EUR\n"
                      "Together  42.50 EUR  60.00 EUR  102.50 EUR\n"));
    CHECK(holds(text, "No budget is set."));
}

TEST_CASE("More than six years: the earlier ones stand together", "[compose][report]") {
    compose::CostsOfBikes costs;
    for (const auto* date : {"2018-01-01", "2019-01-01", "2020-01-01", "2021-01-01", "2022-01-01",
                             "2023-01-01", "2024-01-01", "2025-01-01"})
        costs.spent.spending.push_back(spending(date, "tax", "10"));
    const auto text = text_of(costs);
    CHECK(holds(text, "Before 2020"));
    CHECK(holds(text, "tax         20.00 EUR"));
    CHECK(holds(text, "80.00 EUR"));
}

TEST_CASE("Budgets stand with what they are for: all bikes, a bike, a category", "[compose][report]") {
    compose::CostsOfBikes costs;
    costs.spent.spending = {spending("2026-03-01", "fuel", "60")};
    const auto line = [](std::optional<std::string> bike, std::optional<std::string> category) {
        return cost::BudgetLine{.key = "key",
                                .bike = std::move(bike),
                                .category = std::move(category),
                                .budget = money("50"),
                                .spent_minor = 6000,
                                .rest = {},
                                .chance_over = 1,
                                .monthly_amount_minor = 500};
    };
    costs.budgets = {line({}, {}), line("Tourer", {}), line({}, "fuel")};
    const auto text = text_of(costs);
    CHECK(holds(text, "Budgets of 2026"));
    for (const auto* name : {"All bikes", "Tourer", "fuel"})
        CHECK(holds(text, std::string("\n") + name));
    CHECK(holds(text, "over already"));
    CHECK_FALSE(holds(text, "key"));
}

TEST_CASE("What is to come stands there only where something is known of it", "[compose][report]") {
    compose::CostsOfBikes costs;
    costs.spent.spending = {spending("2026-03-01", "fuel", "60")};
    CHECK_FALSE(holds(text_of(costs), "What is to come"));
    costs.forecast.sentence("About 700 EUR in the next year.");
    CHECK(holds(text_of(costs), "What is to come\n---------------\nAbout 700 EUR in the next year."));
}

TEST_CASE("Entries that could have cost something and say nothing of money are counted",
          "[compose][report]") {
    BikeLog log;
    log.reading("2025-01-01", "1000");
    log.work("2025-02-01", "2000", {});
    log.work("2025-03-01", "3000", {}).value.paid = money("12");
    log.add("2025-04-01", Fuel{});
    CHECK(compose::entries_without_money(log.bike) == 2);
    compose::CostsOfBikes costs;
    costs.spent.spending = {spending("2026-03-01", "fuel", "60")};
    costs.entries_without_money = 2;
    CHECK(holds(text_of(costs), "Without an amount of money: 2 entries"));
}
