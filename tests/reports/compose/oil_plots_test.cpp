// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_plots.h"
#include "reports/plot/faults.h"
#include "reports/plot/palette.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::oil::testing;

namespace {

/// Two fills, the first with two samples; chromium is below 1 at first, nickel always.
OilGarage example() {
    OilGarage garage;
    garage.new_oil("2009-12-01", {value("kv100", "14.2")});
    garage.fill("2010-03-01", "10W-40", "Marsh 4T", 10000);
    garage.draw("2010-06-01",
                {value("Fe", "10"), value("Cr", "<1"), value("Ni", "<1"), value("kv100", "13.5")}, 12000);
    garage.draw("2010-09-01",
                {value("Fe", "16"), value("Cr", "2"), value("Ni", "<1"), value("kv100", "13.0")}, 14000);
    garage.fill("2010-10-01", "10W-40", "Marsh 4T", 14100);
    garage.draw("2011-06-01",
                {value("Fe", "12"), value("Cr", "2"), value("Ni", "<1"), value("kv100", "13.2")}, 17000);
    return garage;
}

std::vector<oil::QuantityTrend> trends_of(OilGarage garage) {
    return oil::oil_trends(oil::OilRecord::of(garage.garage, garage.bike()), oil::default_profile());
}

const oil::QuantityTrend& of(const std::vector<oil::QuantityTrend>& trends, const std::string& quantity) {
    for (const auto& trend : trends) {
        if (trend.quantity == quantity) return trend;
    }
    throw std::logic_error("no " + quantity);
}

} // namespace

TEST_CASE("Wear metals are series with a run for each fill", "[compose][plot]") {
    const auto trends = trends_of(example());
    std::vector<const oil::QuantityTrend*> all;
    for (const auto& trend : trends)
        all.push_back(&trend);
    const auto plot = compose::wear_metals_plot(all);
    REQUIRE(plot.series.size() == 2); // nickel was never seen
    const auto& iron = plot.series[0];
    CHECK(iron.label == "iron (100 mg/kg)"); // HB2004
    REQUIRE(iron.runs.size() == 2);
    REQUIRE(iron.runs[0].size() == 2);
    CHECK(iron.runs[0][1].x == 14000);
    CHECK(iron.runs[0][1].y == Approx(16)); // 16 of 100 mg/kg
    CHECK_FALSE(iron.runs[0][1].hollow);
    const auto& chromium = plot.series[1];
    CHECK(chromium.runs[0][0].hollow);
    CHECK(chromium.runs[0][0].y == Approx(5)); // half the detection limit: 0.5 of 10 mg/kg
    CHECK(chromium.tone != iron.tone);
    CHECK(plot::mark(chromium) != plot::mark(iron));
    CHECK(plot.x.title == "Odometer, km");
    CHECK(plot.y.title == "Share of the limit in brackets, %");
    CHECK(plot.y.to == 120);
    REQUIRE(plot.bands.size() == 3);
    CHECK(plot.bands[1].from == 80);
    CHECK(plot.bands[1].tone == plot::Tone::caution);
    CHECK(plot.bands[2].label == "warning (HB2004)");
    CHECK(plot.bands[2].from == 100);
    CHECK(plot.bands[2].tone == plot::Tone::danger);
    CHECK(plot.description.find("iron latest 12, lowest 10, highest 16 mg/kg, limit 100 mg/kg") !=
          std::string::npos);
    CHECK(plot.description.find("chromium latest 2, lowest below 1, highest 2 mg/kg") != std::string::npos);
    CHECK(plot::faults(plot, {900, 500}).empty());
}

TEST_CASE("Metals without a published limit are drawn in their own unit and before no band",
          "[compose][plot]") {
    OilGarage garage = example();
    garage.draw("2011-07-01", {value("Ni", "3")}, 17500);
    const auto trends = trends_of(garage);
    const auto nickel = compose::wear_metals_plot({&of(trends, "Ni")});
    CHECK(nickel.y.title == "Wear metals, mg/kg");
    CHECK(nickel.bands.empty());
    const auto both = compose::wear_metals_plot({&of(trends, "Fe"), &of(trends, "Ni")});
    CHECK(both.series.size() == 1);
    CHECK(both.description.find("No published limit, so not drawn: nickel") != std::string::npos);
}

TEST_CASE("One metal stands before the bands of its limit set", "[compose][plot]") {
    const auto trends = trends_of(example());
    const auto plot = compose::quantity_plot(of(trends, "Fe"));
    REQUIRE(plot.series.size() == 1);
    REQUIRE(plot.bands.size() == 2);
    CHECK(plot.bands[0].to == 100);
    CHECK(plot.bands[0].tone == plot::Tone::good);
    CHECK(plot.bands[1].label == "warning (HB2004)");
    CHECK(plot.bands[1].from == 100);
    CHECK_FALSE(plot.bands[1].to);
    CHECK(plot.bands[1].tone == plot::Tone::danger);
    CHECK(compose::quantity_plot(of(trends, "Ni")).bands.empty()); // no published limit
}

TEST_CASE("Viscosity stands in the band of its grade, with the new oil as a line", "[compose][plot]") {
    const auto trends = trends_of(example());
    const auto plot = compose::viscosity_plot(of(trends, "kv100"));
    REQUIRE(plot.bands.size() == 1);
    CHECK(plot.bands[0].label == "SAE 10W-40 (J300)");
    CHECK(plot.bands[0].from == 12.5);
    CHECK(plot.bands[0].to == 16.3);
    CHECK(plot.y.from < 12.5); // the edges of the grade are in sight
    CHECK(plot.y.to > 16.3);
    REQUIRE(plot.rules.size() == 1);
    CHECK(plot.rules[0].at == 14.2);
    CHECK(plot.series[0].runs.size() == 2);
    CHECK(plot.title.ends_with("viscosity at 100 °C over the odometer"));
    CHECK(plot.y.title == "Viscosity at 100 °C, mm²/s");
    CHECK(plot.description.find("mm²/s") != std::string::npos);
    CHECK(plot::faults(plot, {900, 506}).empty());
}

TEST_CASE("Without an odometer there is nothing to draw", "[compose][plot]") {
    OilGarage garage;
    garage.draw("2010-06-01", {value("Fe", "10")});
    const auto trends = trends_of(garage);
    CHECK(plot::empty(compose::quantity_plot(of(trends, "Fe"))));
    CHECK(plot::empty(compose::wear_metals_plot({&trends.front()})));
    CHECK(plot::empty(compose::wear_metals_plot({})));
}
