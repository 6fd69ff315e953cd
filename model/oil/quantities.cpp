// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/quantities.h"

#include "embedded/quantities_csv.h"
#include "model/oil/words.h"
#include "model/quantity/data_table.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace sumpbook::oil {
namespace {

QuantityGroup group_of(const std::string& word) {
    constexpr std::array words{"wear-metal", "other-metal", "contaminant", "additive", "condition"};
    const auto* const found = std::find(words.begin(), words.end(), word);
    if (found == words.end()) throw std::logic_error("quantities.csv: group " + word);
    return static_cast<QuantityGroup>(found - words.begin());
}

NewOilMatters new_oil_of(const std::string& word) {
    if (word.empty()) return NewOilMatters::no;
    if (word == "reached") return NewOilMatters::where_it_reaches;
    if (word == "known") return NewOilMatters::must_be_known;
    throw std::logic_error("quantities.csv: new_oil " + word);
}

bool is_percent(std::string_view unit) { return unit == "%" || unit == "% mass" || unit == "% vol"; }

/// number x 100^steps, exact; steps may be negative.
std::optional<Decimal> hundredfold(const Decimal& number, int steps) {
    if (steps < 0) {
        const int scale = number.scale() - 2 * steps;
        if (scale > Decimal::max_scale) return std::nullopt;
        return Decimal{number.coefficient(), scale};
    }
    Decimal result = number;
    for (int i = 0; i < steps; ++i) {
        const auto next = multiply(result, Decimal{100});
        if (!next) return std::nullopt;
        result = *next;
    }
    return result;
}

} // namespace

const std::vector<Quantity>& sample_quantities() {
    static const std::vector<Quantity> all = [] {
        std::vector<Quantity> read;
        for (const DataRow& row : read_data_table(data::quantities_csv())) {
            read.push_back({row["slug"], row["name"], group_of(row["group"]), row["unit"],
                            new_oil_of(row["new_oil"]), split_words(row["other_names"])});
        }
        return read;
    }();
    return all;
}

const Quantity* find_quantity(std::string_view text) {
    for (const Quantity& quantity : sample_quantities()) {
        const bool other = std::any_of(quantity.other_names.begin(), quantity.other_names.end(),
                                       [&](const std::string& name) { return same_word(name, text); });
        if (other || same_word(quantity.slug, text) || same_word(quantity.name, text)) return &quantity;
    }
    return nullptr;
}

std::string quantity_name(std::string_view slug) {
    const Quantity* quantity = find_quantity(slug);
    return quantity == nullptr ? std::string(slug) : quantity->name;
}

bool is_wear_metal(std::string_view slug) {
    const Quantity* quantity = find_quantity(slug);
    return quantity != nullptr && quantity->group == QuantityGroup::wear_metal;
}

std::string plain_unit(std::string_view typed) {
    static const std::vector<std::pair<std::string_view, std::string_view>> spellings{
        {"ppm", "mg/kg"},
        {"cst", "mm2/s"},
        {"mm²/s", "mm2/s"},
        {"percent", "%"},
        {"% m/m", "% mass"},
        {"wt %", "% mass"},
        {"wt%", "% mass"},
        {"mass %", "% mass"},
        {"% v/v", "% vol"},
        {"vol %", "% vol"},
        {"vol%", "% vol"},
        {"mgkoh/g", "mg KOH/g"},
        {"°c", "C"},
        {"deg c", "C"},
        {"a/cm", "abs/cm"},
        {"abs/0.1mm", "abs/0.1 mm"},
        {"a/0.1 mm", "abs/0.1 mm"},
        {"mg/kg", "mg/kg"},
        {"mm2/s", "mm2/s"},
        {"mg koh/g", "mg KOH/g"},
        {"abs/cm", "abs/cm"},
        {"% mass", "% mass"},
        {"% vol", "% vol"},
        {"c", "C"}};
    const auto found = std::find_if(spellings.begin(), spellings.end(),
                                    [&](const auto& pair) { return same_word(pair.first, typed); });
    return std::string(found == spellings.end() ? typed : found->second);
}

std::optional<Decimal> in_oil_unit(const Decimal& number, std::string_view from, std::string_view to) {
    const std::string of = plain_unit(from);
    const std::string wanted = plain_unit(to);
    if (of == wanted) return number;
    if (is_percent(of) && is_percent(wanted)) {
        if (of == "%" || wanted == "%") return number;
        return std::nullopt;
    }
    const bool mass_share = of == "%" || of == "% mass";
    const bool wanted_mass_share = wanted == "%" || wanted == "% mass";
    if (mass_share && wanted == "mg/kg") return hundredfold(number, 2);
    if (of == "mg/kg" && wanted_mass_share) return hundredfold(number, -2);
    if (of == "abs/0.1 mm" && wanted == "abs/cm") return hundredfold(number, 1);
    if (of == "abs/cm" && wanted == "abs/0.1 mm") return hundredfold(number, -1);
    return std::nullopt;
}

} // namespace sumpbook::oil
