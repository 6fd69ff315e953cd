// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/outside/check_table.h"

#include "model/quantity/consumption.h"

#include <sstream>

using namespace sumpbook;
using namespace sumpbook::outside;

namespace {

/// "L/100km 20 10 5": a unit and figures in it.
struct Input {
    ConsumptionUnit unit{};
    std::vector<Decimal> numbers;
};

std::vector<Decimal> decimals_in(const std::string& text, std::size_t count) {
    std::istringstream words(text);
    std::vector<Decimal> numbers;
    for (std::string word; numbers.size() < count && words >> word;)
        numbers.push_back(Decimal::parse(word).value());
    return numbers;
}

/// Nothing for rows that are not about converting a figure of consumption.
std::optional<Input> conversion(const CheckRow& row) {
    const std::string& text = row["input"];
    const auto unit = read_consumption_unit(text.substr(0, text.find(' ')));
    if (!unit) return std::nullopt;
    return Input{*unit, decimals_in(text.substr(text.find(' ')), text.size())};
}

} // namespace

TEST_CASE("Figures of consumption convert as published, to the last digit printed", "[outside][fuel]") {
    int converted = 0;
    for (const CheckRow& row : check_table("std-fuel-examples.csv")) {
        const auto input = conversion(row);
        if (!input) continue;
        TESTING_ROW(row);
        const auto to = read_consumption_unit(row["output_unit"]).value();
        const auto expected = decimals_in(row["expected"], input->numbers.size());
        REQUIRE(expected.size() == input->numbers.size());
        for (std::size_t i = 0; i < expected.size(); ++i) {
            const auto used =
                consumption_of(Written<ConsumptionUnit>{input->numbers[i], input->unit}).value();
            CHECK(decimal_from_double(used.in(to), expected[i].scale()).text() == expected[i].text());
            ++converted;
        }
    }
    CHECK(converted == 22);
}
