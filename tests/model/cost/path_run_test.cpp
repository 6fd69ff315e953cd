// SPDX-License-Identifier: GPL-3.0-or-later
// Jobs limited by date alone fall on the same days in every path, so that they can be counted by hand.
#include "model/cost/path_run.h"

#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

constexpr auto today = "2026-01-10";
constexpr std::uint32_t paths = 20;

/// How often each job is done in 12 months, by slug; the same in every path.
std::map<std::string, std::uint64_t> times_done(const BikeLog& log) {
    ForecastGarage made;
    made.add(log.bike);
    const auto run = made.run(today, {.paths = paths});
    std::map<std::string, std::uint64_t> times;
    for (std::size_t job = 0; job < run.bikes[0].jobs.size(); ++job) {
        const auto all = run.result.jobs_done[0][job];
        CHECK(all % paths == 0);
        times[run.bikes[0].jobs[job].item.slug] = all / paths;
    }
    return times;
}

} // namespace

TEST_CASE("What is overdue is done today, and counted from today") {
    BikeLog log;
    log.plan("chain-clean").repeat.months = 4;
    log.work("2025-06-01", "", {"chain-clean"}); // due since 1 October
    CHECK(times_done(log)["chain-clean"] == 4);  // today, 10 May, 10 September, 10 January
}

TEST_CASE("A job that includes others restarts them: they are done once, not twice") {
    BikeLog log;
    log.plan("engine-oil").repeat.months = 12;
    auto& service = log.plan("yearly-service");
    service.repeat.months = 12;
    service.includes = {"engine-oil"};
    log.work("2025-05-01", "", {"yearly-service"});
    auto times = times_done(log);
    CHECK(times["yearly-service"] == 1);
    CHECK(times["engine-oil"] == 0);
    log.bike.plan[0].value.repeat.months = 3;
    times = times_done(log);
    CHECK(times["yearly-service"] == 1);
    // Overdue today, 10 April; 1 May comes with the service; then 1 August, 1 November.
    CHECK(times["engine-oil"] == 4);
}

TEST_CASE("A grid keeps its days whenever the job was done") {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2020-03-01");
    auto& item = log.plan("coolant");
    item.repeat.months = 6;
    item.counted_from = CountedFrom::grid;
    log.work("2025-09-05", "", {"coolant"});
    CHECK(times_done(log)["coolant"] == 2); // 1 March and 1 September
}

TEST_CASE("An item waits for the day it comes into force, and one done once and over is left out") {
    BikeLog log;
    auto& later = log.plan("inspection");
    later.repeat.months = 1;
    later.in_force_from = day("2026-11-20");
    log.work("2025-09-05", "", {"inspection"});
    log.plan("first-service").first.distance = km("1000");
    log.work("2020-01-01", "", {"first-service"});
    auto times = times_done(log);
    CHECK(times["inspection"] == 2); // 20 November and 20 December
    CHECK_FALSE(times.contains("first-service"));
}

TEST_CASE("Distance falls due again and again inside a piece") {
    BikeLog log = ridden_bike();
    log.plan("chain-clean").repeat.distance = km("100");
    log.work("2025-12-15", "", {"chain-clean"});
    ForecastGarage made;
    made.add(log.bike);
    const auto run = made.run(today, {.paths = paths});
    const double last_km = run.bikes[0].riding->last_km();
    CHECK(last_km == run.bikes[0].bike->odometer().span()->at_last.km());
    double km_in_all = 0;
    for (const auto& path : run.result.distances_km)
        km_in_all += path[0];
    const auto done = static_cast<double>(run.result.jobs_done[0][0]);
    // Every 100 km once; each path may owe the rest of one interval, and was owed up to one today.
    CHECK(done <= km_in_all / 100 + paths);
    CHECK(done >= km_in_all / 100 - paths);
}

TEST_CASE("A plan that asks for a job every metre comes to an end") {
    BikeLog log = ridden_bike();
    log.plan("chain-clean").repeat.distance = km("0.001");
    log.work("2025-12-15", "", {"chain-clean"});
    ForecastGarage made;
    made.add(log.bike);
    CHECK(made.run(today, {.paths = 1}).result.jobs_done[0][0] == 13 * 500 + 1); // a piece each, and today
}
