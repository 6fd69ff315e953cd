// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/volume.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

#include <type_traits>

using namespace sumpbook;

static_assert(std::is_trivially_copyable_v<Volume>);
static_assert(!std::is_constructible_v<Volume, double> && !std::is_constructible_v<Volume, std::int64_t>);

TEST_CASE("Litres, gallons and quarts with three decimals are exact", "[volume]") {
    CHECK(volume_of({Decimal(1), VolumeUnit::l})->picolitres() == 1'000'000'000'000);
    CHECK(volume_of({Decimal(1, 3), VolumeUnit::us_gal})->picolitres() == 3'785'411'784);
    CHECK(volume_of({Decimal(1, 3), VolumeUnit::imp_gal})->picolitres() == 4'546'090'000);
    CHECK(volume_of({Decimal(4), VolumeUnit::us_qt}).value() ==
          volume_of({Decimal(1), VolumeUnit::us_gal}).value());
    CHECK(volume_of({Decimal(1500), VolumeUnit::ml}).value() ==
          volume_of({Decimal(15, 1), VolumeUnit::l}).value());
}

TEST_CASE("The largest volume is accepted, one millilitre more is refused", "[volume]") {
    CHECK(volume_of({Decimal(1'000'000), VolumeUnit::l}) == most_volume);
    const auto much = volume_of({Decimal(1'000'000'001), VolumeUnit::ml});
    REQUIRE_FALSE(much);
    CHECK(much.error().sentence == "The volume is too large: at most 1 000 000 L.");
    CHECK(much.error().place.text == "1000000001");
    CHECK(volume_of({Decimal(-219'969), VolumeUnit::imp_gal}));
    CHECK_FALSE(volume_of({Decimal(-219'970), VolumeUnit::imp_gal}));
    CHECK_FALSE(volume_of({Decimal(-3'000'000), VolumeUnit::imp_gal}));
}

TEST_CASE("Sums of volumes stay at the end of the range instead of overflowing", "[volume]") {
    Volume sum;
    for (int i = 0; i < 20; ++i)
        sum += most_volume;
    CHECK(sum == Volume::from_picolitres(sum_limit));
    CHECK(Volume{} - sum - sum == Volume::from_picolitres(-sum_limit));
    CHECK(Volume::from_litres(1e300) == sum);
}

TEST_CASE("Volumes in every unit", "[volume]") {
    const Volume ten = *volume_of({Decimal(10), VolumeUnit::l});
    CHECK(in_unit(ten, VolumeUnit::us_gal, 3).text() == "2.642");
    CHECK(in_unit(ten, VolumeUnit::imp_gal, 3).text() == "2.200");
    CHECK(in_unit(ten, VolumeUnit::ml, 0).text() == "10000");
    CHECK(ten.litres() == 10);
    CHECK(Volume::from_litres(10) == ten);
    Volume sum = ten;
    sum += ten;
    CHECK(sum - ten == ten);
    CHECK(text_of(WrittenVolume{Decimal(1250, 2), VolumeUnit::us_gal}) == "12.50 US gal");
}

TEST_CASE("Properties of volumes", "[volume][property]") {
    rc::prop("written, converted and written again is the same number, and sums are exact", [] {
        const Decimal a(*rc::gen::inRange<std::int64_t>(0, 100'000'000), 3);
        const Decimal b(*rc::gen::inRange<std::int64_t>(0, 100'000'000), 3);
        const auto unit = *rc::gen::element(VolumeUnit::l, VolumeUnit::ml, VolumeUnit::us_gal,
                                            VolumeUnit::imp_gal, VolumeUnit::us_qt);
        RC_ASSERT(in_unit(volume_of({a, unit}).value(), unit, 3).same_as_written(a));
        RC_ASSERT(volume_of({a, unit}).value() + volume_of({b, unit}).value() ==
                  volume_of({add(a, b).value(), unit}).value());
    });
}
