// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_assessment.h"
#include "reports/compose/oil_limits.h"
#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::oil::testing;
using nlohmann::json;

namespace {

/// Lives as long as the tests: an assessment points into the garage it was made from.
OilGarage& example_garage() {
    static OilGarage garage;
    return garage;
}

oil::SampleAssessment example() {
    OilGarage& garage = example_garage();
    if (!garage.bike().log.empty()) return garage.assess();
    garage.details().cooling = Cooling::liquid;
    garage.new_oil("2023-12-01", {value("kv100", "14.2")});
    garage.fill("2024-01-02", "10W-40", "Marsh 4T", 10000);
    garage.draw("2024-06-01",
                clean_values_but({value("Cu", "24"), value("Ni", "3"), value("glycol", "not detected")}),
                13000);
    return garage.assess();
}

json json_of(const oil::SampleAssessment& assessment) {
    return json::parse(write::json(compose::oil_assessment_json({assessment})));
}

json value_of(const json& item, const std::string& quantity) {
    for (const json& value : item["values"]) {
        if (value["quantity"] == quantity) return value;
    }
    throw std::logic_error("no value of " + quantity);
}

std::string text_of_example(bool why) {
    return write::text(compose::oil_assessment_text({example()}, why), {});
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

} // namespace

TEST_CASE("The JSON of a sample has its fixed names", "[compose][oil]") {
    const json tree = json_of(example());
    CHECK(tree["schema"] == 1);
    const json item = tree["items"].at(0);
    CHECK(item["bike"] == "Heron");
    CHECK(item["sample"] == "S3");
    CHECK(item["sample_date"] == "2024-06-01");
    CHECK(item["word"] == "act");
    CHECK(item["advice"] == "sample-now");
    const json copper = value_of(item, "Cu");
    CHECK(copper["value"] == 24);
    CHECK(copper["level"] == "warning");
    CHECK(copper["ladder"] == "act");
    CHECK(copper["set"] == "HB2004");
    CHECK(holds(copper["source"], "Lubricants Handbook 2004"));
}

TEST_CASE("Absent, below detection and not detected are told apart in JSON", "[compose][oil]") {
    const json item = json_of(example())["items"].at(0);
    CHECK(value_of(item, "Pb")["value"] == json{{"below", 2}});
    CHECK(value_of(item, "glycol")["value"] == "not-detected");
    CHECK(value_of(item, "Fe")["level"].is_null());
    CHECK(value_of(item, "Ni")["set"].is_null());
    CHECK(value_of(item, "Ni")["unrated"] == "no-limit");
    CHECK(value_of(item, "Fe")["unrated"].is_null());
}

TEST_CASE("The text says what, how sure and what to do, and always warns", "[compose][oil]") {
    const std::string text = text_of_example(false);
    const auto what = text.find("■ act. Copper 24 mg/kg: warning by HB2004");
    const auto next = text.find("Take another sample now");
    const auto sure = text.find("Judged:");
    CHECK(what != std::string::npos);
    CHECK(next != std::string::npos);
    CHECK(sure != std::string::npos);
    CHECK(what < next);
    CHECK(next < sure);
    CHECK(holds(text, "Not judged: nickel. The profile has no published limit for it."));
    CHECK(holds(text, "A clean result does not exclude"));
    CHECK(holds(text, "qualified mechanic"));
    CHECK(holds(text, "SAE 10W-40"));
    CHECK_FALSE(holds(text, "Caveat of HB2004"));
    CHECK(holds(text_of_example(true), "Caveat of HB2004"));
}

TEST_CASE("The grade stands once beside the oil, in its name or after it", "[compose][oil]") {
    CHECK(holds(text_of_example(false), "Marsh 4T, 10W-40, in since"));
    OilGarage garage;
    garage.fill("2024-01-02", "10W-40", "Marsh 10W-40", 10000);
    garage.draw("2024-06-01", clean_values_but({}), 13000);
    const std::string text = write::text(compose::oil_assessment_text({garage.assess()}, false), {});
    CHECK(holds(text, "Marsh 10W-40, in since"));
}

TEST_CASE("Without a sample the text says how to write one", "[compose][oil]") {
    CHECK(holds(write::text(compose::oil_assessment_text({}, false), {200, false}), "add sample"));
}

TEST_CASE("Limit sets are listed with their sources, one set with all its limits", "[compose][oil]") {
    std::vector<const oil::LimitSet*> all;
    for (const oil::LimitSet& set : oil::limit_sets())
        all.push_back(&set);
    const json list = json::parse(write::json(compose::oil_limits_json(all)));
    CHECK(list["items"].size() == all.size());
    for (const json& set : list["items"])
        CHECK_FALSE(set["source"].get<std::string>().empty());
    const json one = json::parse(write::json(compose::oil_limits_json({oil::find_limit_set("IO360")})));
    const json limits = one["items"].at(0)["limits"];
    CHECK(limits.size() == 24);
    CHECK(limits.at(0)["operator"] == ">=");
    CHECK(limits.at(0)["value"] == 92);
    const std::string text = write::text(compose::oil_limits_text({oil::find_limit_set("CUM_MEM")}), {});
    CHECK(holds(text, "judge nothing"));
}

TEST_CASE("Where there is not enough to say the advice names what to have measured", "[compose][oil]") {
    OilGarage garage;
    garage.fill("2024-01-02");
    auto values = clean_values();
    std::erase_if(values, [](const SampleValue& each) { return each.quantity == "fuel"; });
    garage.draw("2024-06-01", values);
    const std::string text =
        write::text(compose::oil_assessment_text({garage.assess()}, false), {200, false});
    CHECK(holds(text, "○ not enough to say."));
    CHECK(holds(text, "Take another sample and have fuel measured as well."));
}
