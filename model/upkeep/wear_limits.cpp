// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/wear_limits.h"

#include "embedded/wear_limits_csv.h"
#include "model/quantity/data_table.h"
#include "model/upkeep/plan_due.h"
#include "model/upkeep/wear_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace sumpbook::upkeep {
namespace {

constexpr Distance least_lead = Distance::from_whole_km(500); // DESIGN (numbers.md 4.4)
constexpr int lead_part = 10;

const std::vector<DataRow>& parts() {
    static const auto read = read_data_table(data::wear_limits_csv());
    return read;
}

const DataRow* part_of(std::string_view quantity) {
    const auto found =
        std::ranges::find_if(parts(), [&](const DataRow& row) { return row["quantity"] == quantity; });
    return found == parts().end() ? nullptr : &*found;
}

/// Small letters and digits, hyphens for all else: "Cylinder 1 inlet" -> "cylinder-1-inlet".
std::string place_slug(const std::optional<std::string>& at) {
    std::string slug;
    for (const char c : at.value_or("")) {
        const bool upper = c >= 'A' && c <= 'Z';
        const bool kept = upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        slug += !kept ? '-' : upper ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return slug;
}

/// All measurements of one part in one place and unit since a part was last fitted there.
struct Series {
    const DataRow* part = nullptr;
    std::string place;
    std::string at; ///< As typed.
    std::string unit;
    std::optional<Decimal> own_limit;
    std::vector<WearPoint> points;
    Date last_on;
};

using AllSeries = std::map<std::string, Series>; ///< By "pad-front/mm".

/// Where the bike stood at a measurement: after the last reading between it and today's estimate, by days.
/// Absent before the first reading, and without readings.
std::optional<Distance> distance_at(const LogEntry& entry, const BikeToday& bike) {
    const auto known = bike.odometer().at_entry(entry);
    const auto record = bike.odometer().span();
    if (known || !record || entry.value.date < record->last) return known;
    const double share = static_cast<double>(days_between(record->last, entry.value.date)) /
                         days_between(record->last, bike.today());
    const double since = static_cast<double>((*bike.now().distance - record->at_last).micrometres());
    return record->at_last + Distance::from_micrometres(std::llround(share * since));
}

void add_measure(AllSeries& all, const LogEntry& entry, const BikeToday& bike) {
    const auto& measure = std::get<Measure>(entry.value.body);
    const auto* part = part_of(measure.quantity);
    if (part == nullptr || !measure.value) return;
    const auto place = place_slug(measure.at);
    auto& series = all[measure.quantity + "-" + place + "/" + measure.unit];
    series.part = part;
    series.place = place;
    series.at = measure.at.value_or("");
    series.unit = measure.unit;
    if (measure.limit) series.own_limit = measure.limit;
    series.points.push_back({distance_at(entry, bike), *measure.value});
    series.last_on = entry.value.date;
}

/// The slot a new part is fitted to; empty for what is set right without one.
std::string slot_of(const Series& series) {
    const std::string& own = (*series.part)["slot"];
    return own.starts_with('-') ? series.place + own : own;
}

AllSeries all_series(const BikeToday& bike) {
    AllSeries all;
    for (const auto& entry : bike.bike().log) {
        if (std::holds_alternative<Measure>(entry.value.body)) add_measure(all, entry, bike);
        const auto* fit = std::get_if<Fit>(&entry.value.body);
        if (fit == nullptr) continue;
        for (auto& [name, series] : all) {
            if (slot_of(series) == fit->slot) series.points.clear();
        }
    }
    return all;
}

std::optional<Decimal> limit_of(const Series& series) {
    if (series.own_limit) return series.own_limit;
    return series.unit == (*series.part)["unit"] ? series.part->number("limit") : std::nullopt;
}

/// A clearance closes or opens: away from its first value, towards the limit.
WearDirection direction_of(const Series& series, const Decimal& limit) {
    const std::string& worn = (*series.part)["worn"];
    if (worn != "either") return worn == "falls" ? WearDirection::falls : WearDirection::rises;
    return series.points.front().value >= limit ? WearDirection::falls : WearDirection::rises;
}

/// A job of that name on the day of the last measurement or later: what was found at its limit was set right.
bool set_right_since(const Series& series, const Bike& bike) {
    const std::string& name = (*series.part)["quantity"];
    return std::ranges::any_of(bike.log, [&](const LogEntry& entry) {
        const auto& does = entry.value.does;
        return std::holds_alternative<Work>(entry.value.body) && entry.value.date >= series.last_on &&
               std::ranges::find(does, name) != does.end();
    });
}

std::string basis(const Series& series, std::size_t points, bool worn) {
    const auto& last = series.points.back().value;
    const std::string measured =
        fmt::format("{} {} measured on {}", last.text(), series.unit, spelled_text(series.last_on));
    const std::string limit = series.own_limit ? "the limit is yours" : (*series.part)["source"];
    if (worn) return measured + "; " + limit;
    return fmt::format("straight line through {} measurements, the last {}; {}", points, measured, limit);
}

DistanceLimit distance_limit(const std::vector<WearPoint>& points, Distance at) {
    const auto first =
        std::ranges::find_if(points, [](const WearPoint& point) { return point.distance.has_value(); });
    const Distance worn_over = at - *first->distance;
    const auto tenth = Distance::from_micrometres(worn_over.micrometres() / lead_part);
    return {at, worn_over, Distance{}, std::max(least_lead, tenth)};
}

std::optional<DueItem> item_of(const Series& series, const BikeToday& bike) {
    const auto limit = limit_of(series);
    if (!limit || series.points.empty()) return std::nullopt;
    const auto direction = direction_of(series, *limit);
    const auto points = since_new(series.points, *limit, direction);
    const auto at = worn_out_at(points, *limit, direction);
    const bool worn = worn_out(points.back().value, *limit, direction);
    if (worn ? set_right_since(series, bike.bike()) : !at) return std::nullopt;
    DueItem item;
    item.slug = "wear-" + (*series.part)["quantity"] + (series.place.empty() ? "" : "-" + series.place);
    item.label =
        fmt::format("{}{}{}, {} to {} {}", (*series.part)["label"], series.at.empty() ? "" : ", ", series.at,
                    direction == WearDirection::falls ? "down" : "up", limit->text(), series.unit);
    item.kind = DueKind::component;
    item.set_right_by = slot_of(series).empty() ? (*series.part)["quantity"] : slot_of(series);
    if (at)
        item.limits.distance = distance_limit(points, *at);
    else
        item.limits.date = DateLimit{series.last_on, 0, 0, 0}; // found worn out that day
    item.source = basis(series, points.size(), worn);
    judge(item, bike);
    return item;
}

} // namespace

std::vector<DueItem> wear_limits(const BikeToday& bike) {
    std::vector<DueItem> items;
    for (const auto& [name, series] : all_series(bike)) {
        if (auto item = item_of(series, bike)) items.push_back(std::move(*item));
    }
    return items;
}

} // namespace sumpbook::upkeep
