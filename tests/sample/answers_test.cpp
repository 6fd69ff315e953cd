// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sample/answers.h"

#include "tests/catch.h"

using namespace sumpbook::sample;
using nlohmann::json;

namespace {

Figures figures_of(const char* text) {
    Figures figures;
    add_figures(figures, "due", json::parse(text));
    return figures;
}

} // namespace

TEST_CASE("Figures of an answer are named by what they belong to", "[sample]") {
    const auto two_bikes = figures_of(R"({"items": [{"bike": "A", "item": "oil", "km": 1, "why": {"x": null}},
                                                    {"bike": "B", "item": "oil", "km": 2}]})");
    CHECK(two_bikes == Figures{{"due/items/A/oil/bike", "\"A\""},
                               {"due/items/A/oil/item", "\"oil\""},
                               {"due/items/A/oil/km", "1"},
                               {"due/items/A/oil/why/x", "null"},
                               {"due/items/B/oil/bike", "\"B\""},
                               {"due/items/B/oil/item", "\"oil\""},
                               {"due/items/B/oil/km", "2"}});
    const auto same_bike = figures_of(R"([{"bike": "A", "item": "oil"}, {"bike": "A", "item": "tyres"},
                                          {"bike": "B", "item": "oil"}])");
    CHECK(same_bike.contains("due/A/tyres/item"));
    CHECK(same_bike.contains("due/B/oil/item"));
    CHECK(figures_of(R"([[], {}, 3])") == Figures{{"due/0", "[]"}, {"due/1", "{}"}, {"due/2", "3"}});
}

TEST_CASE("A figure that is other, new or gone has changed", "[sample]") {
    const Figures before{{"a", "1"}, {"b", "2"}, {"c", "3"}};
    const Figures after{{"a", "1"}, {"b", "4"}, {"d", "3"}};
    CHECK(changed_paths(before, after) == std::set<std::string>{"b", "c", "d"});
    CHECK(changed_paths(before, before).empty());
}

TEST_CASE("One star stays inside a name, two go anywhere", "[sample]") {
    CHECK(fits("due/A/oil/km", "due/A/oil/km"));
    CHECK_FALSE(fits("due/A/oil/km", "due/A/oil/km2"));
    CHECK(fits("due/*/oil/*", "due/A/oil/km"));
    CHECK_FALSE(fits("due/*", "due/A/oil"));
    CHECK(fits("due/**", "due/A/oil"));
    CHECK(fits("due/**/km", "due/A/oil/km"));
    CHECK_FALSE(fits("due/**/km", "due/A/oil/days"));
    CHECK(fits("*", ""));
}

TEST_CASE("What was not expected and what did not come are both told", "[sample]") {
    CHECK(surprises({"due/A/*"}, {"due/A/km"}).empty());
    CHECK(surprises({"due/A/*", "due/B"}, {"due/A/km", "oil/C"}) ==
          std::vector<std::string>{"unexpected: oil/C", "missing: due/B"});
}
