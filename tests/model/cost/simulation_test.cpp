// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/simulation.h"

#include "tests/catch.h"
#include "tests/model/cost/forecast_garage.h"

#include <algorithm>
#include <cmath>
#include <numeric>

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

constexpr auto today = "2026-01-10"; // some weeks after the last reading

Work repair() { return Work{.text = "starter relay"}; }

/// Fuel, jobs, repairs and dated costs.
BikeLog whole_bike(const std::string& name = "Tourer") {
    BikeLog log = ridden_bike(name);
    auto& item = log.plan("engine-oil");
    item.repeat = {.distance = km("2500"), .months = 12, .hours = {}};
    item.estimate = money("90");
    log.work("2025-05-01", "", {"engine-oil"}).value.paid = money("101.50");
    log.add("2025-07-03", repair()).value.paid = money("240");
    log.add("2025-08-03", repair()).value.paid = money("60");
    log.add("2025-02-01", Cost{.category = "insurance", .every_months = 12}).value.paid = money("180");
    log.add("2025-06-01", Fuel{.volume = litres("14")}, "19450").value.paid = money("25");
    log.add("2025-06-20", Fuel{.volume = litres("15")}, "19750").value.paid = money("27.30");
    return log;
}

ForecastGarage one(const BikeLog& log) {
    ForecastGarage made;
    made.add(log.bike);
    return made;
}

double mean_of(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}
double variance_of(const std::vector<double>& values) {
    const double mean = mean_of(values);
    double sum = 0;
    for (const double value : values)
        sum += (value - mean) * (value - mean);
    return sum / static_cast<double>(values.size() - 1);
}
/// Standard error of a variance over the variance, from the fourth moment of the values themselves.
double relative_error_of_variance(const std::vector<double>& values) {
    const double mean = mean_of(values);
    const double variance = variance_of(values);
    double fourth = 0;
    for (const double value : values)
        fourth += std::pow(value - mean, 4) / static_cast<double>(values.size());
    return std::sqrt((fourth / (variance * variance) - 1) / static_cast<double>(values.size()));
}
std::vector<double> euros(const std::vector<std::int64_t>& minor) {
    std::vector<double> values;
    for (const auto sum : minor)
        values.push_back(static_cast<double>(sum) / 100);
    return values;
}

} // namespace

TEST_CASE("The distance of the next 12 months has the law of the distance forecast") {
    const auto run = one(ridden_bike()).run(today);
    const auto& riding = *run.bikes[0].riding;
    const double days = run.plan.pieces.back().to_day;
    const double n = run.wish.paths;
    for (const double p : {0.1, 0.5, 0.9}) {
        INFO(p);
        const double quantile = riding.distance_quantile_km(0, days, p);
        const auto below = std::ranges::count_if(run.result.distances_km,
                                                 [&](const auto& path) { return path[0] <= quantile; });
        CHECK(std::abs(static_cast<double>(below) / n - p) < 4 * std::sqrt(p * (1 - p) / n));
    }
    // A mean with a standard error needs a variance: every a above 2.
    const auto& kept = riding.riders().kept;
    REQUIRE(std::ranges::all_of(kept, [](const usage::Rider& rider) { return rider.belief.a > 2; }));
    std::vector<double> distances;
    for (const auto& path : run.result.distances_km)
        distances.push_back(path[0]);
    const double error = std::sqrt(variance_of(distances) / n);
    CHECK(std::abs(mean_of(distances) - riding.mean_distance_km(0, days)) < 4 * error);
}

TEST_CASE("Each month's distance has its own law, through fuel of one price") {
    BikeLog log = ridden_bike();
    log.add("2025-06-01", Fuel{.volume = litres("14")}, "19450").value.paid = money("14");
    log.add("2025-06-20", Fuel{.volume = litres("30")}, "19750").value.paid = money("30");
    const auto run = one(log).run(today);
    REQUIRE(run.bikes[0].fuel);
    CHECK(run.bikes[0].fuel->minor_per_km() == Approx(10)); // 10 L/100 km at 1 EUR
    const auto& piece = run.plan.pieces.at(4);
    CHECK(iso_text(piece.last) == "2026-04-30");
    const double n = run.wish.paths;
    std::size_t group = 0;
    while (run.plan.groups[group].key != "2026-04")
        ++group;
    for (const double p : {0.1, 0.5, 0.9}) {
        INFO(p);
        const double quantile =
            10 * run.bikes[0].riding->distance_quantile_km(piece.from_day, piece.to_day, p);
        const auto below = std::ranges::count_if(
            run.result.sums[group], [&](std::int64_t sum) { return static_cast<double>(sum) <= quantile; });
        CHECK(std::abs(static_cast<double>(below) / n - p) < 4 * std::sqrt(p * (1 - p) / n));
    }
}

