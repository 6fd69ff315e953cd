// SPDX-License-Identifier: GPL-3.0-or-later
// How far a bike will go, against values worked out apart from this program. No published source has them:
// those of stat-usage-model.csv come from two independent implementations that agree to 1.5e-13, those of
// stat-predictive-checks.csv from a third, of the conjugate pieces alone.
#include "model/usage/distance_forecast.h"
#include "model/usage/rate_belief.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

using namespace sumpbook;
using namespace sumpbook::outside;
using namespace sumpbook::usage;

namespace {

using std::chrono::year;

struct Record {
    std::vector<DayEnd> day_ends;
    Date today;
    std::optional<double> expected_km_a_year;
};

Distance km(double number) { return Distance::from_km(number); }

Record monthly(const Date& today) {
    Record record{{{year{2024} / 1 / 1, km(1000)}}, today, {}};
    double at = 1000;
    int month = 1;
    for (const double ridden : {0, 0, 120, 480, 700, 650, 800, 560, 420, 90, 0, 0}) {
        at += ridden;
        record.day_ends.push_back({plus_months(year{2024} / 1 / 1, month++), km(at)});
    }
    return record;
}

Record tank() {
    Record record{{{year{2025} / 3 / 1, km(0)}}, {}, {}};
    for (const int days : {20, 6, 9, 4, 7, 5, 3, 8, 6, 5, 4, 7, 9, 6, 5, 8, 10, 7, 9, 14}) {
        const auto& last = record.day_ends.back();
        record.day_ends.push_back({plus_days(last.date, days), last.distance + km(200)});
    }
    record.today = record.day_ends.back().date;
    return record;
}

/// The records of the table, odometer in km.
Record record_named(const std::string& name) {
    const Date day = year{2025} / 1 / 1;
    if (name == "none") return {{}, day, {}};
    if (name == "one reading") return {{{year{2025} / 6 / 1, km(0)}}, year{2025} / 6 / 1, 6000};
    if (name == "yearly")
        return {{{year{2023} / 1 / 1, km(0)}, {year{2024} / 1 / 1, km(3000)}, {day, km(6100)}}, day, {}};
    if (name == "monthly") return monthly(day);
    if (name == "monthly, today 2025-04-15") return monthly(year{2025} / 4 / 15);
    if (name == "zero")
        return {{{year{2024} / 1 / 1, km(500)}, {year{2024} / 7 / 1, km(500)}, {day, km(500)}}, day, {}};
    if (name == "tank") return tank();
    throw std::logic_error("no record " + name);
}

struct Learnt {
    DistanceForecast forecast;
    double today = 0; ///< Days after the last reading.
};

const Learnt& learnt(const std::string& name) {
    static std::map<std::string, Learnt> all;
    if (const auto found = all.find(name); found != all.end()) return found->second;
    const Record record = record_named(name);
    const bool empty = record.day_ends.empty();
    const RidingDays riding(Bike{}, empty ? record.today : record.day_ends.front().date, record.today);
    const Date origin = empty ? record.today : record.day_ends.back().date;
    auto riders = learn_riders(steps_of(record.day_ends), riding, record.expected_km_a_year);
    const double today = days_between(origin, record.today);
    return all.emplace(name, Learnt{DistanceForecast(std::move(riders), riding, origin), today})
        .first->second;
}

const Rider& best(const Riders& riders) { return *std::ranges::max_element(riders.kept, {}, &Rider::weight); }

double ln_weight(const Riders& riders, const std::vector<double>& point) {
    const auto found = std::ranges::find_if(riders.kept, [&](const Rider& rider) {
        return static_cast<double>(rider.clock) == point[0] && rider.kappa == point[1] &&
               rider.level == point[2] && rider.forgetting == point[3];
    });
    REQUIRE(found != riders.kept.end());
    return riders.largest_ln_weight + std::log(found->weight / best(riders).weight);
}

std::vector<double> shares(const ByMonth& pace) {
    std::vector<double> share;
    for (std::size_t m = 0; m < pace.size(); ++m)
        share.push_back(pace[m] * days_of_month[m] / days_of_year);
    return share;
}

std::vector<double> ours(const CheckRow& row) {
    const auto& [forecast, today] = learnt(row["record"]);
    const Riders& riders = forecast.riders();
    const std::string& quantity = row["quantity"];
    const auto x = numbers_in(row["arguments"]);
    if (quantity == "steps") return {static_cast<double>(riders.steps)};
    if (quantity == "points kept") return {static_cast<double>(riders.kept.size())};
    if (quantity == "largest ln weight") return {riders.largest_ln_weight};
    if (quantity.starts_with("P(D <= x)")) return {forecast.chance_at_most(today + x[0], today + x[1], x[2])};
    if (quantity.starts_with("distance quantile"))
        return {forecast.distance_quantile_km(today + x[0], today + x[1], x[2])};
    if (quantity.starts_with("mean distance")) return {forecast.mean_distance_km(today + x[0], today + x[1])};
    if (quantity.starts_with("days to reach")) return {forecast.days_to_reach(x[0], x[1]).value()};
    if (quantity.starts_with("ln weight")) return {ln_weight(riders, x)};
    if (quantity.starts_with("last shares of the flat clock")) return shares(riders.pace.front());
    if (quantity.starts_with("best point")) {
        const Rider& rider = best(riders);
        return {static_cast<double>(rider.clock), rider.kappa, rider.level, rider.forgetting, rider.weight};
    }
    throw std::logic_error("nothing computes " + quantity);
}

void compare(const CheckRow& row, const std::vector<double>& values) {
    const auto expected = numbers_in(row["expected"]);
    REQUIRE(expected.size() == values.size());
    const double margin = row.number("abs_tolerance");
    for (std::size_t i = 0; i < values.size(); ++i)
        CHECK(values[i] == Approx(expected[i]).epsilon(0).margin(margin));
}

/// One rider of kappa 30, after 3 000 km in a year of flat riding.
RateBelief believed() {
    RateBelief belief = prior_belief(2500, 30);
    belief.see(30, 3000);
    return belief;
}

DistanceForecast of_one_rider() {
    Riders riders;
    riders.kept = {{.clock = 0, .kappa = 30, .belief = believed(), .weight = 1}};
    riders.pace.emplace_back().fill(1);
    const Date today = year{2025} / 1 / 1;
    return {riders, RidingDays(Bike{}, today, today), today};
}

const CheckRow& predictive(const std::string& key) { return check_row("stat-predictive-checks.csv", key); }

} // namespace

