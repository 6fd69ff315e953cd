// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/column_unit.h"

#include "embedded/sample_quantities_csv.h"
#include "model/import/value_words.h"
#include "model/import/words.h"
#include "model/quantity/data_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <vector>

namespace sumpbook::import {
namespace {

struct QuantityUnit {
    std::string unit;
    std::vector<std::string> words;
};
using QuantityUnits = std::map<std::string, std::vector<QuantityUnit>, std::less<>>;

std::vector<QuantityUnit> units_of_row(const std::string& cell) {
    std::vector<QuantityUnit> units;
    for (const auto& piece : pieces_of(cell, '|')) {
        const std::size_t mark = piece.find('=');
        units.push_back({.unit = piece.substr(0, mark), .words = {}});
        for (const auto& word : pieces_of(std::string_view(piece).substr(mark + 1), ';'))
            units.back().words.push_back(plain_words(word));
    }
    return units;
}

const QuantityUnits& quantity_units() {
    static const QuantityUnits all = [] {
        QuantityUnits loaded;
        for (const auto& row : read_data_table(data::sample_quantities_csv()))
            for (const auto& quantity : pieces_of(row["quantity"], '|'))
                loaded[quantity] = units_of_row(row["units"]);
        return loaded;
    }();
    return all;
}

/// Methods are named by a standards body's letters and a number: ASTM D2896, ISO 3771, DIN 51577.
bool names_method(std::string_view text) {
    constexpr std::array<std::string_view, 8> bodies = {"ASTM", "ISO", "DIN", "IP",
                                                        "EN",   "JIS", "NF",  "GOST"};
    const std::string_view word = text.substr(0, text.find(' '));
    const bool body = std::ranges::any_of(bodies, [word](auto known) { return word.starts_with(known); });
    const bool short_form = !text.empty() && text.front() == 'D'; // D2896: the letter of the body's own list
    const bool number = std::ranges::any_of(text, [](char c) { return c >= '0' && c <= '9'; });
    return number && (body || short_form);
}

Result<void> add_quantity(ColumnUnit& unit, const Field& field, std::string_view text) {
    const std::string plain = plain_words(text);
    const auto known = quantity_units().find(field.slug);
    if (known != quantity_units().end()) {
        for (const auto& [name, words] : known->second)
            if (std::ranges::find(words, plain) != words.end()) {
                unit.quantity = name;
                return {};
            }
    }
    if (!names_method(text))
        return refuse(fmt::format("\"{}\" is neither a unit of {} nor a method.", text, field.slug));
    unit.method = std::string(text);
    return {};
}

/// "EUR / L", "per US gal", "€ pro Liter": what stands before and after the word for "for each".
struct PriceSides {
    std::string_view currency;
    std::string_view volume;
};

std::optional<PriceSides> price_sides(std::string_view text) {
    if (const auto slash = text.find('/'); slash != std::string_view::npos)
        return PriceSides{trimmed(text.substr(0, slash)), trimmed(text.substr(slash + 1))};
    constexpr std::array<std::string_view, 8> each = {"per", "pro", "je", "par", "le", "por", "al", "au"};
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        if (std::ranges::find(each, text.substr(at, end - at)) != each.end() && end < text.size())
            return PriceSides{trimmed(text.substr(0, at)), trimmed(text.substr(end))};
        at = end + 1;
    }
    return std::nullopt;
}

Result<void> add_currency(ColumnUnit& unit, std::string_view text, const Currency& garage) {
    return read_currency(text, garage).map([&](const Currency& found) { unit.currency = found; });
}

Result<void> add_volume(ColumnUnit& unit, std::string_view text) {
    return read_volume_unit(text).map([&](VolumeUnit found) { unit.volume = found; });
}

Result<void> add_unit_price(ColumnUnit& unit, std::string_view text, const Currency& garage) {
    const auto sides = price_sides(text);
    if (!sides) return add_currency(unit, text, garage);
    if (!sides->currency.empty())
        if (const auto added = add_currency(unit, sides->currency, garage); !added) return added;
    return add_volume(unit, sides->volume);
}

} // namespace

Result<void> add_unit(ColumnUnit& unit, const Field& field, std::string_view text, const Currency& garage) {
    const std::string_view typed = trimmed(text);
    switch (field.type) {
    case FieldType::distance:
        return read_distance_unit(typed).map([&](DistanceUnit found) { unit.distance = found; });
    case FieldType::volume:
        return add_volume(unit, typed);
    case FieldType::money:
        return add_currency(unit, typed, garage);
    case FieldType::unit_price:
        return add_unit_price(unit, typed, garage);
    case FieldType::quantity:
        return add_quantity(unit, field, typed);
    default:
        return refuse(fmt::format("\"{}\" has no unit.", field.slug));
    }
}

bool is_unclear_volume(std::string_view text) { return value_of_word("unclear-volume", text).has_value(); }

std::string usual_unit_of(std::string_view quantity) {
    const auto found = quantity_units().find(quantity);
    return found == quantity_units().end() ? std::string() : found->second.front().unit;
}

std::string text_of(const ColumnUnit& unit, FieldType type) {
    std::string text;
    const auto add = [&text](std::string_view between, std::string_view more) {
        text += (text.empty() ? "" : std::string(between)) + std::string(more);
    };
    if (unit.distance) add("", symbol(*unit.distance));
    if (unit.currency) add("", unit.currency->code());
    if (unit.volume)
        add(" ", (type == FieldType::unit_price ? "per " : "") + std::string(symbol(*unit.volume)));
    if (unit.quantity) add("", *unit.quantity);
    if (unit.method) add(", ", *unit.method);
    return text;
}

} // namespace sumpbook::import
