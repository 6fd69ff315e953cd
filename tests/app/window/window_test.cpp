// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/document_view.h"
#include "app/window/look.h"
#include "app/window/main_window.h"
#include "app/window/page_documents.h"
#include "app/window/table_view.h"
#include "model/upkeep/due.h"
#include "reports/compose/due.h"
#include "reports/compose/log.h"
#include "tests/app/window/desk_run.h"
#include "tests/sample/garage_run.h"

#include "tests/catch.h"

#include <filesystem>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QTest>

using namespace sumpbook;
using namespace sumpbook::window;

namespace {

std::string text_of(const document::Document& document) {
    std::string text;
    for (const auto& block : document.blocks) {
        if (const auto* heading = std::get_if<document::Heading>(&block)) text += heading->text + "\n";
        if (const auto* sentence = std::get_if<document::Sentence>(&block)) text += sentence->text + "\n";
    }
    return text;
}

/// The text beside a label; empty where there is none.
std::string fact(const document::Document& document, const std::string& label) {
    for (const auto& block : document.blocks) {
        const auto* facts = std::get_if<document::Facts>(&block);
        if (facts == nullptr) continue;
        for (const auto& [name, text] : facts->lines) {
            if (name == label) return text;
        }
    }
    return {};
}

std::size_t figures_in(const document::Document& document) {
    std::size_t figures = 0;
    for (const auto& block : document.blocks)
        figures += std::holds_alternative<document::Figure>(block) ? 1U : 0U;
    return figures;
}

/// Titles of the pictures that a view draws, through the names that are read aloud.
std::vector<std::string> drawn_in(const QWidget& view) {
    std::vector<std::string> names;
    for (const auto* chart : view.findChildren<QWidget*>()) {
        if (chart->inherits("QChartView")) names.push_back(chart->accessibleName().toStdString());
    }
    return names;
}

/// Every picture of the view is shown whole: inside the row that holds it.
bool all_whole_in(const QWidget& view) {
    QApplication::processEvents();
    QApplication::processEvents();
    for (const auto* chart : view.findChildren<QWidget*>()) {
        if (chart->inherits("QChartView") && !chart->parentWidget()->rect().contains(chart->geometry()))
            return false;
    }
    return true;
}

template <class Widget>
Widget& part(const QWidget& window, const char* name) {
    for (auto* widget : window.findChildren<QWidget*>(QString(name))) {
        if (auto* found = dynamic_cast<Widget*>(widget)) return *found;
    }
    throw std::runtime_error(std::string("no ") + name);
}

std::unique_ptr<MainWindow> opened_window(const std::string& path, const std::string& bike = {}) {
    start_qt();
    auto window = std::make_unique<MainWindow>(example_world(), cli::GlobalOptions{.bike = bike});
    window->show();
    window->open(path);
    return window;
}

std::string message_of(const MainWindow& window) {
    return text_of(part<DocumentView>(window, "message").document());
}

bool same_cells(const document::Table& one, const document::Table& other) {
    const auto texts = [](const document::Table& table) {
        std::vector<std::string> all;
        for (const auto& column : table.columns)
            all.push_back(column.heading);
        for (const auto& row : table.rows) {
            for (const auto& cell : row)
                all.push_back(cell.text);
        }
        return all;
    };
    return !one.rows.empty() && texts(one) == texts(other);
}

} // namespace

TEST_CASE("The due page shows the command line's table, why, and the windows", "[window]") {
    const auto window = opened_window(example_garage());
    REQUIRE_FALSE(window->problem());
    const auto opened = open_garage(example_world(), {.garage_file = example_garage()});
    REQUIRE(opened);
    const auto items = upkeep::due_items(selection_of(*opened, 0).bikes, opened->today);
    const auto expected = table_and_rest(compose::due_text(items));
    auto& table = part<TableView>(*window, "due-table");
    REQUIRE(expected.table);
    CHECK(same_cells(table.model_shown().table(), *expected.table));
    CHECK(text_of(part<DocumentView>(*window, "due-why").document()).find(items.front().label) !=
          std::string::npos);
    QTest::keyClick(&table, Qt::Key_Down);
    CHECK(table.current_row() == 1);
    CHECK(text_of(part<DocumentView>(*window, "due-why").document()).find(items[1].label) !=
          std::string::npos);
    CHECK(drawn_in(part<DocumentView>(*window, "due-picture")).size() == 1);
}

TEST_CASE("The due windows of a bike are seen with their days without scrolling", "[window]") {
    for (const auto* bike : {"Curlew", "Meridian", "Fjell", "Ponente"}) {
        const auto window = opened_window(example_garage(), bike);
        window->resize(1280, 800);
        auto& view = part<DocumentView>(*window, "due-picture");
        CAPTURE(bike);
        CHECK(all_whole_in(view));
        CHECK(view.verticalScrollBar()->maximum() == 0);
    }
}

