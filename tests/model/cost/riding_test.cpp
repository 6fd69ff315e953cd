// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/riding.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"
#include "tests/model/cost/forecast_garage.h"

#include <numeric>

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

constexpr auto today = "2026-01-10";

Riding riding_of(const BikeLog& log) { return Riding(upkeep::BikeToday(log.bike, day(today))); }
double year_km(const BikeLog& log) { return riding_of(log).distance_quantile_km(0, 365, 0.5); }

} // namespace

TEST_CASE("The shapes of the pieces of a year add up to the shape of the year") {
    const auto riding = riding_of(ridden_bike());
    const auto pieces = pieces_of(day(today), day(today), 12);
    auto sum = riding.shapes(pieces[1]);
    for (std::size_t i = 2; i < pieces.size(); ++i) {
        const auto shapes = riding.shapes(pieces[i]);
        for (std::size_t rider = 0; rider < sum.size(); ++rider)
            sum[rider] += shapes[rider];
    }
    const auto whole = riding.shapes({day(today), pieces.back().last, 0, 365});
    REQUIRE(whole.size() == riding.riders().kept.size());
    for (std::size_t rider = 0; rider < sum.size(); ++rider)
        CHECK(sum[rider] == Approx(whole[rider]));
}

TEST_CASE("A lay-up planned until a day takes its days away; one without an end only what such months took") {
    const auto bike_laid_up = [](const char* until) {
        BikeLog log = ridden_bike();
        Layup layup{.until = {}, .planned = true};
        if (*until != '\0') layup.until = day(until);
        log.add("2026-01-02", layup);
        return log;
    };
    const double usual = year_km(ridden_bike());
    CHECK(usual > 3000);
    CHECK(year_km(bike_laid_up("2026-07-10")) < 0.7 * usual);
    CHECK(year_km(bike_laid_up("2027-07-10")) == 0);
    CHECK(year_km(bike_laid_up("")) > 0.9 * usual);
}

TEST_CASE("Without a reading riding runs from today by what most owners ride") {
    const auto riding = riding_of(BikeLog());
    CHECK_FALSE(riding.known());
    CHECK(riding.last_reading() == day(today));
    CHECK(riding.riders().kept.size() == 600);
    CHECK(riding.distance_quantile_km(0, 365, 0.9) > riding.distance_quantile_km(0, 365, 0.1));
}
