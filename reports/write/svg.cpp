// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/svg.h"

#include "reports/plot/layout.h"
#include "reports/plot/palette.h"
#include "reports/plot/thin.h"
#include "reports/write/markup.h"
#include "reports/write/svg_parts.h"

#include <optional>

namespace sumpbook::write {
namespace {

using plot::Label;
using plot::Layout;
using plot::Plot;
using plot::Tone;

constexpr double picture_width = 760;

std::string tone_class(std::string_view what, Tone tone) {
    return std::string(what) + "-" + std::string(tone_name(tone));
}

struct At {
    double x = 0;
    double y = 0;
};

std::optional<At> place(const Layout& layout, double x, double y) {
    const auto across = layout.x.px(x);
    const auto down = layout.y.px(y);
    if (!across || !down) return std::nullopt;
    return At{*across, *down};
}

/// Draws one picture, in the order that the layout asks for.
class Drawing {
public:
    Drawing(const Plot& plot, std::string_view id)
        : plot_(plot)
        , id_(id)
        , layout_(plot::lay_out(plot, {picture_width, plot::good_height(plot, picture_width)})) {}

    [[nodiscard]] std::string text() {
        begin();
        add_ground();
        add_data();
        for (const auto& leader : layout_.leaders)
            out_ +=
                line(leader.from_x, leader.from_y, leader.to_x, leader.to_y, tone_class("line", leader.tone));
        for (const auto& key : layout_.keys)
            add_key(key);
        for (const auto& label : layout_.labels)
            add_label(label);
        return std::move(out_) + "</svg>\n";
    }

private:
    void begin() {
        out_ = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"plot\" id=\"" + id_ + "\" viewBox=\"0 0 " +
               pixels(layout_.size.width) + " " + pixels(layout_.size.height) +
               "\" role=\"img\" aria-labelledby=\"" + id_ + "-title " + id_ + "-desc\">\n";
        out_ += "<title id=\"" + id_ + "-title\">" + markup(plot_.title) + "</title>\n";
        out_ += "<desc id=\"" + id_ + "-desc\">" + markup(plot_.description) + "</desc>\n";
        out_ += "<defs>\n<clipPath id=\"" + id_ + "-area\">" + rect(layout_.area, "") + "</clipPath>\n" +
                (plot_.bars.empty() ? "" : hatch_patterns(id_)) + "</defs>\n";
    }

    void add_ground() {
        for (const auto& band : layout_.bands) {
            out_ += rect(band.box, tone_class("band", band.tone));
            out_ += rect(band.strip, tone_class("fill", band.tone));
        }
        add_band_edges();
        const auto& area = layout_.area;
        for (const auto& tick : layout_.y_ticks) {
            const auto y = layout_.y.px(tick.at);
            if (y && layout_.y.kind() != plot::AxisKind::category)
                out_ += line(area.left, *y, area.right(), *y, "grid");
        }
        for (const auto& tick : layout_.x_ticks) {
            const auto x = layout_.x.px(tick.at);
            if (x && layout_.x.kind() != plot::AxisKind::category)
                out_ += line(*x, area.top, *x, area.bottom(), "grid");
        }
        out_ += line(area.left, area.bottom(), area.right(), area.bottom(), "frame");
        out_ += line(area.left, area.top, area.left, area.bottom(), "frame");
    }

    /// Where one band ends and the next begins, also in grey.
    void add_band_edges() {
        for (const auto& band : layout_.bands) {
            for (const double y : {band.box.top, band.box.bottom()}) {
                if (y > layout_.area.top + 1 && y < layout_.area.bottom() - 1)
                    out_ += line(band.box.left, y, band.strip.right(), y, "frame");
            }
        }
    }

    void add_data() {
        out_ += "<g clip-path=\"url(#" + id_ + "-area)\">\n";
        for (const auto& rule : plot_.rules)
            add_rule(rule);
        for (const auto& ribbon : plot_.ribbons)
            add_ribbon(ribbon);
        out_ += "</g>\n";
        for (const auto& bar : layout_.bars)
            add_bar(bar.box, bar.tone);
        for (const auto& span : layout_.spans)
            add_span(span);
        for (const auto& series : plot_.series)
            add_series(series);
    }

    void add_rule(const plot::Rule& rule) {
        const auto& area = layout_.area;
        const auto at = rule.vertical ? layout_.x.px(rule.at) : layout_.y.px(rule.at);
        if (!at) return;
        const auto how = stroke_attributes(rule.stroke, 1.5);
        const auto classes = tone_class("line", rule.tone);
        out_ += rule.vertical ? line(*at, area.top, *at, area.bottom(), classes, how)
                              : line(area.left, *at, area.right(), *at, classes, how);
    }

    void add_ribbon(const plot::Ribbon& ribbon) {
        std::string there;
        std::string back;
        for (const auto& point : ribbon.points) {
            const auto high = place(layout_, point.x, point.high);
            const auto low = place(layout_, point.x, point.low);
            if (!high || !low) continue;
            there += (there.empty() ? "" : " ") + pixels(high->x) + "," + pixels(high->y);
            back = " " + pixels(low->x) + "," + pixels(low->y) + back;
        }
        if (!there.empty())
            out_ += "<polygon points=\"" + there + back + "\" class=\"" + tone_class("ribbon", ribbon.tone) +
                    " " + tone_class("line", ribbon.tone) + "\" stroke-width=\"0.75\"/>\n";
    }

