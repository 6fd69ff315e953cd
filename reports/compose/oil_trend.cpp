// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_trend.h"

#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/calc_figures.h"
#include "reports/compose/entry_words.h"
#include "reports/compose/oil_plots.h"
#include "reports/compose/oil_words.h"
#include "reports/compose/words.h"

#include <algorithm>
#include <cmath>
#include <memory>

namespace sumpbook::compose {
const std::string_view wear_columns_explained =
    "Wear is what the engine shed into a fill, less what the new oil and the oil left in at the change "
    "brought "
    "with them. Measured takes the laboratory's figure as it stands; corrected makes good the thinning by "
    "fuel and top-ups. They are the two ends of what is true.";

namespace {

using document::Cell;
using document::Document;
using document::Severity;
using oil::QuantityTrend;
using oil::TrendOf;
using oil::TrendPoint;
using oil::TrendWord;

std::string figure(double number, int scale) { return grouped(decimal_from_double(number, scale)); }

/// One digit behind the point, below 1 two; zeros at the end say nothing.
std::string short_figure(double number) {
    return grouped(without_trailing_zeros(decimal_from_double(number, std::abs(number) < 1 ? 2 : 1)));
}

/// Rising wear is a reason to look; nothing else has a colour of its own.
Severity colour_of(const QuantityTrend& trend) {
    const bool wears = trend.of == TrendOf::wear_rate && trend.word == TrendWord::rising;
    return wears || trend.latest_is_unusual() ? Severity::caution : Severity::none;
}

std::string unit_of(const QuantityTrend& trend) {
    return trend.of == TrendOf::wear_rate ? "mg/kg in 1 000 km" : trend.unit;
}

std::string wear_cell(const TrendPoint& point, double per_1000km) {
    return (point.value.state == ValueState::below ? "at most " : "") + short_figure(per_1000km);
}

/// "2.1 to 4.0", what the fills lie between; "below 1" where none was detected.
std::string between_cell(const QuantityTrend& trend) {
    if (trend.series.empty()) return "-";
    double low = trend.series.front().number;
    double high = low;
    for (const auto& value : trend.series) {
        low = std::min(low, value.below ? 0.0 : value.number);
        high = std::max(high, value.number);
    }
    if (trend.below == trend.series.size()) return "below " + short_figure(high);
    if (low == high) return short_figure(low);
    return (trend.below > 0 ? "below detection to " : short_figure(low) + " to ") + short_figure(high);
}

document::Table table_of(const std::vector<const QuantityTrend*>& trends) {
    using document::Align;
    document::Table table{{{"Found", {}},
                           {"From fill to fill", {}},
                           {"Latest", {}},
                           {"Wear in 1 000 km, measured", Align::right},
                           {"corrected", Align::right},
                           {"Over the fills", Align::right},
                           {"Unit", {}},
                           {"Fills", Align::right}},
                          {}};
    for (const QuantityTrend* trend : trends) {
        if (trend->series.empty()) continue;
        const TrendPoint& last = trend->points.back();
        table.rows.push_back({Cell{oil::quantity_name(trend->quantity), {}},
                              Cell{trend_words(*trend), colour_of(*trend)}, Cell{value_words(last.value), {}},
                              Cell{last.wear ? wear_cell(last, last.wear->measured_per_1000km()) : "-", {}},
                              Cell{last.wear ? wear_cell(last, last.wear->per_1000km()) : "-", {}},
                              Cell{between_cell(*trend), {}}, Cell{unit_of(*trend), {}},
                              Cell{std::to_string(trend->series.size()), {}}});
    }
    return table;
}

std::string named_with(const std::vector<const QuantityTrend*>& trends, TrendWord word) {
    std::vector<std::string> names;
    for (const QuantityTrend* trend : trends) {
        if (trend->word == word) names.push_back(oil::quantity_name(trend->quantity));
    }
    return oil::listed(names);
}

std::string named_out_of_line(const std::vector<const QuantityTrend*>& trends) {
    std::vector<std::string> names;
    for (const QuantityTrend* trend : trends) {
        if (trend->latest_is_unusual()) names.push_back(oil::quantity_name(trend->quantity));
    }
    return oil::listed(names);
}

/// What is only found or not found, and so has no figure to follow.
std::string named_without_figures(const std::vector<const QuantityTrend*>& trends) {
    std::vector<std::string> names;
    for (const QuantityTrend* trend : trends) {
        if (trend->series.empty())
            names.push_back(oil::quantity_name(trend->quantity) +
                            " (latest: " + value_words(trend->points.back().value) + ")");
    }
    return oil::listed(names);
}

bool any_coloured(const std::vector<const QuantityTrend*>& trends) {
    return std::any_of(trends.begin(), trends.end(),
                       [](const QuantityTrend* trend) { return colour_of(*trend) != Severity::none; });
}

std::vector<const QuantityTrend*> wear_of(const std::vector<const QuantityTrend*>& trends) {
    auto wear = trends;
    std::erase_if(wear, [](const QuantityTrend* trend) { return trend->of != TrendOf::wear_rate; });
    return wear;
}

void add_bike(Document& text, const std::vector<const QuantityTrend*>& trends) {
    const QuantityTrend& first = *trends.front();
    text.heading(first.bike + ", oil of the " + first.compartment);
    text.sentence(movers_words(trends), any_coloured(trends) ? Severity::caution : Severity::none);
    const std::string more = named_with(wear_of(trends), TrendWord::rising);
    if (!more.empty())
        text.sentence("The engine sheds more " + more +
                      " with each fill: sample this fill early, and see what oil assess names.");
    text.table(table_of(trends));
    if (const auto left_out = named_without_figures(trends); !left_out.empty())
        text.sentence("Without figures to follow: " + left_out + ".");
    text.sentence(std::string(wear_columns_explained));
}

/// Groups of one bike and compartment.
std::vector<std::vector<const QuantityTrend*>> by_bike(const std::vector<QuantityTrend>& trends) {
    std::vector<std::vector<const QuantityTrend*>> groups;
    for (const QuantityTrend& trend : trends) {
        const bool same = !groups.empty() && groups.back().front()->bike == trend.bike &&
                          groups.back().front()->compartment == trend.compartment;
        if (!same) groups.emplace_back();
        groups.back().push_back(&trend);
    }
    return groups;
}

std::string run_cell(const TrendPoint& point, DistanceUnit unit) {
    return point.distance_on_oil ? words(*point.distance_on_oil, unit) : "-";
}

document::Table points_table(const QuantityTrend& trend) {
    using document::Align;
    document::Table table{{{"Date", {}},
                           {"Sample", {}},
                           {"Fill", Align::right},
                           {"Oil", {}},
                           {"Run on it", Align::right},
                           {"Value", Align::right}},
                          {}};
    const bool wear = trend.of == TrendOf::wear_rate;
    const bool rates = std::any_of(trend.points.begin(), trend.points.end(),
                                   [](const TrendPoint& point) { return point.since_last.has_value(); });
    if (wear) {
        table.columns.push_back({"Wear in 1 000 km, measured", Align::right});
        table.columns.push_back({"corrected", Align::right});
    }
    if (rates) table.columns.push_back({"Since the sample before", {}});
    for (const TrendPoint& point : trend.points) {
        std::vector<Cell> row{Cell{iso_text(point.date), {}},
                              Cell{point.sample, {}},
                              Cell{std::to_string(point.fill), {}},
                              Cell{point.oil_name.value_or("-"), {}},
                              Cell{run_cell(point, trend.dial_unit), {}},
                              Cell{value_words(point.value), {}}};
        if (wear) {
            row.push_back({point.wear ? wear_cell(point, point.wear->measured_per_1000km()) : "-", {}});
            row.push_back({point.wear ? wear_cell(point, point.wear->per_1000km()) : "-", {}});
        }
        if (rates) row.push_back({point.since_last ? rate_and_distance_words(*point.since_last) : "-", {}});
        table.rows.push_back(std::move(row));
    }
    return table;
}

std::string subject_of(const QuantityTrend& trend) {
    const std::string name = oil::quantity_name(trend.quantity);
    return trend.of == TrendOf::wear_rate ? "wear of " + name : name;
}

std::string verdict_words(const QuantityTrend& trend) {
    const std::string fills = std::to_string(trend.series.size());
    switch (trend.word) {
    case TrendWord::too_few:
        return "Too few to say: " + fills + (trend.series.size() == 1 ? " fill" : " fills") +
               " of the four that a trend needs.";
    case TrendWord::steady:
        return "Steady: over " + fills + " fills the " + subject_of(trend) +
               " goes up and down no more than chance would have it.";
    case TrendWord::rising:
        return "Rising: over " + fills + " fills the " + subject_of(trend) + " goes up.";
    case TrendWord::falling:
        break;
    }
    return "Falling: over " + fills + " fills the " + subject_of(trend) + " goes down.";
}

std::string percent(double share) { return decimal_from_double(share * 100, 1).text() + " %"; }

std::string slope_unit(const QuantityTrend& trend) {
    return " " + unit_of(trend) + (trend.along_distance ? " for each 1 000 km ridden" : " a year");
}

void add_slopes(document::Facts& facts, const QuantityTrend& trend) {
    if (trend.median_line)
        facts.lines.emplace_back("Median slope (Theil-Sen)",
                                 figure(trend.median_line->slope, 4) + slope_unit(trend));
    if (trend.range)
        facts.lines.emplace_back("Range of that slope", figure(trend.range->slope.low, 4) + " to " +
                                                            figure(trend.range->slope.high, 4) +
                                                            ", confidence " +
                                                            percent(trend.range->confidence));
    if (trend.line)
        facts.lines.emplace_back("Least-squares slope", figure(trend.line->slope, 4) + slope_unit(trend) +
                                                            ", residual sd " +
                                                            figure(trend.line->residual_sd, 3));
}

document::Facts reasons(const QuantityTrend& trend) {
    document::Facts facts;
    if (trend.test)
        facts.lines.emplace_back("Score S (Mann-Kendall)",
                                 std::to_string(trend.test->s) + ", two-sided p " +
                                     decimal_from_double(trend.test->p_two_sided, 4).text() +
                                     (trend.test->exact ? " exact" : " from the normal curve"));
    add_slopes(facts, trend);
    if (trend.limits)
        facts.lines.emplace_back("Usual scatter (mean +- 3 MR/1.128)",
                                 figure(trend.limits->lower, 2) + " to " + figure(trend.limits->upper, 2) +
                                     ", step at most " + figure(trend.limits->moving_range_upper, 2));
    if (trend.change)
        facts.lines.emplace_back("Change of level (Pettitt)",
                                 "after fill " + std::to_string(trend.change->last_before) + ", p " +
                                     decimal_from_double(trend.change->p, 4).text());
    if (trend.summary)
        facts.lines.emplace_back("Middle and spread",
                                 "median " + figure(trend.summary->median, 2) + ", mean " +
                                     figure(trend.summary->mean, 2) + ", sd " + figure(trend.summary->sd, 2) +
                                     (trend.below > 0 ? " (regression on order statistics)" : ""));
    return facts;
}

void add_reasons(Document& text, const QuantityTrend& trend) {
    const auto facts = reasons(trend);
    if (!facts.lines.empty()) text.facts(facts);
    if (trend.test && trend.series.size() == 4)
        text.sentence("Four fills cannot reach a two-sided p under 1 in 12.");
    if (trend.test)
        text.sentence(
            "Rising or falling is said where chance alone would give so clear a series in at most one "
            "case of ten (our line).");
    for (const std::string& note : trend.notes)
        text.sentence(note);
    std::vector<std::string> seen;
    for (const TrendPoint& point : trend.points) {
        if (!point.wear) continue;
        for (const std::string& note : point.wear->notes) {
            if (std::find(seen.begin(), seen.end(), note) == seen.end()) seen.push_back(note);
        }
    }
    for (const std::string& note : seen)
        text.sentence(note);
}

void add_quantity(Document& text, const QuantityTrend& trend, bool why) {
    text.heading(trend.bike + ", " + oil::quantity_name(trend.quantity) + " in the oil of the " +
                 trend.compartment);
    text.sentence(verdict_words(trend), colour_of(trend));
    if (trend.latest_is_unusual())
        text.sentence(
            "The latest fill lies outside the usual scatter of the earlier ones: a confirming sample "
            "tells whether it stays there.",
            Severity::caution);
    text.table(points_table(trend));
    const auto plot = quantity_plot(trend);
    if (!plot::empty(plot)) text.figure(std::make_shared<const plot::Plot>(plot));
    if (trend.below > 0)
        text.sentence(std::to_string(trend.below) + " of " + std::to_string(trend.series.size()) +
                      " fills are below detection; no slope is drawn through a limit.");
    if (why) add_reasons(text, trend);
}

} // namespace

std::string trend_words(const QuantityTrend& trend) {
    const std::string word =
        trend.word == TrendWord::too_few ? "too few to say" : std::string(slug(trend.word));
    if (!trend.latest_is_unusual()) return word;
    return trend.word == TrendWord::steady ? "no trend, but the latest is out of line"
                                           : word + ", the latest out of line";
}

std::string movers_words(const std::vector<const QuantityTrend*>& trends) {
    const std::string rising = named_with(trends, TrendWord::rising);
    const std::string falling = named_with(trends, TrendWord::falling);
    const std::string odd = named_out_of_line(trends);
    if (rising.empty() && falling.empty() && named_with(trends, TrendWord::steady).empty())
        return "Too few fills to say: a trend needs four sampled fills.";
    std::string text;
    if (!rising.empty()) text += "Rising from fill to fill: " + rising + ". ";
    if (!falling.empty()) text += "Falling from fill to fill: " + falling + ". ";
    if (!odd.empty()) text += "Far from the fills before in the latest: " + odd + ". ";
    if (text.empty()) return "Nothing keeps rising or falling from fill to fill.";
    return text +
           "The rest goes up and down no more than chance would have it, or too few fills were sampled.";
}

Document oil_trend_text(const std::vector<QuantityTrend>& trends) {
    Document text;
    if (trends.empty())
        text.sentence(
            "No sample of used oil is recorded. Write one with: sumpbook -g FILE -b BIKE add sample --help");
    for (const auto& group : by_bike(trends)) {
        add_bike(text, group);
        const auto plot = wear_metals_plot(group);
        if (!plot::empty(plot)) text.figure(std::make_shared<const plot::Plot>(plot));
    }
    if (!trends.empty())
        text.sentence("One quantity with all its samples: oil trend --quantity iron. What stands behind a "
                      "word: --why.");
    return text;
}

Document oil_trend_details_text(const std::vector<QuantityTrend>& trends, bool why) {
    Document text;
    if (trends.empty()) return oil_trend_text(trends);
    for (const QuantityTrend& trend : trends)
        add_quantity(text, trend, why);
    return text;
}

} // namespace sumpbook::compose
