// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/spent.h"

#include "model/usage/as_of.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace sumpbook::compose {
namespace {

using cost::GroupTotal;
using cost::Spending;
using document::Align;
using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Value;

constexpr double km_a_thousand = 1000;

std::vector<Spending> only(const std::vector<Spending>& spending, bool bought_or_sold) {
    std::vector<Spending> kept;
    std::ranges::copy_if(spending, std::back_inserter(kept), [&](const Spending& line) {
        return cost::is_purchase_or_sale(line.category) == bought_or_sold;
    });
    return kept;
}

Array money_json(const MoneyByCurrency& money) {
    Array amounts;
    for (const auto& amount : money.amounts()) {
        Object object;
        object.add("cost_minor", amount.minor).add("currency", amount.currency.code());
        amounts.emplace_back(std::move(object));
    }
    return amounts;
}

Money per_1000km(const cost::CostOfDistance& cost) {
    return {std::llround(cost.minor_per_km * km_a_thousand), cost.running.currency};
}

Object group_json(const std::string& bike, cost::GroupBy by, const std::string& key,
                  const GroupTotal& group) {
    const auto amounts = group.total.amounts();
    Object object;
    object.add("bike", bike);
    if (by != cost::GroupBy::bike) object.add(std::string(cost::slug(by)), key);
    // One amount where all of it is in one currency; `amounts` says the same where it is not.
    const bool one = amounts.size() == 1;
    object.add("cost_minor", one ? Value(amounts[0].minor) : Value());
    object.add("currency", one ? Value(amounts[0].currency.code()) : Value());
    object.add("amounts", money_json(group.total)).add("parts", money_json(group.parts));
    object.add("labour", money_json(group.labour)).add("entries", group.count);
    return object;
}

Object distance_json(const std::string& bike, const cost::CostOfDistance& cost) {
    Object object;
    object.add("bike", bike).add("from", cost.from).add("to", cost.to);
    object.add("distance_km", in_unit(cost.distance, DistanceUnit::km, 0));
    object.add("cost_minor", cost.running.minor).add("currency", cost.running.currency.code());
    object.add("cost_minor_per_km", decimal_from_double(cost.minor_per_km, 2));
    object.add("cost_minor_per_1000km", per_1000km(cost).minor);
    return object;
}

Array oil_left_json(const SpentReport& report) {
    Array items;
    for (const auto& [bike, left] : report.oil_left) {
        Object object;
        object.add("bike", bike).add("volume_l", in_unit(left.volume, VolumeUnit::l, 3));
        object.add("cost_minor", left.money.minor).add("currency", left.money.currency.code());
        items.emplace_back(std::move(object));
    }
    return items;
}

/// The groups of each bike by itself.
Array groups_json(const std::vector<Spending>& running, cost::GroupBy by) {
    std::map<std::string, std::vector<Spending>> by_bike;
    for (const auto& line : running)
        by_bike[line.bike].push_back(line);
    Array items;
    for (const auto& [bike, spending] : by_bike) {
        for (const auto& [key, group] : cost::grouped(spending, by))
            items.emplace_back(group_json(bike, by, key, group));
    }
    return items;
}

/// "38 %" of the money in the same, only currency; empty where there are several.
std::string share_words(const MoneyByCurrency& part, const MoneyByCurrency& whole) {
    const auto parts = part.amounts();
    const auto all = whole.amounts();
    if (parts.size() != 1 || all.size() != 1 || all[0].minor <= 0) return {};
    const double percent = 100.0 * static_cast<double>(parts[0].minor) / static_cast<double>(all[0].minor);
    return decimal_from_double(percent, 0).text() + " %";
}

std::string heading_of(cost::GroupBy by) {
    std::string heading(cost::slug(by));
    heading[0] = static_cast<char>(heading[0] - 'a' + 'A');
    return heading;
}

document::Table table_of(cost::GroupBy by, const std::vector<Spending>& running) {
    const auto whole = cost::total_of(running);
    const bool shares = whole.amounts().size() == 1; // of several currencies there is no whole
    // Always the same columns, for programs that read plain lines; text leaves out those with nothing in
    // them.
    document::Table table{{{heading_of(by), {}},
                           {"Spent", Align::right},
                           {"Share", Align::right},
                           {"Parts of jobs", Align::right},
                           {"Labour", Align::right},
                           {"Times", Align::right}},
                          {}};
    for (const auto& [key, group] : cost::grouped(running, by)) {
        table.rows.push_back({Cell{key, {}}, Cell{words(group.total), {}},
                              Cell{shares ? share_words(group.total, whole) : std::string(), {}},
                              Cell{words(group.parts), {}}, Cell{words(group.labour), {}},
                              Cell{std::to_string(group.count), {}}});
    }
    return table;
}

std::string distance_sentence(const std::string& bike, const cost::CostOfDistance& cost, DistanceUnit unit) {
    const double km_each = unit == DistanceUnit::km ? 1
                                                    : static_cast<double>(Distance::um_per_mi) /
                                                          static_cast<double>(Distance::um_per_km);
    const auto each = [&](double units) {
        return words(Money{std::llround(cost.minor_per_km * km_each * units), cost.running.currency});
    };
    const std::string symbol_text(symbol(unit));
    return bike + ": " + words(cost.running) + " over " + words(cost.distance, unit) + " from " +
           spelled_text(cost.from) + " to " + spelled_text(cost.to) + ": " + each(1) + " a " + symbol_text +
           ", " + each(km_a_thousand) + " for 1 000 " + symbol_text + ".";
}

std::string period_words(const SpentReport& report) {
    std::string text;
    if (report.from) text += " from " + spelled_text(*report.from);
    if (report.until) text += " until " + spelled_text(*report.until);
    return text;
}

void add_bought_and_sold(Document& text, const std::vector<Spending>& spending) {
    for (const auto& line : only(spending, true)) {
        const bool sale = line.amount.minor < 0;
        const Money size{sale ? -line.amount.minor : line.amount.minor, line.amount.currency};
        text.sentence("Not in the sums above: " + line.bike + (sale ? " sold on " : " bought on ") +
                      spelled_text(line.date) + " for " + words(size) + ".");
    }
}

} // namespace

