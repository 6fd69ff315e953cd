// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/starter.h"

#include "embedded/starter_plan_csv.h"
#include "model/quantity/data_table.h"
#include "model/upkeep/inspections.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace sumpbook::upkeep {
namespace {

/// The high end of the range for the first service: past it nobody does one any more.
constexpr Distance no_longer_new = Distance::from_whole_km(1600);

bool has_compartment(const BikeDetails& bike, std::string_view slug) {
    return std::ranges::find(bike.compartments, slug, &Compartment::slug) != bike.compartments.end();
}

bool is_for(const std::string& when, const BikeDetails& bike, const std::optional<Distance>& ridden) {
    if (when.empty()) return true;
    if (when == "new") return !ridden || *ridden <= no_longer_new;
    if (when == "chain") return !has_compartment(bike, "final-drive");
    if (when == "final-drive") return has_compartment(bike, "final-drive");
    if (when == "hydraulic-clutch") return has_compartment(bike, "clutch");
    if (when == "liquid-cooled") return !bike.cooling || *bike.cooling == Cooling::liquid;
    if (when == "spark") return bike.fuel != FuelType::diesel;
    throw std::logic_error("starter_plan.csv: when " + when);
}

std::optional<WrittenDistance> km_in(const DataRow& row, std::string_view column) {
    const auto number = row.number(column);
    if (!number) return std::nullopt;
    return WrittenDistance{*number, DistanceUnit::km};
}

std::optional<int> whole_in(const DataRow& row, std::string_view column) {
    const auto number = row.number(column);
    if (!number) return std::nullopt;
    return static_cast<int>(number->coefficient());
}

std::vector<std::string> words_in(const std::string& cell) {
    std::vector<std::string> words;
    for (std::size_t at = 0; at < cell.size();) {
        const auto end = std::min(cell.find(' ', at), cell.size());
        words.push_back(cell.substr(at, end - at));
        at = end + 1;
    }
    return words;
}

PlanKind kind_in(const std::string& cell) {
    if (cell == "upkeep") return PlanKind::upkeep;
    if (cell == "safety") return PlanKind::safety;
    if (cell == "renewal") return PlanKind::renewal;
    throw std::logic_error("starter_plan.csv: kind " + cell);
}

PlanItem item_of(const DataRow& row) {
    PlanItem item;
    item.slug = row["slug"];
    item.label = row["label"];
    item.kind = kind_in(row["kind"]);
    item.first = {km_in(row, "first_km"), whole_in(row, "first_months"), {}};
    item.repeat = {km_in(row, "repeat_km"), whole_in(row, "repeat_months"), {}};
    item.includes = words_in(row["includes"]);
    const Margin lead{km_in(row, "lead_km"), whole_in(row, "lead_days"), {}};
    if (lead.distance || lead.days) item.lead = lead;
    const std::string known = row["status"] == "READ" ? row["source"] : "from memory, no page to show for it";
    item.source =
        fmt::format("common practice; your handbook comes first. Usual: {} ({})", row["note"], known);
    return item;
}

} // namespace

std::vector<PlanItem> starter_plan(const BikeDetails& bike, const std::optional<std::string>& home_country,
                                   const std::optional<Distance>& ridden) {
    std::vector<PlanItem> plan;
    for (const auto& row : read_data_table(data::starter_plan_csv())) {
        if (is_for(row["when"], bike, ridden)) plan.push_back(item_of(row));
    }
    if (home_country) {
        if (const auto inspection = statutory_inspection(*home_country, bike.displacement_cm3))
            plan.push_back(*inspection);
    }
    return plan;
}

} // namespace sumpbook::upkeep
