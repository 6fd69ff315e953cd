// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/before_after.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"
#include "tests/model/oil/oil_garage.h"

using namespace sumpbook;
using namespace sumpbook::review;
using namespace sumpbook::testing;

namespace {

Measure slack(std::string_view mm) {
    Measure measure;
    measure.quantity = "chain-slack";
    measure.value = number(mm);
    measure.unit = "mm";
    return measure;
}

Fuel full(std::string_view litre) {
    Fuel fuel;
    fuel.volume = litres(litre);
    return fuel;
}

std::vector<Compared> compared(const BikeLog& log, const Cut& cut) {
    Garage garage;
    garage.bikes.push_back(log.bike);
    return before_and_after(garage, garage.bikes.front(), cut);
}

} // namespace

TEST_CASE("measures are cut by day, those of the day itself come after") {
    BikeLog log;
    log.add("2024-04-01", slack("30"));
    log.add("2024-05-01", slack("35.5"));
    log.add("2024-06-01", slack("36"));
    const auto found = compared(log, {day("2024-05-01"), {}});
    REQUIRE(found.size() == 1);
    CHECK(found[0].before == std::vector<double>{30});
    CHECK(found[0].after == std::vector<double>{35.5, 36});
    CHECK(found[0].digits == 1);
    CHECK(found[0].median_after == Approx(35.75));
    CHECK(found[0].shift == Shift::too_few);
}

TEST_CASE("a modification cuts its own day by the order of the log") {
    BikeLog log;
    log.add("2024-05-01", slack("30"));
    Modification sprocket;
    sprocket.what = "Front sprocket 16 instead of 15 teeth";
    const auto id = log.add("2024-05-01", sprocket).id;
    log.add("2024-05-01", slack("36"));
    const auto found = compared(log, {day("2024-05-01"), id});
    REQUIRE(found.size() == 1);
    CHECK(found[0].before == std::vector<double>{30});
    CHECK(found[0].after == std::vector<double>{36});
    CHECK(modifications_like(log.bike, "SPROCKET").size() == 1);
    CHECK(modifications_like(log.bike, id).size() == 1);
    CHECK(modifications_like(log.bike, "exhaust").empty());
}

TEST_CASE("fuel: a stretch that the cut goes through is on neither side") {
    BikeLog log;
    log.add("2024-04-01", full("10"), "1000");
    log.add("2024-04-10", full("10"), "1200");
    log.add("2024-05-10", full("10"), "1400"); // holds 1 May
    log.add("2024-05-20", full("8"), "1600");
    const auto found = compared(log, {day("2024-05-01"), {}});
    REQUIRE(found.size() == 1);
    CHECK(found[0].kind == ComparedKind::fuel);
    CHECK(found[0].left_out == 1);
    CHECK(found[0].before == std::vector<double>{5});
    CHECK(found[0].after == std::vector<double>{4});
}

TEST_CASE("many values far apart are told apart, a side without values is not judged") {
    BikeLog log;
    for (const auto* date : {"2024-01-01", "2024-01-02", "2024-01-03", "2024-01-04", "2024-01-05"})
        log.add(date, slack("30"));
    CHECK(compared(log, {day("2024-05-01"), {}})[0].shift == Shift::one_sided);
    for (const auto* date : {"2024-06-01", "2024-06-02", "2024-06-03", "2024-06-04", "2024-06-05"})
        log.add(date, slack("25"));
    const auto found = compared(log, {day("2024-05-01"), {}});
    CHECK(found[0].shift == Shift::lower);
    CHECK(found[0].test->shift == Approx(-5));
}

TEST_CASE("values that chance explains are not a change") {
    BikeLog log;
    for (const auto* value : {"30", "32", "34", "36"})
        log.add("2024-01-01", slack(value));
    for (const auto* value : {"31", "33", "35", "37"})
        log.add("2024-06-01", slack(value));
    CHECK(compared(log, {day("2024-05-01"), {}})[0].shift == Shift::not_seen);
}

TEST_CASE("wear: fills that cannot be held against others are left out, and counted") {
    oil::testing::OilGarage garage;
    const auto fill = [&](std::string_view date, std::string_view drawn, int at, std::string_view iron) {
        garage.fill(date, "10W-40", "Marsh 4T", at);
        garage.draw(drawn, {oil::testing::value("Fe", iron)}, at + 3000);
    };
    fill("2020-01-02", "2020-12-01", 10000, "12");
    fill("2021-01-02", "2021-12-01", 13000, "<2");
    fill("2022-01-02", "2022-12-01", 16000, "15");
    const auto found = before_and_after(garage.garage, garage.bike(), {day("2022-01-01"), {}});
    REQUIRE(found.size() == 1);
    CHECK(found[0].what == "Fe");
    CHECK(found[0].before.size() == 1);
    CHECK(found[0].after.size() == 1);
    CHECK(found[0].left_out == 1);

    Fit engine;
    engine.slot = "engine";
    garage.add("2022-01-01", engine);
    const auto other = before_and_after(garage.garage, garage.bike(), {day("2022-01-01"), {}});
    CHECK(other[0].before.empty());
    CHECK(other[0].left_out == 2);
}