TEST_CASE("The log lists every entry, newest first, finds words and shows an entry whole", "[window]") {
    const auto window = opened_window(example_garage(), "Meridian");
    window->show_page("log");
    auto& table = part<TableView>(*window, "log-table");
    const auto& rows = table.model_shown().table().rows;
    REQUIRE(rows.size() > 400);
    CHECK(rows.front()[1].text > rows.back()[1].text);
    CHECK(part<QLabel>(*window, "log-count").text().toStdString() ==
          std::to_string(rows.size()) + " entries");
    CHECK(text_of(part<DocumentView>(*window, "log-entry").document()).starts_with(rows.front()[0].text));
    CHECK(fact(part<DocumentView>(*window, "log-entry").document(), "Odometer") == rows.front()[2].text);
    CHECK(fact(part<DocumentView>(*window, "log-entry").document(), "Recorded") == "2026-11-15, 12:00 UTC");
    const auto opened = open_garage(example_world(), {.garage_file = example_garage()});
    REQUIRE(opened);
    compose::LogSelection glycol;
    glycol.text = "coolant";
    const auto expected = compose::select(selection_of(*opened, 2).bikes, glycol).size();
    REQUIRE(expected > 0);
    QTest::keyClicks(&part<QLineEdit>(*window, "log-find"), "coolant");
    CHECK(table.model_shown().table().rows.size() == expected);
    QTest::keyClicks(&part<QLineEdit>(*window, "log-find"), "zzz");
    CHECK(table.model_shown().table().rows.empty());
    CHECK(text_of(part<DocumentView>(*window, "log-entry").document()) == "No entry fits.\n");
}

TEST_CASE("In a narrow window the log keeps its columns whole", "[window]") {
    const auto window = opened_window(example_garage(), "Meridian");
    window->show_page("log");
    for (const auto size : {QSize(1000, 700), QSize(1280, 800)}) {
        window->resize(size);
        QApplication::processEvents();
        const auto& table = part<TableView>(*window, "log-table");
        CAPTURE(size.width());
        for (int column = 0; column < 3; ++column) // entry, day, odometer
            CHECK(table.sizeHintForIndex(table.model()->index(0, column)).width() <=
                  table.columnWidth(column));
    }
}

TEST_CASE("The oil page shows the samples and draws the trends of the chosen one's bike", "[window]") {
    const auto window = opened_window(example_garage(), "Curlew");
    window->show_page("oil");
    auto& view = part<DocumentView>(*window, "oil-sample");
    CHECK(text_of(view.document()).find("sample SB-26-0997") != std::string::npos);
    const auto of_curlew = drawn_in(view);
    CHECK(of_curlew.size() == 2);
    CHECK(of_curlew.size() == figures_in(view.document()));
    for (const auto* chart : view.findChildren<QWidget*>()) { // the same numbers for those who listen
        if (!chart->inherits("QChartView")) continue;
        CHECK(chart->accessibleDescription().contains(" at 55 "));
    }
    CHECK(fact(view.document(), "Oil").find("20W-50, 20W-50") == std::string::npos);
    window->choose_bike(2);
    const auto of_meridian = drawn_in(view);
    CHECK(of_meridian.size() == 2);
    CHECK(of_meridian != of_curlew);
    auto& samples = part<TableView>(*window, "oil-table");
    const auto first = text_of(view.document());
    QTest::keyClick(&samples, Qt::Key_Down);
    CHECK(text_of(view.document()) != first);
}

TEST_CASE("The costs page draws what was spent, what will be, and what engines use", "[window]") {
    const auto window = opened_window(example_garage(), "Meridian");
    window->show_page("costs");
    auto& view = part<DocumentView>(*window, "costs");
    CHECK(figures_in(view.document()) >= 4);
    CHECK(drawn_in(view).size() == figures_in(view.document()));
    CHECK(all_whole_in(view));
    CHECK(text_of(view.document()).find("Running costs together") != std::string::npos);
    const auto of_meridian = text_of(view.document());
    window->choose_bike(4);
    CHECK(text_of(view.document()) != of_meridian);
}

