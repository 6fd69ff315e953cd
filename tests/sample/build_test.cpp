// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/sample/garage_run.h"

#include "tests/catch.h"

using namespace sumpbook::sample;

TEST_CASE("The example garage is the same file on every run, in every time zone and language", "[sample]") {
    const TemporaryFolder folder;
    copy_example(folder.path() / "example");
    const auto build = [&](const std::string& name, const std::string& environment) {
        const auto garage = folder.path() / name / "collection.sumpbook";
        build_garage(folder.path() / "example", garage, environment);
        return bytes_of(garage);
    };
    const std::string first = build("first", "");
    REQUIRE(first.size() > 100'000);

    // Kiritimati is 14 hours ahead of UTC, Pago Pago 11 behind: the calendar day differs all day long.
    CHECK(first == build("east", "TZ=Pacific/Kiritimati"));
    CHECK(first == build("west", "TZ=Pacific/Pago_Pago"));
    for (const std::string language : {"de_DE", "tr_TR"}) {
        INFO(language);
        make_locale(folder.path() / "locales", language);
        const std::string name = language + ".UTF-8";
        CHECK(first ==
              build(language, "LOCPATH='" + (folder.path() / "locales").string() + "' LC_ALL=" + name));
    }
}

TEST_CASE("The example holds what its guide promises", "[sample]") {
    const TemporaryFolder folder;
    copy_example(folder.path() / "example");
    const auto garage = folder.path() / "collection.sumpbook";
    build_garage(folder.path() / "example", garage);

    CHECK(bikes_of(garage) == std::vector<std::string>{"Curlew", "Meridian", "Orsello", "Fjell", "Ponente"});
    const auto advice = [&](const std::string& sample) {
        const auto found = answer(garage, "oil assess --sample " + sample).at("items").at(0);
        return found.at("advice").get<std::string>();
    };
    // The coolant leak: suspected, confirmed, mended. The cold commuter. The worn rings, and the new ones.
    CHECK(advice("SB-23-0871") == "sample-now");
    CHECK(advice("SB-23-0934") == "stop");
    CHECK(advice("SB-24-0241") == "carry-on");
    CHECK(advice("SB-26-1024") == "change-oil");
    CHECK(advice("SB-23-0958") == "sample-now");
    CHECK(advice("SB-25-1013") == "carry-on");

    const auto state = [&](const std::string& bike, const std::string& item) {
        const auto items = answer(garage, "-b " + bike + " due").at("items");
        for (const auto& due : items) {
            if (due.at("item") == item) return due.at("state").get<std::string>();
        }
        return std::string("not listed");
    };
    CHECK(state("Meridian", "brake-fluid") == "overdue");
    CHECK(state("Meridian", "engine-oil") == "due");
    CHECK(state("Meridian", "recall-AR-2019-07") == "not listed");
    CHECK(state("Orsello", "recall-OR-2026-03") == "due");
    CHECK(state("Ponente", "valve-clearance") == "unknown");

    // The doubts that were left in the papers of the bike bought used, and none elsewhere.
    CHECK(answer(garage, "-b Ponente log --doubts").at("items").size() == 6);
    CHECK(answer(garage, "log --doubts").at("items").size() == 6);
}
