// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/history_findings.h"

#include "tests/catch.h"

#include <set>

using namespace sumpbook;
using namespace sumpbook::review;

namespace {

Date day(int year, unsigned month, unsigned of_month) {
    return std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{of_month};
}

LogEntry entry(const std::string& id, Date date, std::int64_t km, EntryBody body = Reading{}) {
    LogEntry logged;
    logged.id = id;
    logged.value.date = date;
    if (km >= 0) logged.value.odometer = WrittenDistance{Decimal{km}, DistanceUnit::km};
    logged.value.body = std::move(body);
    return logged;
}

Bike bike(std::vector<LogEntry> log) {
    Bike made;
    made.details.value.name = "Old twin";
    made.log = std::move(log);
    return made;
}

std::vector<std::string> ids(const Bike& of) {
    std::vector<std::string> found;
    for (const auto& finding : history_findings(of))
        found.push_back(finding.id);
    return found;
}

using Ids = std::vector<std::string>;

} // namespace

TEST_CASE("a sound record has no findings") {
    CHECK(ids(bike({entry("a-1", day(2024, 5, 1), 1000), entry("a-2", day(2024, 6, 1), 1400)})).empty());
}

TEST_CASE("a reading that falls and one that leaps are named with their neighbours") {
    const auto findings =
        history_findings(bike({entry("a-1", day(2024, 5, 1), 1000), entry("a-2", day(2024, 5, 8), 940),
                               entry("a-3", day(2024, 6, 1), 1400), entry("a-4", day(2024, 6, 2), 9400)}));
    REQUIRE(findings.size() == 2);
    CHECK(findings[0].id == "odometer-falls");
    CHECK(findings[0].severity == Severity::doubt);
    CHECK(findings[0].bike == "Old twin");
    CHECK(findings[0].entry_ids.front() == "a-2");
    CHECK(findings[1].id == "odometer-leaps");
    CHECK(findings[1].entry_ids.front() == "a-4");
}

TEST_CASE("a doubted cell is named with its place") {
    auto doubtful = entry("a-1", day(2024, 5, 1), 1000, Fuel{});
    doubtful.value.doubts.push_back({"fuel.csv", 12, "volume", "12,3,4", "a number of litres", Part::open});
    const auto findings = history_findings(bike({doubtful}));
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "unreadable-cell");
    CHECK(findings[0].place.file == "fuel.csv");
    CHECK(findings[0].place.line == 12U);
    CHECK(findings[0].place.text == "12,3,4");
}

TEST_CASE("the same money twice in one visit is found, in two visits it is not") {
    auto first = entry("a-1", day(2024, 5, 1), -1, Work{});
    first.value.visit = "spring";
    first.value.paid = Money{12'000, Currency::from_code("EUR").value()};
    auto second = first;
    second.id = "a-2";
    CHECK(ids(bike({first, second})) == Ids{"paid-twice"});
    second.value.visit = "autumn";
    CHECK(ids(bike({first, second})).empty());
    second.value.visit = "spring";
    second.value.paid->currency = Currency::from_code("GBP").value();
    CHECK(ids(bike({first, second})).empty());
}

TEST_CASE("riding after a sale and before the first day is odd, a last bill is not") {
    auto sold = bike({entry("a-1", day(2019, 5, 1), 10), entry("a-2", day(2024, 6, 2), 1400),
                      entry("a-3", day(2024, 6, 3), -1, Cost{})});
    sold.details.value.sold = Transfer{.date = day(2024, 6, 1)};
    sold.details.value.in_service_date = day(2019, 5, 2);
    CHECK(ids(sold) == Ids{"before-service", "after-sale"});
}

TEST_CASE("a plan item that the plan does not hold is mentioned, unless there is no plan") {
    auto done = entry("a-1", day(2024, 5, 1), 1000, Work{});
    done.value.does = {"engine-oil", "polish"};
    auto with_plan = bike({done});
    CHECK(ids(with_plan).empty());
    Versioned<PlanItem> oil;
    oil.value.slug = "engine-oil";
    with_plan.plan.push_back(oil);
    CHECK(ids(with_plan) == Ids{"unknown-plan-item"});
}

TEST_CASE("the VIN: form is a doubt, the check digit is advice unless the bike is for the US or Canada") {
    auto made = bike({});
    made.details.value.vin = "1M8GDM9AXKP042788"; // 49 CFR 565 arithmetic, sum 351, digit X
    CHECK(ids(made).empty());
    made.details.value.vin = "WP0ZZZ99ZTS392124"; // a European number with a filler in position 9
    REQUIRE(ids(made) == Ids{"vin-check-digit"});
    CHECK(history_findings(made)[0].severity == Severity::info);
    made.details.value.for_us_or_canada = true;
    CHECK(history_findings(made)[0].severity == Severity::doubt);
    made.details.value.vin = "1M8GDM9AXKPO42788"; // the letter O
    CHECK(ids(made) == Ids{"vin-form"});
}

TEST_CASE("every finding kind has a meaning, and names are not repeated") {
    std::set<std::string> names;
    for (const auto& kind : finding_kinds()) {
        CHECK_FALSE(kind.meaning.empty());
        CHECK(names.insert(kind.id).second);
    }
    CHECK(names.size() >= 10);
    CHECK_THROWS_AS(make_finding("no-such-finding", "", ""), std::logic_error);
}
