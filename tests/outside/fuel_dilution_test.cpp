// SPDX-License-Identifier: GPL-3.0-or-later
// Viscosity of mixtures and fuel from a loss of viscosity; sources stand in std-blend.csv.
#include "model/oil/fuel_dilution.h"

#include "tests/catch.h"
#include "tests/outside/check_table.h"
#include "tests/outside/numbers.h"

#include <cmath>

using namespace sumpbook::outside;
using namespace sumpbook::oil;

namespace {

const CheckRow& row_with(const std::string& start_of_key) {
    for (const CheckRow& row : check_table("std-blend.csv")) {
        if (row.key().starts_with(start_of_key)) return row;
    }
    throw std::logic_error("std-blend.csv has no row " + start_of_key);
}

double petrol_chart_percent(BlendRule rule) { return *fuel_share(rule, 160, 137, 3.0) * 100; }

} // namespace

TEST_CASE("published blends of 60 % of 5 with 40 % of 20 mm2/s", "[outside][fuel]") {
    const CheckRow& refutas = row_with("Refutas | blend");
    TESTING_ROW(refutas); // "VBN 22.3484 -> 8.1085"
    CHECK(blended_mm2_s(BlendRule::refutas, 5, 20, 0.4).value() ==
          Approx(numbers_in(refutas["expected"]).back()).epsilon(0).margin(refutas.number("tolerance")));
    const CheckRow& arrhenius = row_with("Arrhenius | blend");
    TESTING_ROW(arrhenius);
    CHECK(blended_mm2_s(BlendRule::arrhenius, 5, 20, 0.4).value() ==
          Approx(arrhenius.number("expected")).epsilon(0).margin(arrhenius.number("tolerance")));
    // the double-log figure of the same mixture stands in the notes to the tables: 8.0813, computed
    CHECK(blended_mm2_s(BlendRule::double_log, 5, 20, 0.4).value() == Approx(8.0813).epsilon(0).margin(1e-4));
}

TEST_CASE("the published Refutas index and its formula", "[outside][fuel]") {
    // VBN = 14.534 ln ln(v + 0.8) + 10.975 is a straight line in our index, so equal mixtures share a VBN:
    // half and half of two liquids lies at the mean of their printed indices.
    const CheckRow& formula = row_with("Refutas | formula");
    TESTING_ROW(formula);
    const auto numbers = numbers_in(formula["inputs"]);
    const auto vbn = [&](double v) {
        return numbers.at(0) * std::log(std::log(v + numbers.at(1))) + numbers.at(2);
    };
    const auto viscosity = [&](double index) {
        return std::exp(std::exp((index - numbers.at(2)) / numbers.at(0))) - numbers.at(1);
    };
    for (const CheckRow& row : check_table("std-blend.csv")) {
        if (row["rule"] != "Refutas" || row["case"] != "index") continue;
        TESTING_ROW(row);
        const auto inputs = numbers_in(row["inputs"]);
        const auto expected = numbers_in(row["expected"]);
        REQUIRE(inputs.size() == expected.size());
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            CHECK(vbn(inputs[i]) == Approx(expected[i]).epsilon(0).margin(row.number("tolerance")));
            const double mean = (expected[i] + vbn(50)) / 2;
            CHECK(blended_mm2_s(BlendRule::refutas, inputs[i], 50, 0.5).value() ==
                  Approx(viscosity(mean)).epsilon(1e-3));
        }
    }
}

TEST_CASE("oils thinned by a known share of fuel", "[outside][fuel]") {
    const CheckRow& diesel = row_with("Refutas | fuel dilution forward");
    TESTING_ROW(diesel); // "oil 160 at 40 C with 2 3 5 10 % of 3.0 mm2/s fuel"
    const auto expected = numbers_in(diesel["expected"]);
    const double shares[] = {0.02, 0.03, 0.05, 0.10};
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(blended_mm2_s(BlendRule::refutas, 160, 3.0, shares[i]).value() ==
              Approx(expected.at(i)).epsilon(0).margin(diesel.number("tolerance")));
    }
    const CheckRow& petrol = row_with("Refutas | petrol forward");
    TESTING_ROW(petrol); // "oil 14.5 at 100 C; petrol taken 0.35 mm2/s; 1 2 5 %"
    const auto thinned = numbers_in(petrol["expected"]);
    const double percents[] = {1, 2, 5};
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(
            blended_mm2_s(BlendRule::refutas, 14.5, petrol_mm2_s(ViscosityAt::celsius_100), percents[i] / 100)
                .value() == Approx(thinned.at(i)).epsilon(0).margin(petrol.number("tolerance")));
        const auto fuel = petrol_from_viscosity(14.5, thinned.at(i), ViscosityAt::celsius_100).value();
        CHECK(fuel.refutas_percent.value() == Approx(percents[i]).epsilon(0).margin(0.01));
    }
}

TEST_CASE("the published chart lies inside the spread of the rules", "[outside][fuel]") {
    const CheckRow& chart = row_with("published chart | fuel dilution");
    TESTING_ROW(chart); // 160 -> 137 mm2/s at 40 C with fuel of 3.0: 3 %
    const double published = numbers_in(chart["expected"]).front();
    const auto computed = numbers_in(chart["note"]); // Refutas 2.31, double log 2.28, Arrhenius 3.90
    CHECK(petrol_chart_percent(BlendRule::refutas) == Approx(computed.at(0)).epsilon(0).margin(0.005));
    CHECK(petrol_chart_percent(BlendRule::double_log) == Approx(computed.at(1)).epsilon(0).margin(0.005));
    CHECK(petrol_chart_percent(BlendRule::arrhenius) == Approx(computed.at(2)).epsilon(0).margin(0.005));
    for (const BlendRule rule : {BlendRule::refutas, BlendRule::double_log, BlendRule::arrhenius}) {
        CHECK(petrol_chart_percent(rule) == Approx(published).epsilon(0).margin(chart.number("tolerance")));
    }
    const CheckRow& c20 = check_row("oil-worked-checks.csv", "C20");
    TESTING_ROW(c20);
    const auto figures = numbers_in(c20["expected"]); // chart 3 %, double log 2.28, single log 3.90
    CHECK(petrol_chart_percent(BlendRule::double_log) == Approx(figures.at(1)).epsilon(0).margin(0.005));
    CHECK(petrol_chart_percent(BlendRule::arrhenius) == Approx(figures.at(2)).epsilon(0).margin(0.005));
}
