// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/oil/oil_garage.h"
#include "tests/outside/check_table.h"

#include "model/oil/precision.h"

#include <cmath>
#include <map>

using namespace sumpbook;
using namespace sumpbook::oil;
using namespace sumpbook::oil::testing;
using namespace sumpbook::outside;

namespace {

Profile profile_of(const CheckRow& row) {
    return profile_of_set(*find_limit_set(row["engine"].starts_with("IO-360") ? "IO360" : "8V71"));
}

bool is_known(const CheckRow& row) { return !row["element"].starts_with("unknown"); }

/// One sample with one element, the new oil free of it.
RatedValue rated_at(const CheckRow& row, const std::string& mg_kg) {
    OilGarage garage;
    garage.new_oil("2024-01-01", {value(row["element"], "0")});
    garage.fill("2024-01-02");
    garage.draw("2024-06-01", {value(row["element"], mg_kg)});
    return rated(garage.assess(profile_of(row)), row["element"]);
}

/// The second of two samples of one fill, so many hours apart.
RatedValue rated_after(const std::string& element, const std::string& from, const std::string& to,
                       const std::string& hours, const Profile& profile) {
    OilGarage garage;
    garage.new_oil("2024-01-01", {value(element, "0")});
    garage.fill("2024-01-02");
    garage.draw("2024-06-01", {value(element, from)}).value.hours = number("100");
    garage.draw("2024-07-01", {value(element, to)}).value.hours = add(number("100"), number(hours)).value();
    return rated(garage.assess(profile), element);
}

} // namespace

TEST_CASE("JOAP bands begin at their own least value", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-joap-ranges.csv")) {
        if (!is_known(row)) continue;
        TESTING_ROW(row);
        const std::vector<std::tuple<std::string, std::optional<std::string>, Ladder>> cases{
            {row["normal_min"], std::nullopt, Ladder::within},
            {row["normal_max"], std::nullopt, Ladder::within},
            {row["normal_max"] + ".5", std::nullopt, Ladder::within},
            {row["marginal_min"], "marginal", Ladder::watch},
            {row["marginal_max"], "marginal", Ladder::watch},
            {row["marginal_max"] + ".9", "marginal", Ladder::watch},
            {row["high_min"], "high", Ladder::watch},
            {row["high_max"], "high", Ladder::watch},
            {row["high_max"] + ".9", "high", Ladder::watch},
            {row["abnormal_min"], "abnormal", Ladder::act},
            {row["abnormal_min"] + "0", "abnormal", Ladder::act}};
        for (const auto& [mg_kg, level, ladder] : cases) {
            INFO(mg_kg);
            const RatedValue rated = rated_at(row, mg_kg);
            CHECK(rated.level == level);
            CHECK(rated.ladder == ladder);
            CHECK(rated.source == row["source"]);
        }
    }
}

TEST_CASE("A JOAP trend equal to its limit is abnormal", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-joap-ranges.csv")) {
        if (!is_known(row)) continue;
        TESTING_ROW(row);
        const Decimal limit = number(row["abnormal_trend_ppm_per_10h"]);
        const Decimal step{1, 2};
        const auto after = [&](const Decimal& rise) {
            return rated_after(row["element"], "0", rise.text(), "10", profile_of(row));
        };
        CHECK(after(*subtract(limit, step)).rate->abnormal == false);
        CHECK(after(limit).rate->abnormal == true);
        CHECK(after(limit).ladder == Ladder::act);
        CHECK(after(limit).level == std::optional<std::string>("abnormal-trend"));
        CHECK(after(*add(limit, step)).rate->abnormal == true);
    }
}

