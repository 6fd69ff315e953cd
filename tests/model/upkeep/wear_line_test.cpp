// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/wear_line.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <rapidcheck.h>

using namespace sumpbook;
using namespace sumpbook::testing;
using namespace sumpbook::upkeep;

namespace {

Distance whole_km(std::int64_t km) { return Distance::from_whole_km(km); }

WearPoint point(std::int64_t km, std::string_view value) { return {whole_km(km), number(value)}; }

std::optional<Distance> worn_at(const std::vector<WearPoint>& points, std::string_view limit,
                                WearDirection direction = WearDirection::falls) {
    return worn_out_at(points, number(limit), direction);
}

} // namespace

TEST_CASE("Two measurements give the line through both") {
    CHECK(worn_at({point(1000, "5.0"), point(3000, "4.0")}, "1.5") == whole_km(8000));
    CHECK(worn_at({point(1000, "0.5"), point(3000, "1.0")}, "2", WearDirection::rises) == whole_km(7000));
}

TEST_CASE("From three on it is the line of least squares") {
    // Slope -0.5/1000 km, mean 4.0 at 2 000 km: 1.5 lies 5 000 km past the mean.
    CHECK(worn_at({point(1000, "4.6"), point(2000, "3.8"), point(3000, "3.6")}, "1.5") == whole_km(7000));
}

TEST_CASE("Measured at the limit it is worn out where that was first found") {
    CHECK(worn_at({point(1000, "3.0"), point(5000, "1.5"), point(6000, "1.4")}, "1.5") == whole_km(5000));
    CHECK(worn_at({point(5000, "1.50")}, "1.5") == whole_km(5000));
    CHECK_FALSE(worn_at({point(5000, "1.51")}, "1.5"));
}

TEST_CASE("The limit is never put before the last measurement that was still good") {
    CHECK(worn_at({point(1000, "5.0"), point(2000, "1.6"), point(9000, "1.6")}, "1.5") >= whole_km(9000));
}

TEST_CASE("Without wear, or all at one distance, there is no forecast") {
    CHECK_FALSE(worn_at({point(1000, "5.0"), point(2000, "5.0")}, "1.5"));
    CHECK_FALSE(worn_at({point(1000, "5.0"), point(1000, "4.0")}, "1.5"));
    CHECK_FALSE(worn_at({}, "1.5"));
}

TEST_CASE("A much better value is a new part, a little better one is the hand that measured") {
    const std::vector<WearPoint> points{point(1000, "4.4"), point(5000, "2.3"), point(6000, "2.4"),
                                        point(9000, "4.6"), point(12000, "3.9")};
    const auto kept = since_new(points, number("1.5"), WearDirection::falls);
    CHECK(kept == std::vector<WearPoint>{point(9000, "4.6"), point(12000, "3.9")});
    const auto before = since_new({points.begin(), points.begin() + 3}, number("1.5"), WearDirection::falls);
    CHECK(before.size() == 3);
}

TEST_CASE("A part that wears evenly is worn out where it is, however often it was measured") {
    CHECK(rc::check([] {
        const int start_km = *rc::gen::inRange(0, 50000);
        const int km_a_tenth = *rc::gen::inRange(100, 3000); // for 0.1 mm
        const int count = *rc::gen::inRange(2, 12);
        std::vector<WearPoint> points;
        for (int i = 0; i < count; ++i)
            points.push_back({whole_km(start_km + i * km_a_tenth), Decimal::parse("5.0").value()});
        for (int i = 0; i < count; ++i)
            points[static_cast<std::size_t>(i)].value = decimal_from_double(5.0 - 0.1 * i, 1);
        RC_ASSERT(worn_out_at(points, Decimal(1), WearDirection::falls) ==
                  whole_km(start_km + 40 * km_a_tenth));
    }));
}

TEST_CASE("A measurement without a distance is no point of the line") {
    const WearPoint nowhere{std::nullopt, number("6.0")};
    CHECK_FALSE(worn_at({nowhere, point(1000, "5.0")}, "1.5"));
    CHECK(worn_at({nowhere, point(1000, "5.0"), point(3000, "4.0")}, "1.5") == whole_km(8000));
    CHECK_FALSE(worn_at({point(1000, "5.0"), WearPoint{std::nullopt, number("1.0")}}, "1.5"));
}