void add_spent(SpentReport& report, const Bike& whole_bike, const GarageSettings& settings, Date today) {
    constexpr Date first_day{std::chrono::year{1900}, std::chrono::January, std::chrono::day{1}};
    const Date from = report.from.value_or(first_day);
    const Date to = std::min(report.until.value_or(today), today);
    const Bike bike = usage::as_of(whole_bike, to);
    auto spending = cost::spending_of(bike, settings);
    std::erase_if(spending, [&](const Spending& line) { return line.date < from || line.date > to; });
    const auto odometer = usage::OdometerSeries::of(bike);
    if (const auto cost = cost::cost_of_distance(spending, odometer, from, to))
        report.of_distance.emplace_back(bike.details.value.name, *cost);
    std::ranges::move(spending, std::back_inserter(report.spending));
    if (settings.oil_bought_counts != OilBoughtCounts::per_litre_used) return;
    if (const auto left = cost::OilCans(bike, settings).left())
        report.oil_left.emplace_back(bike.details.value.name, *left);
}

Value spent_json(const SpentReport& report) {
    const auto running = only(report.spending, false);
    Array distances;
    for (const auto& [bike, cost] : report.of_distance)
        distances.emplace_back(distance_json(bike, cost));
    Object object = document::result();
    object.add("by", cost::slug(report.by));
    object.add("from", report.from).add("until", report.until);
    object.add("items", groups_json(running, report.by)).add("running", money_json(cost::total_of(running)));
    object.add("bought_and_sold", money_json(cost::total_of(only(report.spending, true))));
    object.add("of_distance", std::move(distances)).add("oil_left", oil_left_json(report));
    return object;
}

std::string prices_left_out_words() {
    return "Prices were left out of this file when it was handed over: what was paid before is not known here.";
}

Document spent_text(const SpentReport& report) {
    Document text;
    const auto running = only(report.spending, false);
    text.heading("Spent" + period_words(report));
    if (report.prices_left_out) text.sentence(prices_left_out_words(), document::Severity::caution);
    if (report.spending.empty() && report.prices_left_out) return text;
    if (report.spending.empty()) {
        text.sentence(
            "No money is recorded for this time. Amounts stand in entries: sumpbook add fuel --help");
        return text;
    }
    text.table(table_of(report.by, running));
    text.sentence("Running costs together: " + words(cost::total_of(running)) + ".");
    for (const auto& [bike, cost] : report.of_distance)
        text.sentence(distance_sentence(bike, cost, report.distance_unit));
    add_bought_and_sold(text, report.spending);
    for (const auto& [bike, left] : report.oil_left)
        text.sentence("Not in the sums above: " + bike + " has " + words(left.volume, VolumeUnit::l) +
                      " of oil left in the can, worth " + words(left.money) + "; it counts when it is used.");
    if (cost::total_of(running).amounts().size() > 1)
        text.sentence("Amounts in other currencies stand apart: there is no exchange rate of their day.");
    return text;
}

} // namespace sumpbook::compose
