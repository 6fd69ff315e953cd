// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/worn_parts.h"

#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

constexpr auto today = "2026-01-10";

void measure(BikeLog& log, std::string_view date, std::string_view odometer, const std::string& quantity,
             std::string_view value, const std::string& at, const std::string& unit = "mm") {
    log.add(date, Measure{quantity, number(value), unit, at, {}}, odometer);
}

Fit fitted(const std::string& slot, const std::string& date_code = {}) {
    Fit fit;
    fit.slot = slot;
    if (!date_code.empty()) fit.tyre_date_code = date_code;
    return fit;
}

/// A rear tyre fitted at 16 300 km for 150 EUR, measured twice since: down to 1.6 mm at 25 900 km.
BikeLog with_a_rear_tyre() {
    BikeLog log = ridden_bike();
    log.add("2024-12-01", fitted("rear-tyre"), "16300").value.paid = money("150");
    measure(log, "2025-03-01", "17900", "tread", "5.6", "rear");
    measure(log, "2025-08-01", "20900", "tread", "4.1", "rear"); // 0.5 mm in 1 000 km
    return log;
}

const PlannedJob* job(const ForecastRun& run, const std::string& slug) {
    const auto& jobs = run.bikes[0].jobs;
    const auto found = std::ranges::find_if(jobs, [&](const PlannedJob& j) { return j.item.slug == slug; });
    return found == jobs.end() ? nullptr : &*found;
}

double times(const ForecastRun& run, const std::string& slug) {
    const auto& jobs = run.bikes[0].jobs;
    const auto place = static_cast<std::size_t>(job(run, slug) - jobs.data());
    return static_cast<double>(run.result.jobs_done[0][place]) / run.wish.paths;
}

ForecastRun run_of(const BikeLog& log, int months = 12) {
    ForecastGarage made;
    made.add(log.bike);
    return made.run(today, {.months = months, .paths = 200});
}

} // namespace

TEST_CASE("A tyre that wears out is renewed where its tread ends, for what was paid for the last one") {
    const auto run = run_of(with_a_rear_tyre());
    const auto* tyre = job(run, "rear-tyre");
    REQUIRE(tyre != nullptr);
    CHECK(tyre->item.label == "Rear tyre");
    CHECK(tyre->category == "tyres");
    CHECK(tyre->first.km == Approx(25'900));
    CHECK(tyre->life.km == Approx(9'600)); // from the fitting, not from the first measurement
    REQUIRE(tyre->bills.size() == 1);
    CHECK(tyre->bills[0].minor == 15'000);
    CHECK(times(run, "rear-tyre") > 0.9); // some 6 000 km a year from 23 586 km
    CHECK(times(run, "rear-tyre") < 1.2);
    const auto categories = cost_forecast(run).value().categories;
    CHECK(std::ranges::any_of(categories, [](const ForecastLine& line) {
        return line.key == "tyres" && line.spread.p50_minor > 10'000;
    }));
}

TEST_CASE("It comes again after its life, for as long as is looked ahead") {
    const auto five_years = run_of(with_a_rear_tyre(), 60);
    double km = 0;
    for (const auto& path : five_years.result.distances_km)
        km += path[0] / five_years.wish.paths;
    const double expected = 1 + (five_years.bikes[0].riding->last_km() + km - 25'900) / 9'600;
    CHECK(times(five_years, "rear-tyre") <= expected);
    CHECK(times(five_years, "rear-tyre") > expected - 1);
}

TEST_CASE("What was paid for a tyre is not what it costs to look tyres over") {
    BikeLog log = with_a_rear_tyre();
    log.plan("tyres").repeat.months = 6;
    for (auto& entry : log.bike.log) {
        if (std::holds_alternative<Fit>(entry.value.body)) entry.value.does = {"tyres"};
    }
    const auto run = run_of(log);
    CHECK(job(run, "tyres")->bills.empty());
    CHECK(job(run, "rear-tyre")->bills.size() == 1);
    // Without a measurement or a date code there is no other job that could carry it.
    std::erase_if(log.bike.log,
                  [](const LogEntry& entry) { return std::holds_alternative<Measure>(entry.value.body); });
    const auto unmeasured = run_of(log);
    CHECK(job(unmeasured, "rear-tyre") == nullptr);
    CHECK(job(unmeasured, "tyres")->bills.size() == 1);
}

TEST_CASE("Worn out pads without a price are done today and told as not priced") {
    BikeLog log = ridden_bike();
    measure(log, "2025-03-01", "17900", "pad", "3.0", "front");
    measure(log, "2025-12-10", "23400", "pad", "1.4", "front");
    const auto run = run_of(log);
    CHECK(times(run, "front-pads") >= 1);
    const auto gaps = not_priced(run, 0);
    CHECK(std::ranges::find(gaps, NotPriced{"Tourer", "Front pads", NotPricedBecause::no_cost, {}}) !=
          gaps.end());
}

TEST_CASE("An old tyre is due by age, whichever comes first, and the new one ten years on") {
    BikeLog log = ridden_bike();
    log.add("2017-02-01", fitted("front-tyre", "2616")).value.paid = money("120"); // made in June 2016
    const auto run = run_of(log, 120);
    const auto* tyre = job(run, "front-tyre");
    REQUIRE(tyre != nullptr);
    CHECK_FALSE(tyre->first.km);
    CHECK(tyre->first.day > 100);
    CHECK(tyre->first.day < 200);
    CHECK(tyre->life == PartLife{.km = {}, .months = 120});
    CHECK(times(run, "front-tyre") == 1);
}

TEST_CASE("A part's limit joins the item of the plan that renews it or sets it right") {
    BikeLog log = ridden_bike();
    log.plan("chain-set").repeat.distance = km("15000");
    log.plan("valve-clearance").repeat.distance = km("24000");
    auto& pads = log.plan("pads-in-front");
    pads.slot = "front-pads";
    pads.estimate = money("60");
    log.add("2024-12-01", fitted("chain-set"), "16300").value.paid = money("130");
    log.work("2024-02-10", "10400", {"valve-clearance"});
    for (const auto& [date, at, chain, clearance, pad] :
         {std::array{"2025-03-01", "17900", "0.4", "0.20", "3.0"},
          std::array{"2025-08-01", "20900", "1.0", "0.17", "2.4"}}) {
        measure(log, date, at, "chain", chain, "", "%");
        log.add(date, Measure{"valve-clearance", number(clearance), "mm", "inlet", number("0.10")}, at);
        measure(log, date, at, "pad", pad, "front");
    }
    const auto run = run_of(log);
    CHECK(run.bikes[0].jobs.size() == 3);                     // no job of its own beside them
    CHECK(job(run, "chain-set")->first.km == Approx(25'900)); // 2 %, before 31 300 km
    CHECK(job(run, "chain-set")->life.km == Approx(9'600));
    CHECK(job(run, "valve-clearance")->first.km == Approx(27'900)); // before 34 400 km
    CHECK(job(run, "pads-in-front")->first.km == Approx(25'400));
    CHECK(job(run, "pads-in-front")->estimate == money("60"));
}

TEST_CASE("Words of a slot") {
    CHECK(words_of_slot("front-left-pads") == "Front left pads");
    CHECK(words_of_slot("").empty());
}
