// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/compare.h"

#include "model/oil/quantities.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <array>
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
using review::Compared;
using review::ComparedKind;
using review::Shift;

Value figure(const std::optional<double>& number) {
    return number ? Value(decimal_from_double(*number, 6)) : Value();
}

Array numbers_json(const std::vector<double>& numbers) {
    Array items;
    for (const double number : numbers)
        items.emplace_back(decimal_from_double(number, 6));
    return items;
}

Value test_json(const std::optional<stats::TwoGroups>& test) {
    if (!test) return {};
    Object object;
    object.add("shift", decimal_from_double(test->shift, 6));
    object.add("shift_low", decimal_from_double(test->shift_low, 6));
    object.add("shift_high", decimal_from_double(test->shift_high, 6));
    object.add("confidence", decimal_from_double(test->confidence, 6));
    object.add("p", decimal_from_double(test->p, 6));
    object.add("smallest_p", decimal_from_double(test->smallest_p, 6));
    return object.add("by_ranks", test->by_ranks);
}

Object series_json(const Compared& series) {
    Object object;
    object.add("kind", slug(series.kind));
    object.add("what", series.what.empty() ? Value() : Value(series.what)).add("at", series.at);
    object.add("unit", series.unit).add("shift", slug(series.shift));
    object.add("n_before", series.before.size()).add("n_after", series.after.size());
    object.add("median_before", figure(series.median_before));
    object.add("median_after", figure(series.median_after));
    object.add("left_out", series.left_out).add("before", numbers_json(series.before));
    object.add("after", numbers_json(series.after));
    return object.add("test", test_json(series.test));
}

std::string name_of(const Compared& series) {
    switch (series.kind) {
    case ComparedKind::fuel:
        return "Fuel used";
    case ComparedKind::oil_use:
        return "Oil used";
    case ComparedKind::wear:
        return "Wear of " + oil::quantity_name(series.what);
    case ComparedKind::measure:
        break;
    }
    std::string text = series.what;
    std::ranges::replace(text, '-', ' ');
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return series.at ? text + ", " + *series.at : text;
}

/// Prints the figures of one series in the owner's units.
class Figures {
public:
    Figures(const Compared& series, const GarageSettings& settings)
        : series_(series)
        , settings_(settings) {}

    [[nodiscard]] std::string value(const std::optional<double>& figure) const {
        if (!figure) return "-";
        if (series_.kind == ComparedKind::fuel)
            return words(Consumption{*figure}, settings_.consumption_unit);
        return with_unit(*figure);
    }
    /// "5 mm", also of a shift of fuel, which stays in L/100 km: other units turn the sign.
    [[nodiscard]] std::string with_unit(double figure) const {
        const auto number = grouped(decimal_from_double(figure, series_.digits));
        return series_.unit.empty() ? number : number + " " + series_.unit;
    }

private:
    const Compared& series_;
    const GarageSettings& settings_;
};

std::string counted(std::size_t n, const char* side) { return std::to_string(n) + " " + side; }

std::string sides(const Compared& series) {
    return counted(series.before.size(), "before") + " and " + counted(series.after.size(), "after");
}

std::string not_seen_words(const Compared& series, const Figures& figures) {
    const double reach = (series.test->shift_high - series.test->shift_low) / 2;
    std::string text = "No clear change.";
    if (reach > 0)
        text += " " + sides(series) + " cannot tell apart less than about " + figures.with_unit(reach) + ".";
    return text;
}

std::string shift_words(const Compared& series, const Figures& figures) {
    switch (series.shift) {
    case Shift::one_sided:
        return series.before.empty() ? "Nothing from before." : "Nothing from after.";
    case Shift::too_few:
        return "Too few to tell: " + sides(series) + " cannot show any change, however large.";
    case Shift::not_seen:
        return not_seen_words(series, figures);
    case Shift::lower:
    case Shift::higher:
        break;
    }
    return std::string(series.shift == Shift::lower ? "Lower" : "Higher") + " by about " +
           figures.with_unit(std::abs(series.test->shift)) + ", more than chance explains.";
}

std::string left_out_words(const Compared& series) {
    if (series.left_out == 0) return "";
    const auto number = " " + std::to_string(series.left_out);
    if (series.kind != ComparedKind::wear) return number + " across the day left out.";
    return number + " left out: across the day, below detection, or not of this engine once run in.";
}

