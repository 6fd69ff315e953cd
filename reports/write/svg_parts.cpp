// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/svg_parts.h"

#include "model/quantity/decimal.h"
#include "reports/plot/mark_shape.h"
#include "reports/plot/palette.h"

#include <array>
#include <cmath>

namespace sumpbook::write {
namespace {

using plot::Hatch;
using plot::Mark;
using plot::Stroke;

std::string attribute(std::string_view name, double number) {
    return " " + std::string(name) + "=\"" + pixels(number) + "\"";
}

std::string polygon(const std::vector<std::pair<double, double>>& corners, const std::string& rest) {
    std::string points;
    for (const auto& [x, y] : corners)
        points += (points.empty() ? "" : " ") + pixels(x) + "," + pixels(y);
    return "<polygon points=\"" + points + "\"" + rest;
}

struct HatchLines {
    Hatch hatch;
    std::string_view name;
    std::string_view path; ///< In a square of 6 by 6.
};

constexpr std::array hatches{
    HatchLines{Hatch::rising, "rising", "M-1,1 L1,-1 M0,6 L6,0 M5,7 L7,5"},
    HatchLines{Hatch::falling, "falling", "M-1,5 L1,7 M0,0 L6,6 M5,-1 L7,1"},
    HatchLines{Hatch::level, "level", "M0,3 L6,3"},
    HatchLines{Hatch::upright, "upright", "M3,0 L3,6"},
    HatchLines{Hatch::crossed, "crossed", "M0,3 L6,3 M3,0 L3,6"},
};

} // namespace

std::string_view tone_name(plot::Tone tone) {
    using plot::Tone;
    switch (tone) {
    case Tone::first:
        return "first";
    case Tone::second:
        return "second";
    case Tone::third:
        return "third";
    case Tone::fourth:
        return "fourth";
    case Tone::fifth:
        return "fifth";
    case Tone::sixth:
        return "sixth";
    case Tone::good:
        return "good";
    case Tone::caution:
        return "caution";
    case Tone::danger:
        return "danger";
    case Tone::muted:
        break;
    }
    return "muted";
}

std::string pixels(double number) {
    if (!std::isfinite(number)) return "0";
    std::string text = decimal_from_double(number, 2).text();
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::string rect(const plot::Box& box, const std::string& classes, const std::string& more) {
    return "<rect" + attribute("x", box.left) + attribute("y", box.top) + attribute("width", box.width) +
           attribute("height", box.height) + (classes.empty() ? "" : " class=\"" + classes + "\"") + more +
           "/>\n";
}

std::string line(double x1, double y1, double x2, double y2, const std::string& classes,
                 const std::string& more) {
    return "<line" + attribute("x1", x1) + attribute("y1", y1) + attribute("x2", x2) + attribute("y2", y2) +
           " class=\"" + classes + "\"" + more + "/>\n";
}

std::string stroke_attributes(Stroke stroke, double width) {
    std::string text = attribute("stroke-width", width);
    if (stroke == Stroke::dashed) text += " stroke-dasharray=\"7 4\"";
    if (stroke == Stroke::dotted) text += " stroke-dasharray=\"1.5 3.5\" stroke-linecap=\"round\"";
    return text;
}

std::string mark(Mark shape, double x, double y, plot::Tone tone, bool hollow) {
    const std::string name(tone_name(tone));
    const std::string rest =
        " class=\"line-" + name + (hollow ? " paper" : " fill-" + name) + "\" stroke-width=\"1.5\"/>\n";
    const double half = plot::mark_px / 2 * plot::mark_share(shape);
    if (shape == Mark::none) return {};
    if (shape == Mark::circle)
        return "<circle" + attribute("cx", x) + attribute("cy", y) + attribute("r", half) + rest;
    std::vector<std::pair<double, double>> places;
    for (const auto& corner : plot::corners(shape))
        places.emplace_back(x + half * corner.x, y + half * corner.y);
    return polygon(places, rest);
}

std::string hatch_name(std::string_view id, plot::Tone tone) {
    for (const auto& lines : hatches) {
        if (lines.hatch == plot::hatch(tone)) return std::string(id) + "-" + std::string(lines.name);
    }
    return {};
}

std::string hatch_patterns(std::string_view id) {
    std::string text;
    for (const auto& lines : hatches) {
        text += "<pattern id=\"" + std::string(id) + "-" + std::string(lines.name) +
                "\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\"><path d=\"" +
                std::string(lines.path) +
                "\" class=\"hatch\" fill=\"none\" stroke-width=\"1.2\"/></pattern>\n";
    }
    return text;
}

} // namespace sumpbook::write
