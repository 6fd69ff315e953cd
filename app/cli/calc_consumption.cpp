// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/calc_consumption.h"

#include "app/cli/calc_numbers.h"

#include <algorithm>
#include <sstream>

namespace sumpbook::cli {
namespace {

bool has_letter(const std::string& text) {
    return std::any_of(text.begin(), text.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); });
}

bool begins_a_number(const std::string& word) {
    return word.find_first_of("0123456789") == (word.front() == '-' || word.front() == '.' ? 1U : 0U);
}

/// "12.3 L 250 km" -> "12.3 L", "250 km": an amount ends before a number that follows a unit. The 100 of
/// "L / 100 km" is part of a unit.
std::vector<std::string> amounts_in(const std::vector<std::string>& typed) {
    std::string all;
    for (const auto& word : typed)
        all += word + " ";
    std::istringstream words(all);
    std::vector<std::string> amounts;
    for (std::string word; words >> word;) {
        const bool in_unit = !amounts.empty() && amounts.back().ends_with('/');
        const bool starts =
            amounts.empty() || (begins_a_number(word) && has_letter(amounts.back()) && !in_unit);
        if (starts) {
            amounts.push_back(word);
        } else {
            amounts.back() += " " + word;
        }
    }
    return amounts;
}

Result<Consumption> from_figure(const std::string& amount, DecimalMark mark) {
    const auto split = calc_number_and_unit(amount, mark);
    if (!split) return pass_on(split.error());
    const auto unit = read_consumption_unit(split->unit);
    if (!unit) return pass_on(unit.error());
    return consumption_of(Written<ConsumptionUnit>{split->number, *unit});
}

Result<Consumption> from_volume_and_distance(const std::string& volume, const std::string& distance,
                                             DecimalMark mark) {
    const auto fuel = calc_number_and_unit(volume, mark);
    const auto road = calc_number_and_unit(distance, mark);
    if (!fuel) return pass_on(fuel.error());
    if (!road) return pass_on(road.error());
    const auto fuel_unit = read_volume_unit(fuel->unit);
    if (!fuel_unit) return pass_on(fuel_unit.error());
    const auto road_unit = read_distance_unit(road->unit);
    if (!road_unit) return pass_on(road_unit.error());
    const auto litres = volume_of({fuel->number, *fuel_unit});
    if (!litres) return pass_on(litres.error());
    const auto kilometres = distance_of({road->number, *road_unit});
    if (!kilometres) return pass_on(kilometres.error());
    return consumption_of(*litres, *kilometres);
}

bool is_distance(const std::string& amount, DecimalMark mark) {
    const auto split = calc_number_and_unit(amount, mark);
    return split && read_distance_unit(split->unit).has_value();
}

} // namespace

Result<Consumption> read_consumption(const std::vector<std::string>& words, DecimalMark mark) {
    const auto amounts = amounts_in(words);
    if (amounts.size() == 1) return from_figure(amounts[0], mark);
    if (amounts.size() == 2) {
        return is_distance(amounts[0], mark) ? from_volume_and_distance(amounts[1], amounts[0], mark)
                                             : from_volume_and_distance(amounts[0], amounts[1], mark);
    }
    return fail(ProblemKind::wrong_usage,
                "Give a volume and a distance, such as 12.3 L 250 km, or one figure, "
                "such as 50 mpg US.");
}

} // namespace sumpbook::cli