TEST_CASE("A yearly job costs what its bills say, by mean and spread") {
    BikeLog log = ridden_bike();
    auto& item = log.plan("coolant");
    item.repeat.months = 12;
    item.estimate = money("100");
    log.work("2025-05-01", "", {"coolant"}).value.paid = money("150");
    const auto run = one(log).run(today);
    const auto& cost = *run.bikes[0].jobs[0].cost;
    CHECK(cost.k() == 3);
    CHECK(run.result.jobs_done[0][0] == run.wish.paths); // once in every path
    const auto sums = euros(run.result.sums.front());
    const double v = cost.variance_ln();
    const double mean = std::exp(cost.mean_ln() + v / 2) / 100;
    const double sd = mean * std::sqrt(std::exp(v) - 1);
    const double n = run.wish.paths;
    CHECK(std::abs(mean_of(sums) - mean) < 4 * sd / std::sqrt(n));
    // The variance of a variance: (fourth central moment - sd^4) / n, of a lognormal.
    const double w = std::exp(v);
    const double kurtosis = w * w * w * w + 2 * w * w * w + 3 * w * w - 3;
    CHECK(std::abs(variance_of(sums) - sd * sd) < 4 * sd * sd * std::sqrt((kurtosis - 1) / n));
}

TEST_CASE("Repairs come as often as their rate says, each at its own cost") {
    BikeLog log = ridden_bike();
    for (const auto* date : {"2024-06-01", "2024-09-01", "2025-03-01", "2025-07-01"})
        log.add(date, repair()).value.paid = money("100");
    const auto run = one(log).run(today);
    const auto& repairs = run.bikes[0].repairs;
    CHECK(repairs.events == 4);
    CHECK(repairs.rate.shape == 4.5);
    CHECK(repairs.rate.rate_km == 10'000 + repairs.exposure_km);
    const double expected_km = run.bikes[0].riding->mean_distance_km(0, run.plan.pieces.back().to_day);
    const double each = std::exp(repairs.cost->mean_ln() + repairs.cost->variance_ln() / 2) / 100;
    const auto sums = euros(run.result.sums.front());
    const double error = std::sqrt(variance_of(sums) / run.wish.paths);
    CHECK(std::abs(mean_of(sums) - repairs.rate.mean(expected_km) * each) < 4 * error);
    // No repair in 12 months: averaged over the distances of the paths, by the negative binomial count.
    double none = 0;
    for (const auto& path : run.result.distances_km)
        none += repairs.rate.chance_of(0, path[0]) / run.wish.paths;
    // The variance, by that of the count and of one cost: E[N] var + Var[N] mean^2, N negative binomial over
    // the distances of the paths.
    std::vector<double> expected_counts;
    for (const auto& path : run.result.distances_km)
        expected_counts.push_back(repairs.rate.mean(path[0]));
    const double one_variance = each * each * (std::exp(repairs.cost->variance_ln()) - 1);
    const double mean_count = mean_of(expected_counts);
    const double mean_square = variance_of(expected_counts) + mean_count * mean_count;
    const double count_variance =
        mean_count + mean_square / repairs.rate.shape + variance_of(expected_counts);
    const double variance = mean_count * one_variance + count_variance * each * each;
    CHECK(variance_of(sums) == Approx(variance).epsilon(4 * relative_error_of_variance(sums)));
    const auto zero = std::ranges::count(run.result.sums.front(), 0);
    const double n = run.wish.paths;
    CHECK(std::abs(static_cast<double>(zero) / n - none) < 4 * std::sqrt(none * (1 - none) / n));
}

TEST_CASE("Where only dated costs of fixed amounts remain the answer is exact") {
    BikeLog log("Shed find");
    log.add("2025-02-01", Cost{.category = "insurance", .every_months = 6}).value.paid = money("81.37");
    log.add("2025-09-15", Cost{.category = "storage", .every_months = 1}).value.paid = money("35");
    log.add("2026-03-02", Cost{.category = "gear", .text = "jacket"}).value.paid = money("249.99");
    const auto made = one(log);
    const auto forecast = cost_forecast(made.run(today)).value();
    // Insurance was missed once: today, then 1 Feb and 1 Aug 2026. Storage is not written down any more: on
    // the 15th of each month.
    const std::int64_t expected = 3 * 8137 + 12 * 3500 + 24999;
    CHECK(forecast.next_12_months == Spread{expected, expected, expected, expected});
    CHECK(forecast.monthly_amount_minor() == twelfth(expected));
    const auto fixed = [](std::int64_t minor) { return Spread{minor, minor, minor, minor}; };
    CHECK(forecast.months.front().key == "2026-01");
    CHECK(forecast.months.front().spread == fixed(8137 + 3500));
    CHECK(forecast.months[1].spread == fixed(8137 + 3500));
    CHECK(forecast.months[2].spread == fixed(3500 + 24999));
    CHECK(forecast.categories.size() == 3);
    CHECK(forecast.categories[0].key == "gear");
    CHECK(forecast.categories[0].spread == fixed(24999));
}

TEST_CASE("Dated costs drift with their category, each amount rounded by itself") {
    BikeLog log("Shed find");
    log.add("2025-02-01", Cost{.category = "insurance", .every_months = 12}).value.paid = money("200");
    auto made = one(log);
    made.settings().price_drift_percent_a_year["insurance"] = Decimal{10};
    const auto forecast = cost_forecast(made.run(today)).value();
    const auto expected = std::llrint(20'000 * std::pow(1.1, 365 / 365.25));
    CHECK(forecast.next_12_months.p10_minor == expected);
    CHECK(forecast.next_12_months.p90_minor == expected);
}

TEST_CASE("The answer is the same to the bit for any number of threads") {
    ForecastGarage made;
    made.add(whole_bike("One").bike);
    made.add(whole_bike("Two").bike);
    ForecastWish wish{.paths = 997};
    const auto alone = made.run(today, wish);
    for (const unsigned threads : {2U, 8U}) {
        wish.threads = threads;
        const auto shared = made.run(today, wish);
        CHECK(shared.result.sums == alone.result.sums);
        CHECK(shared.result.sums_together == alone.result.sums_together);
        CHECK(shared.result.distances_km == alone.result.distances_km);
        CHECK(shared.result.jobs_done == alone.result.jobs_done);
    }
    wish.seed = 2;
    CHECK(made.run(today, wish).result.sums != alone.result.sums);
}

TEST_CASE("Another bike or another item leaves all other draws alone") {
    const ForecastWish wish{.paths = 500};
    const auto sums_of = [](const ForecastRun& run, const std::string& key) {
        for (std::size_t i = 0; i < run.plan.groups.size(); ++i) {
            if (run.plan.groups[i].key == key) return run.result.sums[i];
        }
        throw std::logic_error("no group " + key);
    };
    auto made = one(whole_bike("One"));
    const auto before = made.run(today, wish);
    made.add(ridden_bike("Two").bike);
    const auto two = made.run(today, wish);
    CHECK(sums_of(two, "One") == sums_of(before, "One"));

    auto& item = made.garage.bikes[0].plan.emplace_back().value;
    item.slug = "valve-clearance";
    item.label = "Valve clearance";
    item.repeat.distance = km("1200");
    item.estimate = money("300");
    made.garage.bikes[0].baselines.emplace_back().value = {
        "valve-clearance", day("2025-01-02"), km("16900"), {}, {}};
    const auto more = made.run(today, wish);
    CHECK(sums_of(more, "upkeep") != sums_of(two, "upkeep"));
    for (const auto* category : {"fuel", "repairs", "insurance"})
        CHECK(sums_of(more, category) == sums_of(two, category));
    CHECK(more.result.distances_km == two.result.distances_km);
}

TEST_CASE("Bikes that are ridden much together spread wider than each by itself") {
    ForecastGarage made;
    for (const auto* name : {"One", "Two", "Three"})
        made.add(whole_bike(name).bike);
    const auto forecast = cost_forecast(made.run(today)).value();
    const auto& alone = forecast.next_12_months;
    const auto& together = forecast.next_12_months_together.value();
    CHECK(together.p90_minor - together.p10_minor > alone.p90_minor - alone.p10_minor);
    CHECK(forecast.bikes.size() == 3);
    CHECK_FALSE(cost_forecast(one(whole_bike()).run(today))->next_12_months_together);
}

TEST_CASE("Months add up to years, categories and bikes to the whole, in every path") {
    ForecastGarage made;
    made.add(whole_bike("One").bike);
    made.add(whole_bike("Two").bike);
    const auto run = made.run(today, {.months = 12, .paths = 300});
    using Kind = ForecastGroup::Kind;
    for (const auto kind : {Kind::month, Kind::year, Kind::category, Kind::bike}) {
        std::vector<std::int64_t> sum(run.wish.paths);
        for (std::size_t i = 0; i < run.plan.groups.size(); ++i) {
            if (run.plan.groups[i].kind != kind) continue;
            for (std::size_t path = 0; path < sum.size(); ++path)
                sum[path] += run.result.sums[i][path];
        }
        CHECK(sum == run.result.sums.front());
        CHECK(std::ranges::any_of(sum, [](std::int64_t minor) { return minor > 0; }));
    }
}