document::Table result_table(const CompareReport& report, const GarageSettings& settings) {
    document::Table table{{{"What", {}},
                           {"Before", Align::right},
                           {"", Align::right},
                           {"After", Align::right},
                           {"", Align::right},
                           {"What it says", {}}},
                          {}};
    for (const auto& series : report.series) {
        const Figures figures(series, settings);
        const bool told = series.shift == Shift::lower || series.shift == Shift::higher;
        table.rows.push_back({Cell{name_of(series), {}}, Cell{figures.value(series.median_before), {}},
                              Cell{"of " + std::to_string(series.before.size()), {}},
                              Cell{figures.value(series.median_after), {}},
                              Cell{"of " + std::to_string(series.after.size()), {}},
                              Cell{shift_words(series, figures) + left_out_words(series),
                                   told ? Severity::caution : Severity::none}});
    }
    return table;
}

std::string p_words(double p) {
    return p < 0.0001 ? std::string("below 0.0001") : decimal_from_double(p, 4).text();
}

document::Table why_table(const CompareReport& report, const GarageSettings& settings) {
    document::Table table{{{"What", {}},
                           {"Shift", Align::right},
                           {"From", Align::right},
                           {"To", Align::right},
                           {"Confidence", Align::right},
                           {"p", Align::right},
                           {"Smallest p", Align::right},
                           {"Tested on", {}}},
                          {}};
    for (const auto& series : report.series) {
        if (!series.test) continue;
        const auto& test = *series.test;
        const Figures figures(series, settings);
        table.rows.push_back(
            {Cell{name_of(series), {}}, Cell{figures.with_unit(test.shift), {}},
             Cell{figures.with_unit(test.shift_low), {}}, Cell{figures.with_unit(test.shift_high), {}},
             Cell{decimal_from_double(test.confidence * 100, 1).text() + " %", {}}, Cell{p_words(test.p), {}},
             Cell{p_words(test.smallest_p), {}}, Cell{test.by_ranks ? "ranks" : "values", {}}});
    }
    return table;
}

void add_why(Document& text, const CompareReport& report, const GarageSettings& settings) {
    auto table = why_table(report, settings);
    if (table.rows.empty()) return;
    text.heading("The tests", 3).table(std::move(table));
    text.sentence(
        "Shift: the median of all differences after minus before (Hodges-Lehmann), with its exact "
        "Mann-Whitney interval; p: two-sided permutation test, every split of the values, or of their ranks "
        "where the splits are too many. A change is called one at p of 0.05 or less; the smallest p is what "
        "so few values can reach at all. Of twenty lines without any change one is called changed by "
        "chance.");
}

/// Other gearing turns the shaft faster or slower for the same road.
bool changes_gearing(const std::string& modification) {
    constexpr std::array<std::string_view, 4> words{"sprocket", "gearing", "teeth", "wheel size"};
    const auto lowered = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    return std::ranges::any_of(words, [&](auto word) {
        return !std::ranges::search(modification, word, {}, lowered, lowered).empty();
    });
}

void add_cautions(Document& text, const CompareReport& report) {
    if (report.modification && changes_gearing(*report.modification)) {
        text.sentence("Where the odometer is driven from the gearbox, other gearing changes what it shows, "
                      "and with it every figure per distance: check it against a measured road.");
    }
    if (std::ranges::any_of(report.series, &Compared::wears)) {
        text.sentence("Pads, treads and chains wear with distance whatever is changed: their lines say how "
                      "they stood, not why.");
    }
    text.sentence("Weather, roads, load and fuel changed over the same time: a difference is not proof that "
                  "this made it.");
}

std::string title_of(const CompareReport& report) {
    std::string text = report.bike + " before and after " + spelled_text(report.cut.at);
    return report.modification ? text + ": " + *report.modification : text;
}

} // namespace

Value compare_json(const CompareReport& report) {
    Array items;
    for (const auto& series : report.series)
        items.emplace_back(series_json(series));
    Object object = document::result();
    object.add("bike", report.bike).add("date", report.cut.at).add("entry", report.cut.entry_id);
    object.add("modification", report.modification);
    return object.add("items", std::move(items));
}

Document compare_text(const CompareReport& report, const GarageSettings& settings, bool why) {
    Document text;
    text.heading(title_of(report));
    if (report.series.empty()) {
        return text.sentence("Nothing to compare yet: record measures, full fills with the odometer, top-ups "
                             "and samples on both sides.");
    }
    text.sentence("Middle values (medians) of what is recorded on each side.");
    text.table(result_table(report, settings));
    if (why) add_why(text, report, settings);
    add_cautions(text, report);
    return text;
}

} // namespace sumpbook::compose
