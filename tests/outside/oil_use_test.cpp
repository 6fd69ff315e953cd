// SPDX-License-Identifier: GPL-3.0-or-later
// Oil used, against published figures; sources stand in the tables and in the product's own copy.
#include "model/usage/oil_use.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::outside;
using sumpbook::testing::BikeLog;

namespace {

/// Oil used between a refill and a top-up to the mark, by the program.
double litres_per_1000km(const WrittenVolume& topped_up, const WrittenDistance& over) {
    BikeLog log;
    log.bike.details.value.odometer_unit = over.unit;
    log.add("2024-01-01", OilChange{}, "20000");
    TopUp top_up;
    top_up.volume = topped_up;
    top_up.level_after = Decimal(1);
    log.add("2024-09-01", top_up, add(Decimal(20000), over.number).value().text());
    return usage::oil_use(log.bike, usage::OdometerSeries::of(log.bike)).litres_per_1000km.value();
}

} // namespace

TEST_CASE("Every published figure of oil used is in the program as published", "[outside][oil-use]") {
    const auto& own = usage::published_oil_use();
    std::size_t with_figure = 0;
    for (const CheckRow& row : check_table("oil-consumption.csv")) {
        TESTING_ROW(row);
        const auto same = [&](const usage::PublishedOilUse& figure) {
            return figure.as_published == row["as_published"] && figure.scope == row["scope"] &&
                   figure.source == row["source"] && figure.evidence == row["evidence"];
        };
        const auto found = std::ranges::find_if(own, same);
        if (row.empty("litres_per_1000_km")) {
            CHECK(found == own.end()); // a share of the fuel, not of the distance: not compared with
            continue;
        }
        ++with_figure;
        REQUIRE(found != own.end());
        CHECK(found->litres_per_1000km == row.number("litres_per_1000_km"));
        CHECK(found->run_in == (row["basis"] == "run-in"));
    }
    CHECK(with_figure == own.size());
}

TEST_CASE("Published amounts over published distances give the published rate", "[outside][oil-use]") {
    const CheckRow& row = check_row("oil-worked-checks.csv", "C12");
    TESTING_ROW(row);
    const auto expected = numbers_in(row["expected"]); // 0.28125; 0.58804; 0.62137 L/1000 km
    const double within = row.number("tolerance");
    REQUIRE(expected.size() >= 3);
    const auto one_thousand_miles = sumpbook::testing::miles("1000");
    CHECK(litres_per_1000km(sumpbook::testing::litres("0.9"), sumpbook::testing::km("3200")) ==
          Approx(expected[0]).margin(within));
    CHECK(litres_per_1000km({Decimal(1), VolumeUnit::us_qt}, one_thousand_miles) ==
          Approx(expected[1]).margin(within));
    CHECK(litres_per_1000km(sumpbook::testing::litres("1"), one_thousand_miles) ==
          Approx(expected[2]).margin(within));
}
