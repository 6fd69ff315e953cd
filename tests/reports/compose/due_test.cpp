// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/due.h"

#include "model/upkeep/due.h"
#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

/// 10 km a day; oil due at 7 000 km or on 11 Apr 2024.
BikeLog ridden() {
    BikeLog log;
    log.bike.details.value.in_service_date = day("2023-01-01");
    log.reading("2023-01-01", "0");
    auto& oil = log.plan("engine-oil");
    oil.label = "Engine oil";
    oil.repeat.distance = km("6000");
    oil.repeat.months = 12;
    oil.source = "handbook p. 84";
    log.work("2023-04-11", "1000", {"engine-oil"});
    log.reading("2023-07-20", "2000");
    return log;
}

std::vector<upkeep::DueItem> due(const BikeLog& log, std::string_view today) {
    return upkeep::due_items({&log.bike}, day(today));
}

nlohmann::json json_of(const std::vector<upkeep::DueItem>& items) {
    return nlohmann::json::parse(write::json(compose::due_json(items)));
}

} // namespace

TEST_CASE("The tree has the promised names, true distances and ISO days") {
    const auto tree = json_of(due(ridden(), "2023-07-20"));
    CHECK(tree["schema"] == 1);
    REQUIRE(tree["items"].size() == 1);
    const auto& item = tree["items"][0];
    CHECK(item["bike"] == "Tourer");
    CHECK(item["item"] == "engine-oil");
    CHECK(item["label"] == "Engine oil");
    CHECK(item["state"] == "later");
    CHECK(item["limit_distance_km"] == 7000);
    CHECK(item["limit_date"] == "2024-04-11");
    CHECK(item["date_p50"] == "2024-04-11");
    CHECK(item["date_p10"] <= item["date_p50"]);
    CHECK(item["date_p90"] == "2024-04-11");
    CHECK(item["reading_age_days"] == 0);
    CHECK(item["chance_passed"].is_null());
    CHECK(item["later_times"].empty());
    CHECK(item["reasons"].empty());
    CHECK(item["remaining_km"] == 5000);
    CHECK(item["remaining_days"] == 266);
    CHECK(item["last_done_date"] == "2023-04-11");
    CHECK(item["last_done_km"] == 1000);
    CHECK(item["last_done_entry"] == "k7-2");
    CHECK(item["history"][0]["timing"] == "early");
    CHECK(item["decided_by"] == "distance");
    CHECK(item["estimated"] == false);
    CHECK(item["source"] == "handbook p. 84");
    CHECK(item["cost_minor"].is_null());
}

TEST_CASE("The distance limit is the true one, also after the dial was changed") {
    auto log = ridden();
    Reading change;
    change.clock_change = ClockChange{km("2000"), km("0")};
    log.add("2023-07-20", change);
    log.reading("2023-08-01", "120");
    const auto items = due(log, "2023-08-01");
    CHECK(json_of(items)["items"][0]["limit_distance_km"] == 7000);
    const auto text = write::text(compose::due_text(items), {.width = 200});
    CHECK(text.find("5 000 km or 11 Apr 2024") != std::string::npos); // as the dial will show it
}

TEST_CASE("Past limits have amounts below 0") {
    const auto item = json_of(due(ridden(), "2024-06-01"))["items"][0];
    CHECK(item["state"] == "overdue");
    CHECK(item["remaining_days"] == -51);
    CHECK(item["decided_by"] == "date");
}

TEST_CASE("The table is one line an item, with the bike only where there are several") {
    const auto log = ridden();
    auto text = write::text(compose::due_text(due(log, "2023-07-20")), {.width = 200});
    CHECK(text.find("later  Engine oil  in 5 000 km") != std::string::npos);
    CHECK(text.find("Bike") == std::string::npos);
    CHECK(text.find("from your riding since 2023, about ") != std::string::npos);
    BikeLog other("Old twin");
    other.plan("brake-fluid").repeat.months = 24;
    text = write::text(compose::due_text(upkeep::due_items({&log.bike, &other.bike}, day("2023-07-20"))),
                       {.width = 200});
    CHECK(text.find("Old twin") != std::string::npos);
    CHECK(text.find("Bike") != std::string::npos);
}

TEST_CASE("Why tells the history, the source and whose the window is") {
    const auto text = write::text(compose::due_why_text(due(ridden(), "2023-07-20")), {.width = 200});
    CHECK(text.find("early by 5 000 km and 265 days") != std::string::npos);
    CHECK(text.find("handbook p. 84") != std::string::npos);
    CHECK(text.find("does not protect a warranty") != std::string::npos);
}

TEST_CASE("Why tells the chances, the reasons in numbers and the later times") {
    auto log = ridden();
    log.bike.plan[0].value.repeat.months.reset();
    log.bike.plan[0].value.repeat.distance = km("2000");
    const auto items =
        upkeep::due_items({&log.bike}, day("2023-09-01"), {.later_times = true, .reasons = true});
    const auto text = write::text(compose::due_why_text(items), {.width = 200});
    CHECK(text.find("one chance in ten by ") != std::string::npos);
    CHECK(text.find(" remain of 2 000 km: ") != std::string::npos);
    CHECK(text.find("your riding is about ") != std::string::npos);
    CHECK(text.find("The last reading is 43 days") != std::string::npos);
    CHECK(text.find("Distance passed unseen") != std::string::npos);
    const auto item = json_of(items)["items"][0];
    REQUIRE(item["reasons"].size() == 3);
    for (const auto& reason : item["reasons"]) {
        CHECK(reason["text"].get<std::string>().find(reason["moves_days"] < 0 ? "earlier" : "later") !=
              std::string::npos);
        CHECK_FALSE(reason["value"].is_null());
        CHECK_FALSE(reason["unit"].get<std::string>().empty());
    }
    REQUIRE_FALSE(item["later_times"].empty());
    CHECK(item["later_times"][0]["date_p10"] <= item["later_times"][0]["date_p50"]);
    CHECK(item["later_times"][0]["date_p50"] > item["date_p50"]);
}

TEST_CASE("An empty list says how to start") {
    CHECK(write::text(compose::due_text({}), {.width = 200}).find("plan starter") != std::string::npos);
    BikeLog sold;
    sold.bike.details.value.name = "Wren";
    sold.bike.details.value.sold = Transfer{day("2024-05-03"), {}, {}};
    CHECK(compose::sold_sentences({&sold.bike}, day("2024-05-02")).empty());
    const auto sentences = compose::sold_sentences({&sold.bike}, day("2024-05-03"));
    const auto text = write::text(compose::due_text({}, sentences), {.width = 200});
    CHECK(text == "Wren was sold on 3 May 2024: nothing falls due on it any more.\n");
    CHECK(json_of({})["items"].empty());
}
