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
    for (const std::string locale : {"de_DE.UTF-8", "tr_TR.UTF-8", "C.UTF-8"}) {
        if (!has_locale(locale)) {
            WARN("not tried, this computer has no locale " << locale);
            continue;
        }
        INFO(locale);
        CHECK(first == build(locale, "LC_ALL=" + locale));
    }
}

TEST_CASE("The example says what its guide promises of it", "[sample]") {
    const TemporaryFolder folder;
    copy_example(folder.path() / "example");
    const auto garage = folder.path() / "collection.sumpbook";
    build_garage(folder.path() / "example", garage);

    CHECK(bikes_of(garage) == std::vector<std::string>{"Curlew", "Meridian", "Orsello", "Fjell", "Ponente"});
}
