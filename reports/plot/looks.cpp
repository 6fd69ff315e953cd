// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/looks.h"

#include "reports/plot/palette.h"
#include "reports/plot/thin.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::plot {

namespace {

using Sentences = std::vector<std::string>;

/// How a series or a part of stacked bars is seen, for comparing it with the others.
struct Seen {
    std::string whose;
    Tone tone;
    std::string shape; ///< Its marks, strokes or hatch, where they are drawn.
};

std::vector<Seen> seen_series(const Plot& plot, const Layout& layout) {
    std::vector<Seen> all;
    for (const Series& series : plot.series) {
        const DrawnSeries how = drawn(series, layout);
        const bool marks = !how.marks.empty() || !how.hollow_marks.empty();
        if (!marks && how.lines.empty()) continue;
        all.push_back({fmt::format("The series \"{}\"", series.label), series.tone,
                       fmt::format("{} {}", marks ? static_cast<int>(mark(series)) : 0,
                                   how.lines.empty() ? 0 : static_cast<int>(stroke(series)))});
    }
    return all;
}

std::vector<Seen> seen_bars(const Plot& plot) {
    std::vector<Seen> all;
    for (const Bars& bars : plot.bars)
        all.push_back({fmt::format("The bars \"{}\"", bars.label), bars.tone,
                       std::to_string(static_cast<int>(hatch(bars.tone)))});
    return all;
}

/// DESIGN: two blues of the eight Okabe-Ito colours are 17 apart, the nearest two hues of them 29.
bool same_colour(Tone a, Tone b) {
    constexpr double least_difference = 25;
    return std::ranges::any_of(all_backgrounds, [&](Background background) {
        return difference(colour(a, background), colour(b, background)) < least_difference;
    });
}

/// DESIGN: half as bright again is told apart side by side, on light and on dark.
bool same_grey(Tone a, Tone b) {
    constexpr double least_ratio = 1.5;
    return std::ranges::any_of(all_backgrounds, [&](Background background) {
        return contrast_ratio(colour(a, background), colour(b, background)) < least_ratio;
    });
}

/// What can be seen and is neither named nor explained.
void look_at_legend(Sentences& found, const Plot& plot) {
    const bool stretched = std::ranges::any_of(plot.spans, [](const Span& s) { return s.from < s.to; });
    if (stretched && plot.span_label.empty()) found.emplace_back("No word says what the spans stand for.");
    if (!plot.spans.empty() && plot.middle_label.empty())
        found.emplace_back("No word says what the marks of the spans stand for.");
    const auto nameless = [](const auto& part) { return part.label.empty(); };
    const bool several = plot.series.size() + plot.ribbons.size() > 1;
    if (several &&
        (std::ranges::any_of(plot.series, nameless) || std::ranges::any_of(plot.ribbons, nameless)))
        found.emplace_back("A series among several has no name.");
    if (plot.bars.size() > 1 && std::ranges::any_of(plot.bars, nameless))
        found.emplace_back("A part of the bars has no name.");
}

void look_at_looks(Sentences& found, const std::vector<Seen>& all) {
    for (std::size_t i = 0; i < all.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            if (all[i].whose == all[j].whose && all[i].tone == all[j].tone && all[i].shape == all[j].shape)
                continue; // one thing in several parts
            if (same_colour(all[i].tone, all[j].tone))
                found.push_back(fmt::format("{} has the colour of: {}", all[i].whose, all[j].whose));
            if (same_grey(all[i].tone, all[j].tone) && all[i].shape == all[j].shape)
                found.push_back(
                    fmt::format("{} cannot be told in grey from: {}", all[i].whose, all[j].whose));
        }
}

} // namespace

std::vector<std::string> looks_faults(const Plot& plot, const Layout& layout) {
    Sentences found;
    look_at_looks(found, seen_series(plot, layout));
    look_at_looks(found, seen_bars(plot));
    look_at_legend(found, plot);
    return found;
}

} // namespace sumpbook::plot
