// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/notices.h"

#include "model/import/entry_rows.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::import {
namespace {

std::string quoted_headings(const Columns& columns, bool (*wanted)(const Column&)) {
    std::vector<std::string> names;
    for (const auto& column : columns.all)
        if (column.field != nullptr && wanted(column)) names.push_back("\"" + column.heading + "\"");
    return listed(names);
}

bool lacks_distance(const Column& column) {
    return column.field->type == FieldType::distance && !column.unit.distance;
}
bool lacks_volume(const Column& column) {
    return column.field->type == FieldType::volume && !column.unit.volume;
}
bool lacks_currency(const Column& column) {
    const bool money = column.field->type == FieldType::money || column.field->type == FieldType::unit_price;
    return money && !column.unit.currency;
}

void add_units(std::vector<std::string>& notices, const ImportPlan& plan, const Garage& garage) {
    const VolumeUnit volume = garage.settings ? garage.settings->value.volume_unit : VolumeUnit::l;
    if (const auto names = quoted_headings(plan.columns, lacks_distance); !names.empty())
        notices.push_back(fmt::format(
            "No unit is stated for {}: cells without one are in the unit of the bike's odometer.", names));
    if (const auto names = quoted_headings(plan.columns, lacks_volume); !names.empty())
        notices.push_back(
            fmt::format("No unit is stated for {}: cells without one are in {}, the garage's unit.", names,
                        symbol(volume)));
    if (const auto names = quoted_headings(plan.columns, lacks_currency);
        !names.empty() && plan.columns.of("currency") == nullptr && currency_of(garage) != Currency{})
        notices.push_back(
            fmt::format("No currency is stated for {}: cells without one are in {}, the garage's currency.",
                        names, currency_of(garage).code()));
}

void add_fill_marking(std::vector<std::string>& notices, const ImportPlan& plan, const Table& table) {
    if (plan.kind != ImportKind::fuel) return;
    const FillMarking marking = find_fill_marking(table, plan.columns);
    if (!marking.known) {
        notices.emplace_back("No column says whether a fill was full: every fill is taken as full.");
        return;
    }
    const Column* column =
        plan.columns.of("full") != nullptr ? plan.columns.of("full") : plan.columns.of("part fill");
    const bool any_blank = std::ranges::any_of(table.rows, [column](const Row& row) {
        return column->index >= row.cells.size() || trimmed(row.cells[column->index]).empty();
    });
    if (any_blank && marking.blank_is_full)
        notices.push_back(fmt::format("A blank cell under \"{}\" is taken as a {} fill.", column->heading,
                                      *marking.blank_is_full ? "full" : "part"));
}

void add_times(std::vector<std::string>& notices, const ImportPlan& plan, const Table& table) {
    for (const auto& column : plan.columns.all) {
        if (column.field == nullptr || column.field->type != FieldType::date) continue;
        const bool timed = std::ranges::any_of(table.rows, [&](const Row& row) {
            return column.index < row.cells.size() &&
                   date_part(row.cells[column.index]).size() != trimmed(row.cells[column.index]).size();
        });
        if (timed)
            notices.push_back(fmt::format("The time of day under \"{}\" is left out.", column.heading));
    }
}

} // namespace

std::vector<std::string> notices_of(const ImportPlan& plan, const Table& table, const Garage& garage) {
    std::vector<std::string> notices;
    add_units(notices, plan, garage);
    add_fill_marking(notices, plan, table);
    add_times(notices, plan, table);
    return notices;
}

} // namespace sumpbook::import
