// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/inspections.h"

#include "embedded/inspections_csv.h"
#include "model/quantity/data_table.h"

#include <fmt/format.h>

namespace sumpbook::upkeep {
namespace {

const std::vector<DataRow>& rows() {
    static const auto read = read_data_table(data::inspections_csv());
    return read;
}

int months(const DataRow& row, std::string_view column) {
    return static_cast<int>(row.required(column).coefficient());
}

PlanItem item_of(const DataRow& row) {
    PlanItem item;
    item.slug = "inspection";
    item.label = "Statutory inspection";
    item.kind = PlanKind::statutory;
    item.first.months = months(row, "first_months");
    item.repeat.months = months(row, "then_months");
    const std::string known = row["status"] == "READ" ? row["source"] : "from memory";
    item.source = fmt::format("{}, {} months, then every {}; check your authority ({})", row["country"],
                              row["first_months"], row["then_months"], known);
    return item;
}

} // namespace

std::optional<PlanItem> statutory_inspection(std::string_view country, std::optional<int> displacement_cm3) {
    for (const auto& row : rows()) {
        if (row["country"] != country) continue;
        const auto over = row.number("over_cm3");
        if (over && displacement_cm3 && Decimal(*displacement_cm3) <= *over) continue;
        return item_of(row);
    }
    return std::nullopt;
}

} // namespace sumpbook::upkeep
