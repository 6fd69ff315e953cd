// SPDX-License-Identifier: GPL-3.0-or-later
// Everything `costs forecast --why` names moves the answer the way it says. Paths share their draws, so a
// small change shows without noise.
#include "model/cost/forecast.h"

#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

constexpr auto today = "2026-01-10";

/// What can be changed about the bike of these tests.
struct Story {
    std::string estimate = "90";
    std::string oil_km = "2500";
    std::string fuel_price = "1.80"; ///< Of the last fill but one; the middle of the last three.
    std::string second_fill_litres = "15";
    std::string insurance = "180";
    int repairs = 2;
    std::string repair_cost = "120";
    std::string bill = "100";
    std::string last_km = "24700";
    int drift_percent = 0;
    int oil_drift_percent = 0;    ///< On top, of the category the engine oil counts in.
    std::string top_up = "0.4";   ///< Litres, in 2 500 km.
    std::string can = "40";       ///< For 4 L.
    std::string tax_rate = "1.2"; ///< Of the pound, in which the tax is paid.
    std::string usual_year;       ///< What the owner says to ride in a year.
    bool with_readings = true;
};

void add_fuel(BikeLog& log, const char* date, const char* odometer, const std::string& volume,
              const std::string& price) {
    Fuel fuel;
    fuel.volume = litres(volume);
    fuel.price = UnitPrice{number(price), Currency::from_code("EUR").value(), VolumeUnit::l};
    log.add(date, fuel, odometer);
}

void add_oil(BikeLog& log, const Story& story) {
    log.add("2025-01-02", Cost{.category = "oil", .text = "4 L can"}).value.paid = money(story.can);
    log.add("2025-03-01", OilChange{.volume_in = litres("3"), .level_after = number("1")});
    const bool in_km = story.with_readings;
    log.add("2025-08-01", TopUp{.volume = litres(story.top_up), .level_after = number("1")},
            in_km ? "20500" : "");
    log.add("2025-02-10", Cost{.category = "tax", .every_months = 12}).value.paid = money("100", "GBP");
}

ForecastGarage told(const Story& story) {
    BikeLog log = story.with_readings ? ridden_bike() : BikeLog("Tourer");
    if (!story.usual_year.empty()) log.bike.details.value.expected_distance_a_year = km(story.usual_year);
    auto& item = log.plan("engine-oil");
    item.repeat.distance = km(story.oil_km);
    item.estimate = money(story.estimate);
    log.work("2025-10-05", "", {"engine-oil"}).value.paid = money(story.bill);
    for (int i = 0; i < story.repairs; ++i)
        log.add("2025-07-0" + std::to_string(i + 1), Work{.text = "relay"}).value.paid =
            money(story.repair_cost);
    // One repair that is paid for, so that each story knows what a repair costs.
    log.add("2023-12-01", Work{.text = "before the record"}).value.paid = money(story.repair_cost);
    log.add("2025-02-01", Cost{.category = "insurance", .every_months = 12}).value.paid =
        money(story.insurance);
    if (story.with_readings) {
        add_fuel(log, "2025-06-01", "19450", "14", "1.70");
        add_fuel(log, "2025-06-10", "19600", story.second_fill_litres, story.fuel_price);
        add_fuel(log, "2025-06-14", "19700", "6", "1.90");
        log.reading("2026-01-02", story.last_km);
    }
    add_oil(log, story);
    ForecastGarage made;
    made.add(log.bike);
    for (auto& [category, percent] : made.settings().price_drift_percent_a_year)
        percent = Decimal{story.drift_percent + (category == "upkeep" ? story.oil_drift_percent : 0)};
    made.settings().exchange_rates = {{day("2025-01-01"), Currency::from_code("GBP").value(),
                                       Currency::from_code("EUR").value(), number(story.tax_rate)}};
    return made;
}

CostForecast foretold(const Story& story, const ForecastWish& wish = {.paths = 2000}) {
    return cost_forecast(told(story).run(today, wish)).value();
}
std::int64_t mean(const Story& story) { return foretold(story).next_12_months.mean_minor; }

} // namespace

