// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/distance.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

#include <limits>
#include <type_traits>

using namespace sumpbook;

static_assert(std::is_trivially_copyable_v<Distance>);
static_assert(!std::is_constructible_v<Distance, double> && !std::is_constructible_v<Distance, std::int64_t>);
static_assert(Distance::from_whole_km(3) - Distance::from_whole_km(1) == Distance::from_whole_km(2));
static_assert(-Distance::from_whole_km(1) < Distance{});

TEST_CASE("Kilometres and miles with three decimals are exact", "[distance]") {
    CHECK(distance_of({Decimal(12345678, 3), DistanceUnit::km})->micrometres() == 12'345'678'000'000);
    CHECK(distance_of({Decimal(1), DistanceUnit::mi})->micrometres() == 1'609'344'000);
    CHECK(distance_of({Decimal(1, 3), DistanceUnit::mi})->micrometres() == 1'609'344);
    CHECK(distance_of({Decimal(1, 9), DistanceUnit::km})->micrometres() == 1);
    CHECK(distance_of({Decimal(5, 10), DistanceUnit::km})->micrometres() == 0);
}

TEST_CASE("The longest distance is accepted, one millimetre more is refused", "[distance]") {
    CHECK(distance_of({Decimal(10'000'000), DistanceUnit::km}) == most_distance);
    CHECK(distance_of({Decimal(-10'000'000), DistanceUnit::km}) == -most_distance);
    const auto far = distance_of({Decimal(10'000'000'000'001, 6), DistanceUnit::km});
    REQUIRE_FALSE(far);
    CHECK(far.error().sentence == "The distance is too large: at most 10 000 000 km.");
    CHECK(far.error().place.text == "10000000.000001");
    CHECK(distance_of({Decimal(6'213'711), DistanceUnit::mi}));
    CHECK_FALSE(distance_of({Decimal(6'213'712), DistanceUnit::mi}));
    CHECK_FALSE(distance_of({Decimal(-9'000'000'000), DistanceUnit::mi}));
    CHECK_FALSE(distance_of({Decimal(999'999'999'999'999'999), DistanceUnit::mi}));
}

TEST_CASE("Sums of distances stay at the end of the range instead of overflowing", "[distance]") {
    const auto end = Distance::from_micrometres(sum_limit);
    Distance sum;
    for (int i = 0; i < 1000; ++i)
        sum += most_distance;
    CHECK(sum == end);
    CHECK(sum + sum == end);
    CHECK(Distance{} - sum - sum == -end);
    CHECK(Distance::from_whole_km(9'000'000'000'000'000'000) == end);
    CHECK(Distance::from_km(-1e300) == -end);
    CHECK(-Distance::from_micrometres(std::numeric_limits<std::int64_t>::min()) == end);
}

TEST_CASE("Distances in either unit", "[distance]") {
    const Distance hundred_miles = *distance_of({Decimal(100), DistanceUnit::mi});
    CHECK(in_unit(hundred_miles, DistanceUnit::km, 1).text() == "160.9");
    CHECK(in_unit(hundred_miles, DistanceUnit::km, 4).text() == "160.9344");
    CHECK(in_unit(hundred_miles, DistanceUnit::mi, 0).text() == "100");
    CHECK(hundred_miles.km() == 160.9344);
    CHECK(Distance::from_km(160.9344) == hundred_miles);
    Distance sum;
    sum += hundred_miles;
    CHECK(sum + Distance::from_whole_km(1) == Distance::from_km(161.9344));
    CHECK(text_of(WrittenDistance{Decimal(123450, 1), DistanceUnit::km}) == "12345.0 km");
}

TEST_CASE("Compared as written, 1 mi and 1.609344 km differ; as distances they are one", "[distance]") {
    const WrittenDistance mile{Decimal(1), DistanceUnit::mi};
    const WrittenDistance same_in_km{Decimal(1'609'344, 6), DistanceUnit::km};
    CHECK_FALSE(mile == same_in_km);
    CHECK(distance_of(mile).value() == distance_of(same_in_km).value());
    CHECK_FALSE(mile == WrittenDistance{Decimal(10, 1), DistanceUnit::mi});
}

TEST_CASE("Properties of distances", "[distance][property]") {
    rc::prop("written, converted and written again is the same number", [] {
        const Decimal number(*rc::gen::inRange<std::int64_t>(-6'000'000'000, 6'000'000'000), 3);
        const auto unit = *rc::gen::element(DistanceUnit::km, DistanceUnit::mi);
        RC_ASSERT(in_unit(distance_of({number, unit}).value(), unit, 3).same_as_written(number));
    });
    rc::prop("sums of written distances are exact", [] {
        const Decimal a(*rc::gen::inRange<std::int64_t>(0, 3'000'000'000), 3);
        const Decimal b(*rc::gen::inRange<std::int64_t>(0, 3'000'000'000), 3);
        const auto unit = *rc::gen::element(DistanceUnit::km, DistanceUnit::mi);
        RC_ASSERT(distance_of({a, unit}).value() + distance_of({b, unit}).value() ==
                  distance_of({add(a, b).value(), unit}).value());
    });
}
