// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/chart.h"

#include "reports/plot/layout.h"
#include "tests/catch.h"
#include "tests/reports/render/drawn_faults.h"
#include "tests/reports/render/gallery.h"

#include <QGraphicsScene>
#include <QGraphicsSimpleTextItem>
#include <QLineSeries>
#include <QLogValueAxis>
#include <QScatterSeries>
#include <QStackedBarSeries>
#include <QValueAxis>

using namespace sumpbook;
using render::Theme;
using Faults = std::vector<std::string>;

namespace {

std::unique_ptr<QChart> drawn(const plot::Plot& picture, Theme theme = Theme::light, double width = 720) {
    return std::unique_ptr<QChart>(render::chart(picture, theme, {width, plot::good_height(picture, width)}));
}

plot::Plot picture_named(const std::string& name) {
    for (const auto& [own_name, picture] : gallery::pictures())
        if (own_name == name) return picture;
    throw std::logic_error("no picture " + name);
}

bool names(const Faults& faults, const std::string& part) {
    return std::ranges::any_of(
        faults, [&](const std::string& fault) { return fault.find(part) != std::string::npos; });
}

template <class Series>
std::vector<const Series*> all(const QChart& chart) {
    std::vector<const Series*> found;
    for (const QAbstractSeries* series : chart.series())
        if (const auto* own = dynamic_cast<const Series*>(series)) found.push_back(own);
    return found;
}

} // namespace

TEST_CASE("Every picture of the gallery is drawn without a fault, on light and dark", "[window][chart]") {
    for (const auto& [name, picture] : gallery::pictures())
        for (const Theme theme : {Theme::light, Theme::dark})
            for (const double width : {560.0, 720.0}) {
                CAPTURE(name, width, theme == Theme::dark);
                CHECK(test::drawn_faults(*drawn(picture, theme, width)) == Faults{});
            }
}

TEST_CASE("A chart without data is found", "[window][chart]") {
    plot::Plot picture = picture_named("detection");
    for (plot::Series& series : picture.series)
        series.runs.clear();
    CHECK(names(test::drawn_faults(*drawn(picture)), "no data"));
    QChart bare;
    bare.resize(300, 200);
    CHECK(names(test::drawn_faults(bare), "no data"));
}

TEST_CASE("A blank logarithmic axis is found, and ours is not blank", "[window][chart]") {
    QChart chart; // Qt's own logarithmic axis goes blank over a single zero
    auto* line = new QLineSeries;
    line->setName("iron");
    line->append({{1, 5}, {2, 0}, {3, 20}});
    chart.addSeries(line);
    auto* across = new QValueAxis;
    auto* up = new QLogValueAxis;
    chart.addAxis(across, Qt::AlignBottom);
    chart.addAxis(up, Qt::AlignLeft);
    line->attachAxis(across);
    line->attachAxis(up);
    chart.legend()->hide();
    chart.resize(400, 300);
    CHECK(names(test::drawn_faults(chart), "nothing is seen of the series iron"));

    plot::Plot picture = picture_named("logarithmic");
    picture.series[0].runs[0][2].y = 0;
    const auto ours = drawn(picture);
    CHECK(test::drawn_faults(*ours) == Faults{});
    // The line ends before the value that has no place and goes on behind it.
    CHECK(all<QLineSeries>(*ours).size() == picture.series.size() + 1);
}

TEST_CASE("Texts that lie on each other or leave the chart are found", "[window][chart]") {
    const auto chart = drawn(picture_named("iron"));
    QGraphicsSimpleTextItem over("right on the title", chart.get());
    over.setPos(12, 8);
    CHECK(names(test::drawn_faults(*chart), "lies on"));
    over.setPos(700, 380);
    CHECK(names(test::drawn_faults(*chart), "leaves the chart"));
    over.hide();
    CHECK(test::drawn_faults(*chart) == Faults{});
}

TEST_CASE("Runs are lines of their own, hollow marks have a hole", "[window][chart]") {
    const plot::Plot picture = picture_named("detection");
    const auto chart = drawn(picture);
    CHECK(all<QLineSeries>(*chart).size() == 3); // the second run of lead is a lone point
    int hollow = 0;
    for (const QScatterSeries* marks : all<QScatterSeries>(*chart))
        if (marks->brush().color() == render::qcolor(plot::surface(plot::Background::light).paper))
            hollow += static_cast<int>(marks->count());
    CHECK(hollow == 4);
    CHECK(all<QLineSeries>(*drawn(picture_named("tankfuls"))).size() == 4);
}

TEST_CASE("Qt Charts puts points and bars where the layout puts them", "[window][chart]") {
    for (const std::string name : {"iron", "logarithmic", "forecast", "viscosity"}) {
        const plot::Plot picture = picture_named(name);
        const auto chart = drawn(picture);
        QGraphicsScene scene;
        scene.addItem(chart.get());
        const plot::Layout layout = plot::lay_out(picture, {chart->size().width(), chart->size().height()});
        CAPTURE(name);
        CHECK(chart->plotArea().left() == Approx(layout.area.left));
        CHECK(chart->plotArea().bottom() == Approx(layout.area.bottom()));
        const plot::Point& point = picture.series[0].runs[0][1];
        QLineSeries* const line = [&] {
            for (QAbstractSeries* series : chart->series())
                if (auto* own = dynamic_cast<QLineSeries*>(series)) return own;
            return static_cast<QLineSeries*>(nullptr);
        }();
        REQUIRE(line != nullptr);
        const QPointF place = chart->mapToPosition(line->at(1), line);
        CHECK(place.x() == Approx(layout.x.px(point.x).value()).margin(0.01));
        CHECK(place.y() == Approx(layout.y.px(point.y).value()).margin(0.01));
        scene.removeItem(chart.get());
    }
    const auto bars = all<QStackedBarSeries>(*drawn(picture_named("spending")));
    CHECK(bars.size() == 1);
}

TEST_CASE("A resized chart is laid out anew", "[window][chart]") {
    const auto chart = drawn(picture_named("crowded"));
    for (const QSizeF size : {QSizeF(1200, 700), QSizeF(560, 420), QSizeF(720, 405)}) {
        chart->resize(size);
        CHECK(test::drawn_faults(*chart) == Faults{});
        CHECK(chart->plotArea().right() <= size.width());
    }
}
