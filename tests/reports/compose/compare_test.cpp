// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/compare.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

void measure(BikeLog& log, std::string_view date, std::string_view mm, std::string quantity = "chain-slack") {
    Measure made;
    made.quantity = std::move(quantity);
    made.value = number(mm);
    made.unit = "mm";
    log.add(date, made);
}

compose::CompareReport report_of(const BikeLog& log) {
    Garage garage;
    garage.bikes.push_back(log.bike);
    compose::CompareReport report{.bike = "Tourer", .cut = {day("2024-05-01"), {}}, .modification = {}};
    report.series = review::before_and_after(garage, garage.bikes.front(), report.cut);
    return report;
}

std::string text_of_report(const BikeLog& log, bool why = false) {
    return write::text(compose::compare_text(report_of(log), GarageSettings{}, why), {.width = 400});
}

bool says(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

} // namespace

TEST_CASE("few values are said to be few") {
    BikeLog log;
    for (const auto* value : {"30", "31", "32"})
        measure(log, "2024-04-01", value);
    for (const auto* value : {"40", "41"})
        measure(log, "2024-06-01", value);
    const auto text = text_of_report(log);
    CHECK(says(text, "Too few to tell: 3 before and 2 after cannot show any change, however large."));
    CHECK(says(text, "a difference is not proof"));
    CHECK_FALSE(says(text, "Smallest p"));
}

TEST_CASE("a change that chance does not explain is named with its size") {
    BikeLog log;
    for (const auto* value : {"30", "31", "32", "33", "34"})
        measure(log, "2024-04-01", value);
    for (const auto* value : {"40", "41", "42", "43", "44"})
        measure(log, "2024-06-01", value);
    CHECK(says(text_of_report(log), "Higher by about 10 mm, more than chance explains."));
    const auto why = text_of_report(log, true);
    CHECK(says(why, "0.0079")); // 2 of 252 splits
    CHECK(says(why, "96.8 %")); // 1 - 2 x 4/252
}

TEST_CASE("no change seen: it says what so few values cannot tell apart") {
    BikeLog log;
    for (const auto* value : {"30", "32", "34", "36"})
        measure(log, "2024-04-01", value);
    for (const auto* value : {"31", "33", "35", "37"})
        measure(log, "2024-06-01", value);
    // Differences run from -5 to 7; the interval leaves none out (P(U <= 0) = 1/70, P(U <= 1) = 2/70).
    CHECK(says(text_of_report(log),
               "No clear change. 4 before and 4 after cannot tell apart less than about 6 mm."));
}

TEST_CASE("a side without values, a wearing part and an empty record are said in words") {
    BikeLog log;
    CHECK(says(text_of_report(log), "Nothing to compare yet"));
    measure(log, "2024-06-01", "4", "pad");
    const auto text = text_of_report(log);
    CHECK(says(text, "Nothing from before."));
    CHECK(says(text, "wear with distance whatever is changed"));
}

TEST_CASE("other gearing may change what the odometer shows, other things do not") {
    BikeLog log;
    measure(log, "2024-04-01", "30");
    auto report = report_of(log);
    const auto warned = [&](const char* modification) {
        report.modification = modification;
        const auto text = write::text(compose::compare_text(report, GarageSettings{}, false), {.width = 400});
        return says(text, "driven from the gearbox");
    };
    CHECK(warned("Front sprocket 16 instead of 15 teeth"));
    CHECK_FALSE(warned("open air filter"));
}

TEST_CASE("the tree always holds the test") {
    BikeLog log;
    measure(log, "2024-04-01", "30");
    measure(log, "2024-06-01", "33.5");
    const auto tree = nlohmann::json::parse(write::json(compose::compare_json(report_of(log))));
    CHECK(tree["date"] == "2024-05-01");
    const auto& item = tree["items"][0];
    CHECK(item["kind"] == "measure");
    CHECK(item["shift"] == "too-few");
    CHECK(item["test"]["shift"] == Approx(3.5));
    CHECK(item["test"]["smallest_p"] == Approx(1));
    CHECK(item["n_before"] == 1);
}