TEST_CASE("Pages and bikes are reached with keys", "[window]") {
    const auto window = opened_window(example_garage());
    auto& tabs = part<QTabWidget>(*window, "pages");
    REQUIRE(QTest::qWaitForWindowActive(window.get()));
    for (const auto& [key, page] :
         {std::pair{Qt::Key_3, 2}, {Qt::Key_4, 3}, {Qt::Key_2, 1}, {Qt::Key_1, 0}}) {
        QTest::keyClick(window.get(), key, Qt::ControlModifier);
        CHECK(tabs.currentIndex() == page);
    }
    auto& bikes = part<BikeList>(*window, "bikes");
    CHECK(bikes.hasFocus());
    const auto all = part<TableView>(*window, "due-table").model_shown().rowCount();
    QTest::keyClick(&bikes, Qt::Key_Down);
    const auto one = part<TableView>(*window, "due-table").model_shown().rowCount();
    CHECK(one > 0);
    CHECK(one < all);
    for (const char* name : {"bikes", "due-table", "due-why", "log-table", "log-find", "oil-table", "pages"})
        CHECK_FALSE(part<QWidget>(*window, name).accessibleName().isEmpty());
}

TEST_CASE("What another program saves is shown by itself, with the same bike and page", "[window]") {
    const auto path = scratch("watched.sumpbook");
    std::filesystem::copy_file(example_garage(), path);
    const auto window = opened_window(path, "Fjell");
    window->show_page("log");
    auto& table = part<TableView>(*window, "log-table");
    const auto rows = table.model_shown().table().rows.size();
    cli::Session session(example_world(), {.garage_file = path, .bike = "Fjell"});
    const auto bike = session.one_bike();
    REQUIRE(bike);
    Entry entry{};
    entry.date = example_world().today;
    entry.note = "Heard by the window";
    entry.body = Note{};
    REQUIRE(session.write({{(*bike)->id, entry, {}}}));
    CHECK(QTest::qWaitFor([&] { return table.model_shown().table().rows.size() == rows + 1; }, 5000));
    CHECK(part<QTabWidget>(*window, "pages").currentIndex() == 1);
    const auto& now = table.model_shown().table().rows;
    CHECK(std::ranges::any_of(now, [](const auto& row) {
        return std::ranges::any_of(row, [](const auto& cell) { return cell.text == "Heard by the window"; });
    }));
}

TEST_CASE("A garage that cannot be read says why in the window", "[window]") {
    const auto missing = opened_window(scratch("nowhere.sumpbook"));
    REQUIRE(missing->problem());
    CHECK(missing->problem()->kind == ProblemKind::io);
    CHECK(message_of(*missing).find("The garage cannot be shown") != std::string::npos);

    std::string bytes = sample::bytes_of(example_garage());
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 1);
    sample::write_bytes(scratch("damaged.sumpbook"), bytes);
    const auto damaged = opened_window(scratch("damaged.sumpbook"));
    REQUIRE(damaged->problem());
    CHECK(damaged->problem()->kind == ProblemKind::damaged);
    CHECK(message_of(*damaged).find(damaged->problem()->sentence) != std::string::npos);
    CHECK(message_of(*damaged).find("check") != std::string::npos);
}

TEST_CASE("A garage without bikes says what to do next", "[window]") {
    const auto path = scratch("empty.sumpbook");
    REQUIRE(
        run("XDG_STATE_HOME=" + scratch("state") + " " SUMPBOOK_PROGRAM " new " + path + " --currency EUR")
            .status == 0);
    const auto window = opened_window(path);
    CHECK_FALSE(window->problem());
    CHECK(message_of(*window).find("bike add") != std::string::npos);
    window->open(example_garage()); // and another can be opened in its place
    CHECK(part<TableView>(*window, "due-table").model_shown().rowCount() > 0);
}

TEST_CASE("A document is shown block by block, and nobody's words are read as markup", "[window]") {
    start_qt();
    document::Document text;
    text.heading("A heading", 1)
        .sentence("Look at <a href=\"file:///etc\">this</a>", document::Severity::danger);
    text.table({{{"One", {}}, {"Two", {}}}, {{{"a", {}}, {"b", {}}}}})
        .facts({{{"Odometer", "48 210 km"}, {"Verdict", "● within"}}});
    DocumentView view("A document");
    view.resize(600, 400);
    view.show_document(text);
    std::vector<std::string> labels;
    for (const auto* label : view.findChildren<QLabel*>()) {
        CHECK(label->textFormat() == Qt::PlainText);
        labels.push_back(label->text().toStdString());
    }
    CHECK(labels == std::vector<std::string>{"A heading", "■ Look at <a href=\"file:///etc\">this</a>",
                                             "Odometer", "48 210 km", "Verdict", "● within"});
    const auto* verdict = view.findChildren<QLabel*>().back(); // as green as in tables
    CHECK(verdict->palette().color(QPalette::WindowText) ==
          text_colour(document::Severity::good, render::Theme::light));
    const auto tables = view.findChildren<TableView*>();
    REQUIRE(tables.size() == 1);
    CHECK(tables.front()->model()->index(0, 1).data().toString() == "b");
}
