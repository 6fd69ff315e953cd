// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/legend.h"

#include "reports/plot/palette.h"
#include "reports/plot/text.h"

#include <algorithm>

namespace sumpbook::plot {

namespace {

constexpr double key_width = 26;
constexpr double key_gap = 6;
constexpr double entry_gap = 18;
constexpr double row_height = 1.5 * font_px;

bool has_hollow(const Plot& plot) {
    return std::ranges::any_of(plot.series, [](const Series& series) {
        return std::ranges::any_of(series.runs,
                                   [](const auto& run) { return std::ranges::any_of(run, &Point::hollow); });
    });
}

} // namespace

std::vector<LegendEntry> legend_entries(const Plot& plot) {
    std::vector<LegendEntry> entries;
    const auto add = [&](const std::string& text, Key key) {
        const auto same = [&](const LegendEntry& entry) {
            return entry.text == text && entry.key.tone == key.tone && entry.key.shape == key.shape;
        };
        if (!text.empty() && std::ranges::none_of(entries, same)) entries.push_back({key, text});
    };
    for (const Bars& bars : plot.bars)
        add(bars.label, {{}, Key::Shape::bar, bars.tone});
    for (std::size_t i = 0; i < plot.series.size(); ++i) {
        const Series& series = plot.series[i];
        add(series.label, {{}, Key::Shape::line, series.tone, stroke(series), mark(series), i});
    }
    for (const Ribbon& ribbon : plot.ribbons)
        add(ribbon.label, {{}, Key::Shape::area, ribbon.tone});
    if (has_hollow(plot))
        add(plot.hollow_label, {{}, Key::Shape::hollow, Tone::muted, Stroke::none, Mark::circle});
    else if (entries.size() == 1)
        entries.clear();
    if (plot.spans.empty()) return entries;
    add(plot.span_label, {{}, Key::Shape::area, Tone::muted});
    add(plot.middle_label, {{}, Key::Shape::mark, Tone::muted, Stroke::none, mark(Tone::muted)});
    return entries;
}

double place_legend(Layout& layout, const std::vector<LegendEntry>& entries, double left, double right,
                    double top) {
    double x = left;
    double y = top;
    for (const LegendEntry& entry : entries) {
        const double room = right - left - key_width - key_gap;
        const std::string text = shortened(entry.text, room, font_px);
        if (text.empty()) {
            layout.dropped.push_back(entry.text);
            continue;
        }
        const double width = text_width(text, font_px);
        if (x > left && x + key_width + key_gap + width > right) {
            x = left;
            y += row_height;
        }
        layout.keys.push_back(entry.key);
        layout.keys.back().box = {x, y, key_width, row_height};
        layout.labels.push_back(
            {Role::legend, text, {x + key_width + key_gap, y, width, row_height}, Anchor::start});
        x += key_width + key_gap + width + entry_gap;
    }
    return entries.empty() ? 0 : y + row_height - top;
}

} // namespace sumpbook::plot
