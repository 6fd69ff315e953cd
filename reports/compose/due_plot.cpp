// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/due_plot.h"

#include <algorithm>
#include <set>

namespace sumpbook::compose {
namespace {

using upkeep::DueItem;
using upkeep::DueState;

plot::Tone tone_of(DueState state) {
    switch (state) {
    case DueState::overdue:
        return plot::Tone::danger;
    case DueState::due:
    case DueState::soon:
        return plot::Tone::caution;
    case DueState::later:
        return plot::Tone::good;
    case DueState::unknown:
        break;
    }
    return plot::Tone::muted;
}

/// What was due long ago does not press the days to come together: the axis begins so many months before
/// today, and words say since when. DESIGN.
constexpr int months_back = 6;

std::string since_when(const DueItem& item, const Date& axis_begins) {
    if (*item.date_p50 >= axis_begins) return {};
    const std::string day = spelled_text(*item.date_p50); // "3 Mar 2024"
    return "since " + day.substr(day.find(' ') + 1);
}

plot::Span span_of(const DueItem& item, std::size_t category, const Date& axis_begins) {
    const Date middle = *item.date_p50;
    return {.category = category,
            .from = plot::day_position(std::min(middle, item.date_p10.value_or(middle))),
            .middle = plot::day_position(middle),
            .to = plot::day_position(std::max(middle, item.date_p90.value_or(middle))),
            .tone = tone_of(item.state),
            .note = std::string(slug(item.state)),
            .more = since_when(item, axis_begins)};
}

/// "Curlew", "5 bikes".
std::string whose(const std::vector<DueItem>& items) {
    std::set<std::string> bikes;
    for (const auto& item : items)
        bikes.insert(item.bike);
    return bikes.size() == 1 ? *bikes.begin() : std::to_string(bikes.size()) + " bikes";
}

} // namespace

plot::Plot due_plot(const std::vector<DueItem>& items, const Date& today) {
    const bool several =
        std::ranges::any_of(items, [&](const DueItem& item) { return item.bike != items.front().bike; });
    plot::Plot picture;
    picture.title = "What falls due on " + whose(items) + ", and when";
    picture.x = {
        .kind = plot::AxisKind::date, .title = "Day it falls due", .from = {}, .to = {}, .categories = {}};
    const Date axis_begins = plus_months(today, -months_back);
    picture.y.kind = plot::AxisKind::category;
    std::string left_out;
    for (const auto& item : items) {
        const std::string name = several ? item.bike + ": " + item.label : item.label;
        if (!item.date_p50) {
            left_out += (left_out.empty() ? "" : ", ") + name;
            continue;
        }
        picture.spans.push_back(span_of(item, picture.y.categories.size(), axis_begins));
        picture.y.categories.push_back(name);
    }
    if (std::ranges::any_of(items, [&](const DueItem& i) { return i.date_p50 && *i.date_p50 < axis_begins; }))
        picture.x.from = plot::day_position(axis_begins);
    picture.span_label = "8 of 10 cases within";
    picture.middle_label = "even chances, or a fixed day";
    picture.rules.push_back({.label = "today", .at = plot::day_position(today), .vertical = true});
    picture.description =
        "Each item from the day it falls due with one chance in ten to the day with nine in "
        "ten, the mark at even chances; a line at today.";
    if (!left_out.empty()) picture.description += " Without a day: " + left_out + ".";
    return picture;
}

} // namespace sumpbook::compose
