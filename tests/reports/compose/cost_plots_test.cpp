// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/cost_plots.h"

#include "reports/plot/faults.h"
#include "reports/plot/palette.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::compose;
using namespace sumpbook::testing;

namespace {

cost::Spending spent(std::string_view date, std::string category, std::string_view amount,
                     std::string_view currency = "EUR") {
    return {.bike = "Tourer",
            .entry_id = "k7-1",
            .date = day(date),
            .category = std::move(category),
            .amount = money(amount, currency)};
}
const Currency euro = Currency::from_code("EUR").value();

} // namespace

TEST_CASE("A bar a year, its categories stacked, the largest first, the years between not left out") {
    const auto plot = spent_plot({spent("2023-05-01", "fuel", "20"), spent("2023-06-01", "fuel", "30"),
                                  spent("2025-01-01", "tax", "80.50"), spent("2025-02-01", "sale", "-4000"),
                                  spent("2025-03-01", "fuel", "9", "GBP")},
                                 euro)
                          .value();
    CHECK(plot.x.categories == std::vector<std::string>{"2023", "2024", "2025"});
    REQUIRE(plot.bars.size() == 2);
    CHECK(plot.bars[0].label == "tax");
    CHECK(plot.bars[0].values == std::vector<double>{0, 0, 80.5});
    CHECK(plot.bars[1].values == std::vector<double>{50, 0, 0});
    CHECK(plot.bars[0].tone != plot.bars[1].tone);
    CHECK(plot.y.title == "Spent, EUR");
    CHECK(plot.title == "Spent each year on Tourer");
    CHECK_FALSE(plot::empty(plot));
    CHECK(plot::faults(plot) == std::vector<std::string>{});
}

TEST_CASE("Many categories are joined into one of the six that can be told apart") {
    std::vector<cost::Spending> all;
    for (const auto* category : {"a", "b", "c", "d", "e", "f", "g", "h"})
        all.push_back(spent("2025-05-01", category, std::string(1, '9')));
    const auto plot = spent_plot(all, euro).value();
    REQUIRE(plot.bars.size() == 6);
    CHECK(plot.bars.back().label == "other");
    CHECK(plot.bars.back().values == std::vector<double>{27});
    CHECK(plot::faults(plot) == std::vector<std::string>{});
}

TEST_CASE("Nothing spent is no picture") {
    CHECK_FALSE(spent_plot({}, euro));
    CHECK_FALSE(spent_plot({spent("2025-02-01", "purchase", "4000")}, euro));
}

TEST_CASE("The fan of a forecast starts where the money spent this year ends") {
    cost::CostForecast forecast;
    forecast.currency = euro;
    forecast.today = day("2026-05-03");
    forecast.until = day("2027-05-03");
    forecast.bikes = {{"Tourer", {}}};
    forecast.up_to_month = {{"2026-05-31", {2'000, 1'000, 2'500, 4'000}},
                            {"2026-06-30", {4'000, 2'000, 5'000, 9'000}}};
    const auto plot =
        forecast_plot(forecast, {spent("2025-12-30", "fuel", "99"), spent("2026-02-01", "fuel", "40"),
                                 spent("2026-03-01", "tax", "60"), spent("2026-06-01", "gear", "500")});
    REQUIRE(plot.series.size() == 2);
    const auto& so_far = plot.series[0].runs.at(0);
    CHECK(so_far.front().x == plot::day_position(day("2026-01-01")));
    CHECK(so_far.front().y == 0);
    CHECK(so_far.back().x == plot::day_position(day("2026-05-03")));
    CHECK(so_far.back().y == 100);
    REQUIRE(plot.ribbons.size() == 1);
    const auto& range = plot.ribbons[0].points;
    REQUIRE(range.size() == 3);
    CHECK(range[0].low == 100);
    CHECK(range[0].high == 100);
    CHECK(range[2].x == plot::day_position(day("2026-06-30")));
    CHECK(range[2].low == 120);
    CHECK(range[2].high == 190);
    CHECK(plot.series[1].runs.at(0).back().y == 150);
    CHECK(plot.x.kind == plot::AxisKind::date);
    CHECK(plot::stroke(plot.series[0]) == plot::Stroke::solid);  // what is known
    CHECK(plot::stroke(plot.series[1]) == plot::Stroke::dashed); // what is foretold
    CHECK(plot.series[0].tone != plot.series[1].tone);
    CHECK(plot.title == "Spent in 2026 and to come, Tourer");
    CHECK(plot.y.title == "Added up since 1 January 2026, EUR");
    CHECK(plot::faults(plot) == std::vector<std::string>{});
}
