// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/side_labels.h"

#include "reports/plot/labels.h"
#include "reports/plot/palette.h"
#include "reports/plot/text.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::plot {

namespace {

constexpr double gap = 11;
constexpr double most_of_right = 0.30; // of the width
constexpr double most_of_flag = 0.40;  // of the width
constexpr double line_px = 1.25 * font_px;
constexpr double mark_width = mark_px + 5; // of a band, before its word
constexpr double pole_gap = 3;
constexpr int flag_rows = 3;

/// A word that belongs to a height of the area.
struct SideWord {
    Role role;
    std::string text;
    double centre;
    Tone tone;
    double reach = 1; ///< How far from its centre it may stand without a leader.
};

std::string note_of(const Span& span, Size size) {
    constexpr double wide_enough_px = 740; // DESIGN: else the days would have too little
    return span.more.empty() || size.width < wide_enough_px ? span.note : span.note + " " + span.more;
}

std::vector<SideWord> side_words(const Layout& layout, const Plot& plot) {
    std::vector<SideWord> words;
    const auto add = [&](Role role, const std::string& text, std::optional<double> centre, Tone tone) {
        if (!text.empty() && centre) words.push_back({role, text, *centre, tone});
    };
    for (const BandBox& band : layout.bands)
        if (!band.label.empty())
            words.push_back({Role::band, band.label, band.box.centre(), band.tone, band.box.height / 2});
    for (const Rule& rule : plot.rules)
        if (!rule.vertical && layout.y.shows(rule.at))
            add(Role::rule, rule.label, layout.y.px(rule.at), rule.tone);
    for (const Span& span : plot.spans)
        add(Role::note, note_of(span, layout.size), layout.y.px(static_cast<double>(span.category)),
            span.tone);
    return words;
}

std::vector<Wish> wishes_of(const std::vector<SideWord>& words) {
    std::vector<Wish> wishes;
    for (const SideWord& word : words)
        wishes.push_back({word.centre, line_px});
    return wishes;
}

/// Of an upright rule: to the right of its pole, or to the left where the picture ends.
struct FlagWord {
    Flag flag;
    std::string text;
    Tone tone;
};

std::vector<FlagWord> flag_words(const Layout& layout, const Plot& plot) {
    std::vector<FlagWord> words;
    for (const Rule& rule : plot.rules) {
        if (!rule.vertical || rule.label.empty() || !layout.x.shows(rule.at)) continue;
        const double pole = layout.x.px(rule.at).value_or(layout.area.left);
        const std::string text = shortened(rule.label, layout.size.width * most_of_flag, font_px);
        const double width = text_width(text, font_px);
        const bool to_the_right = pole + pole_gap + width <= layout.size.width - gap / 2;
        const double left = to_the_right ? pole + pole_gap : pole - pole_gap - width;
        words.push_back({{pole, left, left + width}, text, rule.tone});
    }
    return words;
}

std::vector<std::optional<int>> rows_of(const std::vector<FlagWord>& words) {
    std::vector<Flag> flags;
    for (const FlagWord& word : words)
        flags.push_back(word.flag);
    return rows_of(flags, flag_rows);
}

} // namespace

double right_labels_width(const Plot& plot, Size size) {
    double widest = 0;
    const auto want = [&](const std::string& text, double indent = 0) {
        widest = std::max(widest, indent + text_width(text, font_px));
    };
    for (const Band& band : plot.bands)
        if (!band.label.empty()) want(band.label, mark_width);
    for (const Rule& rule : plot.rules)
        if (!rule.vertical) want(rule.label);
    for (const Span& span : plot.spans)
        want(note_of(span, size));
    return widest == 0 ? 0 : gap + std::min(widest, size.width * most_of_right);
}

void place_right_labels(Layout& layout, const Plot& plot) {
    std::vector<SideWord> words = side_words(layout, plot);
    // Over the area's corners only where neither flags nor labels of ticks can be.
    const double from =
        layout.area.top - (std::ranges::any_of(plot.rules, &Rule::vertical) ? 0 : line_px / 2);
    const double to = layout.area.bottom() + line_px / 4;
    std::optional<std::vector<double>> centres = pushed_apart(wishes_of(words), from, to);
    while (!centres) {
        layout.dropped.push_back(words.back().text);
        words.pop_back();
        centres = pushed_apart(wishes_of(words), from, to);
    }
    const double left = layout.area.right() + gap;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const SideWord& word = words[i];
        const double centre = (*centres)[i];
        const double indent = word.role == Role::band ? mark_width : 0;
        const std::string text = shortened(word.text, layout.size.width - left - indent - 2, font_px);
        if (text.empty()) {
            layout.dropped.push_back(word.text);
            continue;
        }
        const double width = text_width(text, font_px);
        layout.labels.push_back(
            {word.role, text, {left + indent, centre - line_px / 2, width, line_px}, Anchor::start});
        if (indent > 0)
            layout.keys.push_back({{left, centre - line_px / 2, plot::mark_px, line_px},
                                   Key::Shape::mark,
                                   word.tone,
                                   Stroke::none,
                                   mark(word.tone)});
        if (std::abs(centre - word.centre) > word.reach)
            layout.leaders.push_back({layout.area.right() + 1, word.centre, left - 2, centre, word.tone});
    }
}

double flags_height(const Layout& layout, const Plot& plot) {
    int rows = 0;
    for (const std::optional<int> row : rows_of(flag_words(layout, plot)))
        rows = std::max(rows, row.value_or(flag_rows - 1) + 1);
    return rows * line_px;
}

void place_flags(Layout& layout, const Plot& plot) {
    const std::vector<FlagWord> words = flag_words(layout, plot);
    const std::vector<std::optional<int>> rows = rows_of(words);
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto& [flag, text, tone] = words[i];
        if (!rows[i] || text.empty()) {
            layout.dropped.push_back(text);
            continue;
        }
        const double top = layout.area.top - (*rows[i] + 1) * line_px;
        layout.labels.push_back({Role::rule,
                                 text,
                                 {flag.left, top, flag.right - flag.left, line_px},
                                 flag.left > flag.pole ? Anchor::start : Anchor::end});
        layout.leaders.push_back({flag.pole, layout.area.top, flag.pole, top, tone});
    }
}

} // namespace sumpbook::plot
