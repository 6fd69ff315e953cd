// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_compare.h"

#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "model/stats/median.h"
#include "reports/compose/oil_json.h"
#include "reports/compose/words.h"

#include <cmath>

namespace sumpbook::compose {
namespace {

using document::Align;
using document::Array;
using document::Cell;
using document::Document;
using document::Object;
using document::Severity;
using document::Value;
using oil::ComparedMetal;
using oil::ComparedWord;
using oil::OilComparison;

std::string figure(double number, int scale = 2) { return grouped(decimal_from_double(number, scale)); }

std::string fills(std::size_t count) { return std::to_string(count) + (count == 1 ? " fill" : " fills"); }

/// "2.68 (8 fills)", "below detection in 2 of 8".
std::string middle_cell(const std::vector<double>& rates, std::size_t below) {
    if (below > 0)
        return "below detection in " + std::to_string(below) + " of " + std::to_string(rates.size() + below);
    const auto middle = stats::median(rates);
    return middle ? figure(*middle) + " (" + fills(rates.size()) + ")" : "-";
}

std::string metal_words(const ComparedMetal& metal, const OilComparison& all) {
    switch (metal.word) {
    case ComparedWord::first_wears_less:
        return all.first.name + " wears less";
    case ComparedWord::second_wears_less:
        return all.second.name + " wears less";
    case ComparedWord::cannot_tell:
        return "cannot tell";
    case ComparedWord::not_compared:
        break;
    }
    return metal.below() > 0 ? "not compared: a limit is no number" : "no rate on one side";
}

std::string range_cell(const ComparedMetal& metal) {
    if (!metal.shift) return "-";
    return figure(metal.shift->interval.low) + " to " + figure(metal.shift->interval.high) +
           (metal.shift->reached ? "" : " (all there is)");
}

document::Table metals_table(const OilComparison& all) {
    document::Table table{{{"Wear in 1 000 km, mg/kg", {}},
                           {all.first.name, Align::right},
                           {all.second.name, Align::right},
                           {"Second less first", Align::right},
                           {"Where that lies", Align::right},
                           {"What it says", {}},
                           {"Fills of each to tell", Align::right}},
                          {}};
    for (const ComparedMetal& metal : all.metals) {
        table.rows.push_back({Cell{oil::quantity_name(metal.element), {}},
                              Cell{middle_cell(metal.first_per_1000km, metal.first_below), {}},
                              Cell{middle_cell(metal.second_per_1000km, metal.second_below), {}},
                              Cell{metal.shift ? figure(metal.shift->shift) : "-", {}},
                              Cell{range_cell(metal), {}}, Cell{metal_words(metal, all), {}},
                              Cell{metal.fills_needed ? std::to_string(*metal.fills_needed) : "-", {}}});
    }
    return table;
}

/// "iron and copper", the metals of one word.
std::string named(const OilComparison& all, ComparedWord word) {
    std::vector<std::string> names;
    for (const ComparedMetal& metal : all.metals) {
        if (metal.word == word) names.push_back(oil::quantity_name(metal.element));
    }
    return oil::listed(names);
}

std::string have_words(const OilComparison& all) {
    return all.first.name + " has " + fills(all.first.fills) + " with a rate, " + all.second.name + " has " +
           fills(all.second.fills);
}

std::string cannot_tell_words(const OilComparison& all) {
    const std::string first = named(all, ComparedWord::first_wears_less);
    if (!first.empty())
        return "Cannot tell: " + first + " speaks for " + all.first.name + ", " +
               named(all, ComparedWord::second_wears_less) + " for " + all.second.name + ".";
    const std::string fewest = std::to_string(all.fewest_for_an_answer);
    const bool few =
        all.first.fills < all.fewest_for_an_answer || all.second.fills < all.fewest_for_an_answer;
    std::string text =
        few ? "Cannot tell from so few: " + have_words(all) + "; " + fewest +
                  " fills of each are needed before any difference can show."
            : "Cannot tell: the difference is no larger than chance would make it (" + have_words(all) + ").";
    if (all.fewest_fills_needed > all.fewest_for_an_answer)
        text += " To find one of the size seen so far, " + std::to_string(all.fewest_fills_needed) +
                " fills of each are needed.";
    return text;
}

std::string verdict_words(const OilComparison& all) {
    switch (all.word) {
    case ComparedWord::first_wears_less:
        return all.first.name + " wears this engine less than " + all.second.name + ", by " +
               named(all, all.word) + ".";
    case ComparedWord::second_wears_less:
        return all.second.name + " wears this engine less than " + all.first.name + ", by " +
               named(all, all.word) + ".";
    case ComparedWord::cannot_tell:
        return cannot_tell_words(all);
    case ComparedWord::not_compared:
        break;
    }
    return "Nothing to compare: " + have_words(all) +
           ". A rate needs a sample with wear metals and the distance on the oil.";
}

void add_reasons(Document& text, const OilComparison& all) {
    document::Table table{{{"Test", {}},
                           {"p", Align::right},
                           {"p can reach", Align::right},
                           {"Arrangements", Align::right},
                           {"Confidence of the range", Align::right}},
                          {}};
    for (const ComparedMetal& metal : all.metals) {
        if (!metal.smallest_p || !metal.shift) continue;
        table.rows.push_back(
            {Cell{oil::quantity_name(metal.element), {}},
             Cell{metal.test ? figure(metal.test->p_two_sided(), 4) : "too many to count", {}},
             Cell{figure(*metal.smallest_p, 4), {}},
             Cell{metal.test ? std::to_string(metal.test->all) : "-", {}},
             Cell{figure(metal.shift->confidence * 100, 1) + " %", {}}});
    }
    if (!table.rows.empty()) text.table(std::move(table));
    text.sentence(
        "An exact permutation test: every way to deal the fills to the two sides is counted. The shift "
        "is the median of all differences (Hodges-Lehmann), its range by the exact Mann-Whitney count. "
        "A difference is called one from p 0.05 down; of twenty metals one would seem so by chance. "
        "Fills to tell: two-sample t test, power 0.80.");
}

Array rates_json(const std::vector<double>& rates) {
    Array items;
    for (const double rate : rates)
        items.emplace_back(decimal_from_double(rate, 3));
    return items;
}

Value metal_json(const ComparedMetal& metal) {
    Object item;
    item.add("quantity", metal.element).add("word", slug(metal.word));
    item.add("first_mg_kg_per_1000km", rates_json(metal.first_per_1000km));
    item.add("second_mg_kg_per_1000km", rates_json(metal.second_per_1000km));
    item.add("fills_below", metal.below());
    const auto& shift = metal.shift;
    item.add("shift_mg_kg_per_1000km", shift ? figure_json(shift->shift) : Value());
    item.add("shift_low", shift ? figure_json(shift->interval.low) : Value());
    item.add("shift_high", shift ? figure_json(shift->interval.high) : Value());
    item.add("shift_confidence", shift ? figure_json(shift->confidence) : Value());
    item.add("p_two_sided", metal.test ? figure_json(metal.test->p_two_sided()) : Value());
    item.add("smallest_p", metal.smallest_p ? figure_json(*metal.smallest_p) : Value());
    return item.add("fills_needed", metal.fills_needed ? Value(*metal.fills_needed) : Value());
}

Value side_json(const oil::ComparedSide& side) {
    return Object().add("name", side.name).add("fills", side.fills);
}

} // namespace

Value oil_compare_json(const OilComparison& comparison) {
    Array metals;
    for (const ComparedMetal& metal : comparison.metals)
        metals.push_back(metal_json(metal));
    Object json = document::result();
    json.add("bike", comparison.bike).add("first", side_json(comparison.first));
    json.add("second", side_json(comparison.second)).add("word", slug(comparison.word));
    json.add("fills_needed",
             comparison.fewest_fills_needed > 0 ? Value(comparison.fewest_fills_needed) : Value());
    json.add("fewest_for_an_answer", comparison.fewest_for_an_answer);
    return json.add("metals", std::move(metals)).add("notes", texts_json(comparison.notes));
}

Document oil_compare_text(const OilComparison& comparison, bool why) {
    Document text;
    text.heading(comparison.bike + ": " + comparison.first.name + " and " + comparison.second.name);
    const bool told = comparison.word == ComparedWord::first_wears_less ||
                      comparison.word == ComparedWord::second_wears_less;
    text.sentence(verdict_words(comparison), told ? Severity::good : Severity::none);
    if (!comparison.metals.empty()) text.table(metals_table(comparison));
    for (const std::string& note : comparison.notes)
        text.sentence(note);
    if (why) add_reasons(text, comparison);
    text.sentence(
        "Less wear metal is not all: the grade and class the handbook asks for come first, and riding "
        "differs from fill to fill.",
        Severity::caution);
    return text;
}

} // namespace sumpbook::compose