TEST_CASE("the usage model gives the values worked out apart from it", "[outside][usage]") {
    for (const CheckRow& row : check_table("stat-usage-model.csv")) {
        TESTING_ROW(row);
        compare(row, ours(row));
    }
}

TEST_CASE("a belief about the rate: prior, evidence and what is believed after", "[outside][usage]") {
    const auto check = [](const std::string& key, double value) {
        const CheckRow& row = predictive(key);
        TESTING_ROW(row);
        compare(row, {value});
    };
    const RateBelief prior = prior_belief(2500, 30);
    check("prior b0 (a0=2, median 2500 km/yr, K=30 rides/yr) | b0", prior.b_km);
    check("posterior after one interval S=365.25 op-days D=3000 km | a", believed().a);
    check("same | b", believed().b_km);
    check("log evidence of that interval | log p(D)", ln_evidence(prior, StepShape(30), 3000));
}

TEST_CASE("the distance of a year to come of one rider", "[outside][usage]") {
    const auto forecast = of_one_rider();
    for (const char* p : {"0.05", "0.10", "0.50", "0.90", "0.95"}) {
        const CheckRow& row =
            predictive("next 365.25 op-days, delta=1 | D quantile " + std::string(p) + " km");
        TESTING_ROW(row);
        compare(row, {forecast.distance_quantile_km(0, days_of_year, std::stod(p))});
    }
    const CheckRow& mean = predictive("same | mean km");
    TESTING_ROW(mean);
    compare(mean, {forecast.mean_distance_km(0, days_of_year)});
    const CheckRow& chance = predictive("same | P(D<=3000)");
    TESTING_ROW(chance);
    compare(chance, {forecast.chance_at_most(0, days_of_year, 3000)});
}

TEST_CASE("the day a distance is reached, alone and with a limit on the date", "[outside][usage]") {
    const auto forecast = of_one_rider();
    for (const char* p : {"0.1", "0.5", "0.9"}) {
        const CheckRow& row =
            predictive("4500 km remaining, flat clock, delta=1 | due in days quantile " + std::string(p));
        TESTING_ROW(row);
        compare(row, {forecast.days_to_reach(4500, std::stod(p)).value()});
    }
    for (const auto& [key, limit] :
         {std::pair{"same with a 12-month calendar limit at day 365 | due in days quantile 0.1/0.5/0.9", 365},
          {"same with a calendar limit at day 500 | due in days quantile 0.1/0.5/0.9", 500}}) {
        const CheckRow& row = predictive(key);
        TESTING_ROW(row);
        std::vector<double> first;
        for (const double p : {0.1, 0.5, 0.9}) {
            const bool before = forecast.day_to_reach(4500, p, limit).has_value();
            first.push_back(before ? forecast.days_to_reach(4500, p).value() : limit);
        }
        compare(row, first);
    }
}
