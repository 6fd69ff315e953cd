// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/forecast.h"

#include "model/cost/budget.h"
#include "reports/compose/budget.h"
#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

using namespace sumpbook;
using namespace sumpbook::compose;
using namespace sumpbook::testing;

namespace {

/// Insurance of 120 EUR every half year and a job without a price.
ForecastGarage fixed_costs() {
    BikeLog log("Shed find");
    log.add("2025-03-01", Cost{.category = "insurance", .every_months = 6}).value.paid = money("100");
    log.add("2025-09-01", Cost{.category = "insurance"}).value.paid = money("120");
    auto& item = log.plan("coolant");
    item.label = "Coolant";
    item.repeat.months = 6;
    log.work("2025-09-01", "", {"coolant"});
    ForecastGarage made;
    made.add(log.bike);
    return made;
}

struct Shown {
    cost::ForecastRun run;
    cost::CostForecast forecast;
    explicit Shown(const ForecastGarage& made)
        : run(made.run("2026-01-10", {.paths = 200}))
        , forecast(cost::cost_forecast(run).value()) {}
    [[nodiscard]] ForecastReport report(std::optional<Money> budget = {}) const {
        ForecastReport made{run, forecast};
        made.budget = budget;
        return made;
    }
};

std::string text(const document::Document& document) { return write::text(document, {.width = 200}); }
bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("The first answer is one sentence in whole units, and what has no price stands below") {
    const Shown shown(fixed_costs());
    const auto answer = text(forecast_text(shown.report()));
    CHECK(holds(answer, "The next 12 months will cost at least 240 EUR. Put aside at least 20 EUR a month."));
    CHECK(holds(answer, "Coolant"));
    CHECK(holds(answer, "no estimate and no past cost"));
    for (const auto* word : {"percentile", "quantile", "median", "P90", "simulat"})
        CHECK_FALSE(holds(answer, word));
}

TEST_CASE("A budget is answered by a chance; equal is not above") {
    const Shown shown(fixed_costs());
    CHECK(holds(text(forecast_text(shown.report(money("240")))), "240.00 EUR is next to nothing"));
    CHECK(holds(text(forecast_text(shown.report(money("239.99")))), "239.99 EUR is as good as certain"));
}

TEST_CASE("The JSON says the same in minor units") {
    const Shown shown(fixed_costs());
    const auto json = write::json(forecast_json(shown.report(money("200"))));
    for (const auto* part :
         {"\"schema\": 1", "\"currency\": \"EUR\"", "\"months\": 12", "\"paths\": 200", "\"seed\": 1",
          "\"mean_minor\": 24000", "\"monthly_amount_minor\": 2000", "\"budget_minor\": 20000",
          "\"because\": \"no-cost\"", "\"month\": \"2026-03\""}) {
        INFO(part << " in " << json);
        CHECK(holds(json, part));
    }
}

TEST_CASE("Why names every assumption with its number") {
    const Shown shown(fixed_costs());
    const auto why = text(forecast_why_text(shown.report()));
    for (const auto* part : {"from seed 1", "3 % a year", "0.5 + 0 recorded in 10 000 km + 0 km",
                             "not priced", "Next 12 months"}) {
        INFO(part << " in " << why);
        CHECK(holds(why, part));
    }
}

TEST_CASE("Amounts and chances in words") {
    const Currency euro = Currency::from_code("EUR").value();
    CHECK(whole_words(148'050, euro) == "1 480 EUR"); // half to even
    CHECK(whole_words(148'150, euro) == "1 482 EUR");
    CHECK(whole_words(1480, Currency::from_code("JPY").value()) == "1 480 JPY");
    CHECK(range_words({0, 62'000, 0, 148'000}, euro) == "620 to 1 480 EUR");
    CHECK(range_words({0, 62'010, 0, 61'990}, euro) == "620 EUR");
    CHECK(chance_words(0.004) == "less than 1 in 100");
    CHECK(chance_words(0.123) == "about 12 in 100");
    CHECK(chance_words(0.999) == "more than 99 in 100");
}

TEST_CASE("A budget stands beside what was spent this year and what is to come") {
    auto made = fixed_costs();
    BikeLog more("Tourer");
    more.add("2026-01-05", Cost{.category = "tax"}).value.paid = money("50");
    made.add(more.bike);
    made.settings().yearly_budgets = {{cost::budget_key_of_all(), money("300")},
                                      {cost::budget_key_of_bike(made.garage.bikes[1].id), money("40")},
                                      {"tax", money("90")}};
    const auto lines = cost::budget_lines(made.run("2026-01-10", {.paths = 100}), made.garage);
    REQUIRE(lines.size() == 3);
    CHECK_FALSE((lines[0].bike || lines[0].category));
    CHECK(lines[0].spent_minor == 5'000);
    CHECK(lines[0].rest->p50_minor == 24'000);
    CHECK(lines[0].chance_over == 0);
    CHECK(lines[0].monthly_amount_minor == 2'000);
    CHECK(lines[1].bike == "Tourer");
    CHECK(lines[1].chance_over == 1);
    CHECK(lines[2].category == "tax");
    CHECK_FALSE(lines[2].rest);
    const auto table = text(budget_text(lines, day("2026-01-10")));
    CHECK(holds(table, "over already"));
    CHECK(holds(table, "nothing foreseen"));
    CHECK(holds(write::json(budget_json(lines)), "\"spent_minor\": 5000"));
    CHECK(holds(text(budget_text({}, day("2026-01-10"))), "No yearly budget is set"));
}

TEST_CASE("Where nothing could be priced there is no amount, no chance and nothing to put aside") {
    BikeLog log("Shed find");
    log.plan("coolant").repeat.months = 6;
    log.work("2025-09-01", "", {"coolant"});
    ForecastGarage made;
    made.add(log.bike);
    made.settings().yearly_budgets = {
        {cost::budget_key_of_all(), money("300")}, {"fuel", money("100")}, {"gear", money("100")}};
    const Shown shown(made);
    CHECK(shown.forecast.nothing_priced());
    const auto answer = text(forecast_text(shown.report(money("200"))));
    CHECK(holds(answer, "Nothing could be priced yet"));
    CHECK_FALSE(holds(answer, " 0 EUR"));
    CHECK_FALSE(holds(answer, "Put aside"));
    CHECK_FALSE(holds(answer, "next to nothing"));
    const auto json = write::json(forecast_json(shown.report(money("200"))));
    CHECK(holds(json, "\"monthly_amount_minor\": null"));
    CHECK(holds(json, "\"chance_over_budget\": null"));
    const auto lines = cost::budget_lines(shown.run, made.garage);
    REQUIRE(lines.size() == 3);
    CHECK(lines[0].nothing_priced);
    CHECK(lines[1].nothing_priced);       // fuel
    CHECK_FALSE(lines[2].nothing_priced); // gear: nothing is foreseen, and that is so
    const auto table = text(budget_text(lines, day("2026-01-10")));
    CHECK(holds(table, "cannot be told"));
    CHECK(holds(table, "not priced yet"));
    CHECK(holds(table, "nothing foreseen"));
}

TEST_CASE("A bike of which everything is priced is told without 'at least'") {
    BikeLog log("Shed find");
    log.plan("coolant").repeat.months = 60;
    log.work("2025-09-01", "", {"coolant"});
    log.add("2025-03-01", Cost{.category = "insurance", .every_months = 6}).value.paid = money("100");
    log.add("2025-09-01", Cost{.category = "insurance"}).value.paid = money("120");
    ForecastGarage made;
    made.add(log.bike);
    const Shown shown(made);
    auto whole = shown.forecast;
    whole.not_priced.clear(); // fuel and repairs have no price here
    ForecastReport report{shown.run, whole};
    CHECK(holds(text(forecast_text(report)), "will cost 240 EUR. Put aside 20 EUR a month."));
}

TEST_CASE("Why tells the reading as on the dial, in its unit, and what the riding rests on") {
    BikeLog log("Old single");
    log.bike.details.value.odometer_unit = DistanceUnit::mi;
    log.bike.details.value.expected_distance_a_year = miles("1500");
    ForecastGarage made;
    made.add(log.bike);
    auto why = text(forecast_why_text(Shown(made).report()));
    CHECK(holds(why, "your guess of 1 500 mi a year"));
    CHECK_FALSE(holds(why, "most owners"));
    made.garage.bikes.clear();
    Reading changed;
    changed.clock_change = ClockChange{miles("41900"), miles("10")};
    log.reading("2025-06-01", "41870");
    log.add("2025-06-03", changed);
    log.reading("2025-06-05", "25");
    made.add(log.bike);
    why = text(forecast_why_text(Shown(made).report()));
    CHECK(holds(why, "25 mi on 5 Jun 2025"));
    CHECK_FALSE(holds(why, "learnt in 0"));
    CHECK(holds(why, "recorded in 6 214 mi + 45 mi")); // 10 000 km
    CHECK(holds(why, "in 9 of 10 cases"));
}

TEST_CASE("A payment that was missed is told as perhaps paid") {
    BikeLog log("Shed find");
    log.add("2024-12-01", Cost{.category = "tax", .every_months = 12}).value.paid = money("60");
    ForecastGarage made;
    made.add(log.bike);
    const Shown shown(made);
    CHECK(holds(text(forecast_why_text(shown.report())), "tax (missed, perhaps paid)"));
    CHECK(holds(write::json(forecast_json(shown.report())), "\"missed\": true"));
}

TEST_CASE("The budget of several bikes has a second chance, should all be ridden much at once") {
    ForecastGarage made;
    for (const auto* name : {"One", "Two", "Three"}) {
        BikeLog log = ridden_bike(name);
        log.add("2025-06-01", Fuel{.volume = litres("14")}, "19450").value.paid = money("25");
        log.add("2025-06-20", Fuel{.volume = litres("15")}, "19750").value.paid = money("27");
        made.add(log.bike);
    }
    made.settings().yearly_budgets = {{cost::budget_key_of_all(), money("2000")},
                                      {"fuel", money("2000")},
                                      {cost::budget_key_of_bike(made.garage.bikes[0].id), money("700")}};
    const auto lines = cost::budget_lines(made.run("2026-01-10", {.paths = 2000}), made.garage);
    REQUIRE(lines.size() == 3);
    for (const auto i : {0U, 2U}) { // all bikes; fuel stands last
        REQUIRE(lines[i].chance_over_together);
        CHECK(*lines[i].chance_over_together != lines[i].chance_over);
        CHECK(*lines[i].monthly_amount_together_minor > lines[i].monthly_amount_minor);
    }
    CHECK_FALSE(lines[1].chance_over_together);
    const auto table = text(budget_text(lines, day("2026-01-10")));
    CHECK(holds(table, " / "));
    CHECK(holds(table, "each bike ridden by itself"));
    CHECK(holds(write::json(budget_json(lines)), "\"chance_over_budget_together\""));
}
