// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/bike_list.h"
#include "app/window/look.h"
#include "app/window/sort_key.h"
#include "app/window/table_view.h"
#include "reports/plot/palette.h"
#include "tests/app/window/desk_run.h"

#include "tests/catch.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QTest>

using namespace sumpbook;
using namespace sumpbook::window;
using document::Align;
using document::Cell;
using document::Severity;

namespace {

document::Table three_rows() {
    return {{{"State", {}}, {"Done", {}}, {"Odometer", Align::right}},
            {{Cell{"soon", Severity::caution}, Cell{"3 May 2026", {}}, Cell{"1 200 km", {}}},
             {Cell{"overdue", Severity::danger}, Cell{"-", {}}, Cell{"10 000 km", {}}},
             {Cell{"later", Severity::good}, Cell{"12 Apr 2026 at 900 km", {}}, Cell{"900 km", {}}}}};
}

std::vector<std::string> shown_column(const TableView& view, int column) {
    std::vector<std::string> texts;
    for (int row = 0; row < view.model()->rowCount(); ++row)
        texts.push_back(view.model()->index(row, column).data().toString().toStdString());
    return texts;
}

} // namespace

TEST_CASE("A table model shows the cells of the document, with a mark beside each colour", "[window]") {
    start_qt();
    TableModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(three_rows());
    REQUIRE(model.rowCount() == 3);
    REQUIRE(model.columnCount() == 3);
    const auto text = [&](int row, int column) {
        return model.index(row, column).data().toString().toStdString();
    };
    CHECK(text(0, 0) == "▲ soon");
    CHECK(text(1, 0) == "■ overdue");
    CHECK(text(2, 0) == "● later");
    CHECK(text(1, 2) == "10 000 km");
    CHECK(model.headerData(2, Qt::Horizontal, Qt::AccessibleTextRole).toString() == "Odometer");
    CHECK((model.index(0, 2).data(Qt::TextAlignmentRole).toInt() & Qt::AlignRight) != 0);
    CHECK(model.index(1, 0).data(Qt::ForegroundRole).value<QColor>() ==
          text_colour(Severity::danger, render::Theme::light));
    CHECK_FALSE(model.index(1, 1).data(Qt::ForegroundRole).isValid());
    model.show({});
    CHECK(model.rowCount() == 0);
}

TEST_CASE("Rows sort by severity, day and size, and go back to their own order", "[window]") {
    start_qt();
    TableView view("Rows");
    view.show_table(three_rows());
    view.sortByColumn(0, Qt::AscendingOrder);
    CHECK(shown_column(view, 0) == std::vector<std::string>{"■ overdue", "▲ soon", "● later"});
    view.sortByColumn(1, Qt::AscendingOrder);
    CHECK(shown_column(view, 1) == std::vector<std::string>{"12 Apr 2026 at 900 km", "3 May 2026", "-"});
    view.sortByColumn(2, Qt::DescendingOrder);
    CHECK(shown_column(view, 2) == std::vector<std::string>{"10 000 km", "1 200 km", "900 km"});
    view.choose_first();
    CHECK(view.current_row() == 1); // the table's row, not the place shown
    view.sortByColumn(-1, Qt::AscendingOrder);
    CHECK(shown_column(view, 0) == std::vector<std::string>{"▲ soon", "■ overdue", "● later"});
}

TEST_CASE("Text is put in order by the number or day it begins with", "[window]") {
    double number = 0;
    CHECK((leading_number("48 210 km", number) && number == 48210));
    CHECK((leading_number("-1 234.50 EUR", number) && number == -1234.5));
    CHECK((leading_number("in about 12 days", number) && number == 12));
    CHECK((leading_number("2.9 L", number) && number == 2.9));
    CHECK((leading_number("1970-01-03", number) && number == 2));
    CHECK((leading_number("reached 2 Jan 1970", number) && number == 1));
    CHECK((leading_number("12 345", number) && number == 12345));
    CHECK((leading_number("10 12 km", number) && number == 10)); // no thousands
    CHECK_FALSE(leading_number("Chain slack", number));
    CHECK_FALSE(leading_number("", number));
    double two = 0;
    REQUIRE((leading_number("< 2 mg/kg", number) && leading_number("2 mg/kg", two)));
    CHECK(number < two);
    CHECK(sort_key({"-", {}}) > sort_key({"Zinc", {}}));
    CHECK(sort_key({"apple", {}}) < sort_key({"Pear", {}}));
}