TEST_CASE("What makes things dearer makes the answer higher") {
    const auto usual = mean({});
    CHECK(mean({.estimate = "150"}) > usual);
    CHECK(mean({.estimate = "60"}) < usual);
    CHECK(mean({.bill = "140"}) > usual);
    CHECK(mean({.fuel_price = "1.89"}) > usual);
    CHECK(mean({.insurance = "200"}) == usual + 2000); // paid once, to the cent
    CHECK(mean({.repair_cost = "200"}) > usual);
    CHECK(mean({.drift_percent = 3}) > usual);
    CHECK(mean({.drift_percent = 6}) > mean({.drift_percent = 3}));
    CHECK(mean({.drift_percent = -3}) < usual);
}

TEST_CASE("Oil used and its price, exchange rates and the drift of a job move the answer") {
    const auto usual = foretold({});
    const auto part = [](const CostForecast& forecast, const std::string& category) {
        const auto line = std::ranges::find(forecast.categories, category, &ForecastLine::key);
        return line == forecast.categories.end() ? 0 : line->spread.mean_minor;
    };
    REQUIRE(part(usual, "oil") > 0);
    const auto more_oil = foretold({.top_up = "0.8"});
    CHECK(part(more_oil, "oil") > part(usual, "oil") * 3 / 2);
    CHECK(part(foretold({.can = "60"}), "oil") > part(usual, "oil"));
    CHECK(part(usual, "tax") == 12'000);
    CHECK(part(foretold({.tax_rate = "1.3"}), "tax") == 13'000);
    CHECK(mean({.oil_drift_percent = 5}) > usual.next_12_months.mean_minor); // of the jobs
}

TEST_CASE("Without a reading the distance the owner expects moves the answer") {
    const auto run = [](const std::string& year) {
        return told({.usual_year = year, .with_readings = false}).run(today, {.paths = 500});
    };
    const auto little = run("2000");
    const auto much = run("8000");
    CHECK(much.bikes[0].riding->distance_quantile_km(0, 365, 0.5) ==
          Approx(4 * little.bikes[0].riding->distance_quantile_km(0, 365, 0.5)).epsilon(0.001));
    CHECK(cost_forecast(much)->next_12_months.mean_minor > cost_forecast(little)->next_12_months.mean_minor);
}

TEST_CASE("The middle of the last three fuel prices counts, not the dearest") {
    CHECK(mean({.fuel_price = "1.95"}) == mean({.fuel_price = "1.90"})); // 1.90 is the middle of both
}

TEST_CASE("Riding more, using more and breaking more makes the answer higher") {
    const auto usual = mean({});
    CHECK(mean({.last_km = "26000"}) > usual);
    CHECK(mean({.second_fill_litres = "18"}) > usual);
    CHECK(mean({.repairs = 4}) > usual);
    CHECK(mean({.repairs = 0}) < usual);
    CHECK(mean({.oil_km = "4000"}) < usual); // a longer interval
}

TEST_CASE("A higher budget is less likely to be passed, and riding more makes it likelier") {
    const auto run = told({}).run(today, {.paths = 2000});
    const auto middle = cost_forecast(run)->next_12_months.p50_minor;
    const double chance = chance_over(run, middle).chance;
    CHECK(chance > 0.4);
    CHECK(chance <= 0.5);
    CHECK(chance_over(run, middle + 10'000).chance < chance);
    CHECK(chance_over(told({.last_km = "26000"}).run(today, {.paths = 2000}), middle).chance > chance);
}

TEST_CASE("Another seed and more paths change the answer a little, a longer horizon not the next 12 months") {
    const auto usual = foretold({});
    const auto other = foretold({}, {.paths = 2000, .seed = 99});
    CHECK(other.next_12_months != usual.next_12_months);
    CHECK(std::abs(static_cast<double>(other.next_12_months.p50_minor) /
                       static_cast<double>(usual.next_12_months.p50_minor) -
                   1) < 0.05);
    const auto longer = foretold({}, {.months = 60, .paths = 2000});
    CHECK(longer.next_12_months == usual.next_12_months);
    CHECK(longer.years.size() == 6);
    CHECK(longer.years.back().key == "2031");
}

TEST_CASE("A bike that was sold is not looked ahead for") {
    auto made = told({});
    made.garage.bikes[0].details.value.sold = Transfer{.date = day("2026-01-05")};
    CHECK_FALSE(cost_forecast(made.run(today)));
}
