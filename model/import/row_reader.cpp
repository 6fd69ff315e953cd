// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/row_reader.h"

#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::import {
namespace {

std::string_view mark_words(DecimalMark mark) {
    switch (mark) {
    case DecimalMark::point:
        return "a number with a decimal point";
    case DecimalMark::comma:
        return "a number with a decimal comma";
    case DecimalMark::unknown:
        return "a number";
    }
    return "a number";
}

Result<Decimal> from_zero(Result<Decimal> number, const Decimal& highest) {
    if (number && (number->is_negative() || *number > highest))
        return refuse(fmt::format("It must be from 0 to {}.", highest.text()));
    return number;
}

} // namespace

RowReader::RowReader(const RowContext& context, const Row& row, const Bike& bike)
    : context_(context)
    , row_(row)
    , bike_(bike) {}

std::string_view RowReader::cell(std::string_view field) const {
    const Column* column = context_.columns.of(field);
    if (column == nullptr || column->index >= row_.cells.size()) return {};
    return trimmed(row_.cells[column->index]);
}

CellRules RowReader::rules_of(std::string_view field) const {
    CellRules rules{.mark = context_.marks.decimal,
                    .order = context_.marks.order,
                    .has_decimals = false,
                    .stated = {},
                    .usual = {},
                    .garage = currency_of(context_.garage)};
    const auto& settings = context_.garage.settings;
    rules.usual.distance = bike_.details.value.odometer_unit;
    rules.usual.volume = settings ? settings->value.volume_unit : VolumeUnit::l;
    rules.usual.currency = rules.garage;
    if (const Column* column = context_.columns.of(field)) {
        rules.stated = column->unit;
        rules.has_decimals = context_.marks.columns_with_decimals.contains(column->index);
    }
    if (field == "price per unit")
        if (const Column* volume = context_.columns.of("volume"); volume != nullptr && volume->unit.volume)
            rules.usual.volume = volume->unit.volume;
    add_row_currency(rules);
    return rules;
}

/// A column "currency" speaks for the amounts of its row.
void RowReader::add_row_currency(CellRules& rules) const {
    const auto typed = cell("currency");
    if (typed.empty() || rules.stated.currency) return;
    if (const auto currency = read_currency(typed, rules.garage)) rules.stated.currency = *currency;
}

template <class Read>
auto RowReader::read(std::string_view field, std::string_view noun, Read from_cell) {
    using Value = typename decltype(from_cell(std::string_view(), CellRules()))::value_type;
    use(field);
    const auto typed = cell(field);
    if (typed.empty()) return std::optional<Value>();
    auto value = from_cell(typed, rules_of(field));
    if (value) return std::optional<Value>(std::move(*value));
    doubt(field, fmt::format("{}: {}", noun, value.error().sentence));
    return std::optional<Value>();
}

std::optional<std::string> RowReader::text(std::string_view field) {
    return read(field, "text", [](std::string_view typed, const CellRules&) -> Result<std::string> {
        return std::string(typed);
    });
}

std::optional<Date> RowReader::date(std::string_view field) { return read(field, "a date", date_in); }

std::optional<Decimal> RowReader::number(std::string_view field) {
    return read(field, mark_words(context_.marks.decimal), number_in);
}

std::optional<Decimal> RowReader::fraction(std::string_view field) {
    return read(
        field, "a level from 0 (lower mark) to 1 (upper mark)",
        [](std::string_view typed, const CellRules& rules) { return from_zero(number_in(typed, rules), 1); });
}

std::optional<Decimal> RowReader::number_from_zero(std::string_view field) {
    return read(field, mark_words(context_.marks.decimal),
                [](std::string_view typed, const CellRules& rules) {
                    return from_zero(number_in(typed, rules), Decimal(1'000'000'000'000));
                });
}

std::optional<std::uint32_t> RowReader::whole(std::string_view field) {
    return read(field, "a whole number", whole_in);
}

std::optional<WrittenDistance> RowReader::distance(std::string_view field) {
    return read(field, "a distance", distance_in);
}

std::optional<WrittenVolume> RowReader::volume(std::string_view field) {
    return read(field, "a volume", volume_in);
}

std::optional<Money> RowReader::money(std::string_view field) {
    return read(field, "an amount of money", money_in);
}

std::optional<Money> RowReader::price(std::string_view field) {
    return read(field, "a price", [](std::string_view typed, const CellRules& rules) -> Result<Money> {
        auto paid = money_in(typed, rules);
        if (paid && paid->minor < 0) return refuse("It cannot be below 0.");
        return paid;
    });
}

std::optional<UnitPrice> RowReader::unit_price(std::string_view field) {
    return read(field, "a price for each unit of volume", unit_price_in);
}

std::optional<bool> RowReader::yes_no(std::string_view field, std::string_view list) {
    return read(field, "yes or no",
                [list](std::string_view typed, const CellRules&) { return yes_no_in(typed, list); });
}

std::optional<SampleValue> RowReader::sample_value(std::string_view field) {
    return read(field, "a value", [field](std::string_view typed, const CellRules& rules) {
        return sample_value_in(typed, field, rules);
    });
}

std::optional<std::string> RowReader::word(std::string_view field, std::string_view list) {
    return read(field, "one of the known words",
                [list](std::string_view typed, const CellRules&) -> Result<std::string> {
                    if (auto value = value_of_word(list, typed)) return *value;
                    return refuse("Known are " + listed(values_of(list)) + ".");
                });
}

void RowReader::doubt(std::string_view field, std::string expected) {
    const Column* column = context_.columns.of(field);
    const bool known = column != nullptr && column->field != nullptr;
    doubts_.push_back({.file = context_.file,
                       .line = static_cast<std::uint32_t>(row_.line),
                       .column = known ? column->heading : std::string(field),
                       .text = std::string(cell(field)),
                       .expected = std::move(expected),
                       .part = known ? column->field->part : Part::open});
}

void RowReader::doubt_row(std::string text, std::string expected) {
    doubts_.push_back({.file = context_.file,
                       .line = static_cast<std::uint32_t>(row_.line),
                       .column = {},
                       .text = std::move(text),
                       .expected = std::move(expected),
                       .part = Part::personal});
}

void RowReader::doubt_unused(std::string_view what) {
    for (const auto& column : context_.columns.all) {
        if (column.field == nullptr || used_.contains(column.field->slug) || cell(column.field->slug).empty())
            continue;
        doubt(column.field->slug,
              fmt::format("an empty cell: an entry of the kind {} has no \"{}\"", what, column.field->slug));
    }
}

} // namespace sumpbook::import