TEST_CASE("Rows are copied as lines with tabs", "[window]") {
    start_qt();
    TableView view("Rows");
    view.show_table(three_rows());
    view.selectAll();
    QTest::keyClick(&view, Qt::Key_C, Qt::ControlModifier);
    CHECK(QApplication::clipboard()->text().toStdString() ==
          "▲ soon\t3 May 2026\t1 200 km\n■ overdue\t-\t10 000 km\n● later\t12 Apr 2026 at 900 km\t900 km");
}

TEST_CASE("Columns fit the room there is", "[window]") {
    CHECK(fitted_widths({50, 100, 60}, 300, 40, 1) == std::vector<int>{50, 190, 60});
    CHECK(fitted_widths({50, 400, 300}, 450, 40, 1) == std::vector<int>{50, 200, 200});
    CHECK(fitted_widths({50, 400, 300}, 10, 40, 1) == std::vector<int>{40, 40, 40}); // then it scrolls
    CHECK(fitted_widths({}, 100, 40, 0).empty());
}

TEST_CASE("Text that warns stands out from its ground in both themes", "[window]") {
    // WCAG 2.2, success criterion 1.4.3 (AA): 4.5 to 1 for text.
    for (const auto theme : {render::Theme::light, render::Theme::dark}) {
        const auto palette = palette_of(theme);
        CHECK(theme_of(palette) == theme);
        for (const auto role : {QPalette::Window, QPalette::Base, QPalette::AlternateBase}) {
            for (const auto severity : {Severity::good, Severity::caution, Severity::danger}) {
                INFO(static_cast<int>(theme)
                     << " " << static_cast<int>(role) << " " << static_cast<int>(severity));
                CHECK(contrast_ratio(text_colour(severity, theme), palette.color(role)) >= 4.5);
            }
            CHECK(contrast_ratio(palette.color(QPalette::PlaceholderText), palette.color(role)) >= 4.5);
            CHECK(contrast_ratio(palette.color(QPalette::Text), palette.color(role)) >= 4.5);
        }
        CHECK(contrast_ratio(palette.color(QPalette::HighlightedText), palette.color(QPalette::Highlight)) >=
              4.5);
    }
}

TEST_CASE("What an owner wrote is shown as it is, without what could hide or mislead", "[window]") {
    CHECK(shown("<b>bold</b> & more") == "<b>bold</b> & more");
    CHECK(shown("a\nb\x1B[31m") == QString::fromUtf8("a b\xEF\xBF\xBD[31m"));
    CHECK(marked("■ act", Severity::danger) == QString::fromUtf8("■ act")); // not twice
    CHECK(marked("", Severity::danger).isEmpty());
}

TEST_CASE("A severity has one shape, in lists and in pictures", "[window]") {
    CHECK(mark_of(Severity::good) == "●");
    CHECK(plot::mark(plot::Tone::good) == plot::Mark::circle);
    CHECK(mark_of(Severity::caution) == "▲");
    CHECK(plot::mark(plot::Tone::caution) == plot::Mark::triangle);
    CHECK(mark_of(Severity::danger) == "■");
    CHECK(plot::mark(plot::Tone::danger) == plot::Mark::square);
    for (const auto severity : {Severity::good, Severity::caution, Severity::danger})
        CHECK(severity_of(std::string(mark_of(severity)) + " word") == severity);
    CHECK(severity_of("within") == Severity::none);
}

TEST_CASE("The list of bikes says what each one is and what needs attention", "[window]") {
    start_qt();
    const auto opened = open_garage(example_world(), {.garage_file = example_garage()});
    REQUIRE(opened);
    const auto lines = bike_lines(opened->content->garage, opened->today);
    REQUIRE(lines.size() == 6);
    CHECK(lines[0].name == "All bikes");
    CHECK(lines[0].made == "5 bikes");
    CHECK(lines[0].attention.severity == Severity::danger);
    CHECK(lines[1].name == "Curlew");
    CHECK(lines[1].made == "Wexcombe Curlew 500, 1959");
    CHECK(lines[4].attention.text == "nothing due");
    CHECK(lines[4].attention.severity == Severity::good);
    BikeListModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show(lines);
    CHECK(
        model.index(1, 0).data(Qt::AccessibleTextRole).toString().startsWith("Curlew, Wexcombe Curlew 500"));
}