    void add_bar(const plot::Box& box, Tone tone) {
        out_ += rect(box, tone_class("fill", tone));
        if (const auto hatch = hatch_name(id_, tone); !hatch.empty())
            out_ += rect(box, "", " fill=\"url(#" + hatch + ")\"");
    }

    void add_span(const plot::SpanBox& span) {
        out_ += rect(span.box, tone_class("ribbon", span.tone) + " " + tone_class("line", span.tone),
                     " rx=\"3\"" + stroke_attributes(plot::Stroke::solid, 1));
        if (span.before) {
            std::string points;
            for (const auto& [x, y] : span.arrow())
                points += (points.empty() ? "" : " ") + pixels(x) + "," + pixels(y);
            out_ += "<polyline points=\"" + points + "\" fill=\"none\" class=\"" +
                    tone_class("line", span.tone) + "\"" + stroke_attributes(plot::Stroke::solid, 2) + "/>\n";
        }
        out_ += mark(plot::mark(span.tone), span.middle, span.box.centre(), span.tone, false);
    }

    void add_series(const plot::Series& series) {
        const auto drawn = plot::drawn(series, layout_);
        const auto stroke = plot::stroke(series);
        if (stroke != plot::Stroke::none) {
            for (const auto& points : drawn.lines)
                add_line(points, series.tone, stroke_attributes(stroke, drawn.line_px));
        }
        auto shape = plot::mark(series);
        if (shape == plot::Mark::none) shape = plot::mark(series.tone); // of points that stand alone
        add_marks(drawn.marks, shape, series.tone, false);
        add_marks(drawn.hollow_marks, shape, series.tone, true);
    }

    void add_marks(const std::vector<plot::Point>& points, plot::Mark shape, Tone tone, bool hollow) {
        for (const auto& point : points) {
            const bool shows = layout_.x.shows(point.x) && layout_.y.shows(point.y);
            const auto at = place(layout_, point.x, point.y);
            if (shows && at) out_ += mark(shape, at->x, at->y, tone, hollow);
        }
    }

    void add_line(const std::vector<plot::Point>& line_of_points, Tone tone, const std::string& how) {
        std::string points;
        for (const auto& point : line_of_points) {
            if (const auto at = place(layout_, point.x, point.y))
                points += (points.empty() ? "" : " ") + pixels(at->x) + "," + pixels(at->y);
        }
        out_ += "<polyline points=\"" + points + "\" fill=\"none\" class=\"" + tone_class("line", tone) +
                "\" clip-path=\"url(#" + id_ + "-area)\" stroke-linejoin=\"round\"" + how + "/>\n";
    }

    void add_key(const plot::Key& key) {
        const auto& box = key.box;
        switch (key.shape) {
        case plot::Key::Shape::line:
            if (key.stroke != plot::Stroke::none)
                out_ += line(box.left, box.centre(), box.right(), box.centre(), tone_class("line", key.tone),
                             stroke_attributes(key.stroke, 2));
            out_ += mark(key.mark, box.middle(), box.centre(), key.tone, false);
            break;
        case plot::Key::Shape::area:
            out_ += rect({box.left, box.centre() - 5, box.width, 10},
                         tone_class("ribbon", key.tone) + " " + tone_class("line", key.tone),
                         stroke_attributes(plot::Stroke::solid, 1));
            break;
        case plot::Key::Shape::bar:
            add_bar(box, key.tone);
            break;
        case plot::Key::Shape::mark:
            out_ += mark(key.mark, box.middle(), box.centre(), key.tone, false);
            break;
        case plot::Key::Shape::hollow:
            out_ += mark(key.mark == plot::Mark::none ? plot::Mark::circle : key.mark, box.middle(),
                         box.centre(), key.tone, true);
            break;
        }
    }

    void add_label(const Label& label) {
        constexpr std::string_view anchors[] = {"start", "middle", "end"};
        const bool soft = label.role == plot::Role::x_tick || label.role == plot::Role::y_tick ||
                          label.role == plot::Role::axis_title;
        out_ += "<text x=\"" + pixels(label.x()) + "\" y=\"" + pixels(label.baseline()) + "\" font-size=\"" +
                pixels(label.font_px) + "\" text-anchor=\"" +
                std::string(anchors[static_cast<std::size_t>(label.anchor)]) + "\" class=\"" +
                (soft ? "soft" : "text") + "\"" + (label.bold ? " font-weight=\"600\"" : "") + ">" +
                markup(label.text) + "</text>\n";
    }

    const Plot& plot_;
    std::string id_;
    Layout layout_;
    std::string out_;
};

} // namespace

std::string svg(const Plot& plot, std::string_view id) { return Drawing(plot, id).text(); }

} // namespace sumpbook::write