TEST_CASE("Worked trends of the JOAP table", "[outside][oil]") {
    const Profile io360 = profile_of_set(*find_limit_set("IO360"));
    const CheckRow& at_limit = check_row("oil-worked-checks.csv", "C01");
    TESTING_ROW(at_limit);
    const RatedValue abnormal = rated_after("Fe", "40", "54", "5", io360);
    CHECK(abnormal.rate->low_ppm_per_10h == 28.0);
    CHECK(abnormal.rate->high_ppm_per_10h == 28.0);
    CHECK(abnormal.rate->abnormal == true);
    CHECK(abnormal.verdicts.at(0).ladder == Ladder::within); // 54 by itself is normal
    CHECK(abnormal.ladder == Ladder::act);

    const CheckRow& under = check_row("oil-worked-checks.csv", "C02");
    TESTING_ROW(under);
    const RatedValue normal = rated_after("Fe", "40", "53", "5", io360);
    CHECK(normal.rate->low_ppm_per_10h == 26.0);
    CHECK(normal.rate->abnormal == false);
    CHECK(normal.ladder == Ladder::within);
}

TEST_CASE("Worked level bands of the JOAP table", "[outside][oil]") {
    for (const char* check : {"C03", "C04"}) {
        const CheckRow& row = check_row("oil-worked-checks.csv", check);
        TESTING_ROW(row);
        std::string inputs = row["inputs"];
        const std::string element = inputs.substr(0, inputs.find(' '));
        const auto amounts = split_words(inputs.substr(inputs.find(' ') + 1));
        const auto levels = split_words(row["expected"]);
        REQUIRE(amounts.size() == levels.size());
        const CheckRow& band =
            check_row("oil-joap-ranges.csv", "IO-360-C/D (air-cooled petrol four-stroke) | " + element);
        for (std::size_t i = 0; i < amounts.size(); ++i)
            CHECK(rated_at(band, amounts[i]).level.value_or("normal") == levels[i]);
    }
}

TEST_CASE("Under five hours a trend is unreliable", "[outside][oil]") {
    const CheckRow& guard = check_row("oil-worked-checks.csv", "C05");
    TESTING_ROW(guard);
    const Profile io360 = profile_of_set(*find_limit_set("IO360"));
    const RatedValue early = rated_after("Fe", "40", "90", "4.9", io360);
    CHECK(early.rate->standing == RateStanding::unreliable);
    CHECK_FALSE(early.rate->abnormal.has_value());
    CHECK(early.ladder == Ladder::within);
    CHECK(rated_after("Fe", "40", "90", "5.0", io360).rate->standing == RateStanding::rated);

    const CheckRow& floor = check_row("oil-worked-checks.csv", "C06");
    TESTING_ROW(floor);
    CHECK(rate_error_ppm_per_10h(5) == 2.0);
    CHECK(rate_error_ppm_per_10h(10) == 1.0);
    CHECK(rate_error_ppm_per_10h(25) == 0.4);
}

TEST_CASE("Precision of the elements at 20 mg/kg", "[outside][oil]") {
    for (const CheckRow& row : check_table("oil-d5185-precision.csv")) {
        TESTING_ROW(row);
        const double least = row.number("range_min_mg_kg");
        const double most = row.number("range_max_mg_kg");
        const auto at = [&](const std::string& which, double x) {
            return row.number(which + "_coefficient") * std::pow(x, row.number(which + "_exponent"));
        };
        CHECK(at("r", 20) == Approx(row.number("r_at_20")).margin(0.006));
        CHECK(at("R", 20) == Approx(row.number("R_at_20")).margin(0.006));
        const auto precision = element_precision(row["element"], 20);
        REQUIRE(precision);
        if (least <= 20 && 20 <= most) { // of potassium 20 lies outside the tested range
            CHECK(precision->repeatability == Approx(row.number("r_at_20")).margin(0.006));
            CHECK(precision->reproducibility == Approx(row.number("R_at_20")).margin(0.006));
        }
        CHECK(element_precision(row["element"], least / 2)->repeatability == Approx(at("r", least)));
        CHECK(element_precision(row["element"], most * 2)->reproducibility == Approx(at("R", most)));
    }
    CHECK_FALSE(element_precision("Mg", 20).has_value());
}
