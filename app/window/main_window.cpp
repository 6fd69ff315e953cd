// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/main_window.h"

#include "app/cli/exit_status.h"
#include "app/window/costs_page.h"
#include "app/window/due_page.h"
#include "app/window/log_page.h"
#include "app/window/look.h"
#include "app/window/messages.h"
#include "app/window/oil_page.h"
#include "model/store/garage_file.h"

#include <QAction>
#include <QApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenuBar>
#include <QPointer>
#include <QSplitter>
#include <QStatusBar>
#include <QTimer>
#include <QVBoxLayout>

#include <algorithm>

namespace sumpbook::window {
namespace {

constexpr int side_px = 220;
constexpr int look_again_ms = 250;
constexpr QSize first_size{1200, 760};

QLabel* plain(QLabel* label) {
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

} // namespace

const std::vector<std::string>& page_names() {
    static const std::vector<std::string> names{"due", "log", "oil", "costs"};
    return names;
}

MainWindow::MainWindow(cli::World world, cli::GlobalOptions options)
    : world_(std::move(world))
    , options_(std::move(options))
    , either_(new QStackedWidget)
    , message_(new DocumentView("Message"))
    , notices_(plain(new QLabel))
    , bikes_(new BikeList)
    , tabs_(new QTabWidget)
    , file_(new QLabel) {
    auto* split = new QSplitter(Qt::Horizontal);
    split->addWidget(bikes_);
    split->addWidget(tabs_);
    split->setSizes({side_px, first_size.width() - side_px});
    split->setStretchFactor(1, 1);
    split->setChildrenCollapsible(false);
    either_->addWidget(message_);
    either_->addWidget(split);
    auto* centre = new QWidget;
    auto* column = new QVBoxLayout(centre);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    notices_->setMargin(8);
    notices_->hide();
    column->addWidget(notices_);
    column->addWidget(either_, 1);
    setCentralWidget(centre);
    message_->setObjectName("message");
    notices_->setObjectName("notices");
    file_->setTextFormat(Qt::PlainText);
    statusBar()->addWidget(file_, 1);
    add_pages();
    add_actions();
    bikes_->on_chosen([this](int row) { choose_bike(row); });
    auto* watch = new QTimer(this);
    connect(watch, &QTimer::timeout, this, [this] { look_again(); });
    watch->start(look_again_ms);
    resize(first_size);
    setWindowTitle("Sumpbook");
    show_message(nothing_open_message());
}

void MainWindow::add_pages() {
    tabs_->setObjectName("pages");
    tabs_->setDocumentMode(true);
    tabs_->setAccessibleName("Pages");
    const auto add = [this](Page* page, const char* title) {
        pages_.push_back(page);
        tabs_->addTab(page, title);
    };
    add(new DuePage, "Due");
    add(new LogPage, "Log");
    add(new OilPage, "Oil");
    add(new CostsPage, "Costs");
    stale_.assign(pages_.size(), true);
    connect(tabs_, &QTabWidget::currentChanged, this, [this] { show_current_page(); });
}

void MainWindow::add_actions() {
    auto* garage = menuBar()->addMenu("&Garage");
    garage->addAction("&Open ...", QKeySequence::Open, this, [this] { ask_for_file(); });
    garage->addAction("&Read again", QKeySequence(Qt::Key_F5), this, [this] {
        if (!options_.garage_file.empty()) open(options_.garage_file);
    });
    garage->addSeparator();
    garage->addAction("&Quit", QKeySequence(Qt::CTRL | Qt::Key_Q), qApp, &QApplication::quit);
    auto* go = menuBar()->addMenu("&Page");
    for (int i = 0; i < tabs_->count(); ++i) {
        const QKeySequence key(QKeyCombination(Qt::ControlModifier, static_cast<Qt::Key>(Qt::Key_1 + i)));
        go->addAction(tabs_->tabText(i), key, this, [this, i] { tabs_->setCurrentIndex(i); });
    }
    go->addSeparator();
    go->addAction("&Bikes", QKeySequence(Qt::CTRL | Qt::Key_B), bikes_, [this] { bikes_->setFocus(); });
}

void MainWindow::ask_for_file() {
    const auto path =
        QFileDialog::getOpenFileName(this, "Open a garage", {}, "Garages (*.sumpbook);;All files (*)");
    if (!path.isEmpty()) open(path.toStdString());
}

void MainWindow::open(const std::string& path) {
    options_.garage_file = path;
    setWindowTitle(shown(path).section(u'/', -1) + " - Sumpbook");
    show_message(reading_message(path));
    message_->repaint(); // stands there while a large garage is read
    selection_ = {};
    stale_.assign(pages_.size(), true);
    auto read = open_garage(world_, options_);
    if (!read) {
        problem_ = read.error();
        return show_message(problem_message(*problem_, path));
    }
    problem_.reset();
    opened_ = std::move(*read);
    show_opened(first_chosen());
}

/// What other programs saved since is shown, with the same bike and page.
void MainWindow::look_again() {
    if (!opened_ || problem_) return;
    const auto file = opened_->session->file();
    if (!file || (*file)->is_as_seen()) return;
    const auto chosen = selection_.bikes.size() == 1 && bikes_->currentIndex().row() > 0
                            ? selection_.bikes.front()->id
                            : SubjectId{};
    const QPointer<QWidget> had_focus = focusWidget(); // what it stands in may be made anew
    selection_ = {};
    stale_.assign(pages_.size(), true);
    auto read = open_garage(world_, options_);
    if (!read) {
        problem_ = read.error();
        return show_message(problem_message(*problem_, options_.garage_file));
    }
    opened_ = std::move(*read);
    const auto& bikes = opened_->content->garage.bikes;
    const auto found = std::ranges::find(bikes, chosen, &Bike::id);
    show_opened(found == bikes.end() ? 0 : static_cast<int>(found - bikes.begin()) + 1);
    if (had_focus) had_focus->setFocus();
}

void MainWindow::show_opened(int row) {
    const Garage& garage = opened_->content->garage;
    file_->setText(shown(options_.garage_file + ", as of " + spelled_text(opened_->today)));
    std::string notices;
    for (const auto& notice : opened_->notices)
        notices += (notices.empty() ? "" : "\n") + notice;
    notices_->setText(QString::fromStdString(notices));
    notices_->setVisible(!notices.empty());
    if (garage.bikes.empty()) return show_message(no_bike_message(options_.garage_file));
    either_->setCurrentIndex(1);
    bikes_->show_lines(bike_lines(garage, opened_->today), row);
    bikes_->setFocus();
}

int MainWindow::first_chosen() const {
    const auto& bikes = opened_->content->garage.bikes;
    const Bike* named = options_.bike.empty() ? nullptr : find_bike(opened_->content->garage, options_.bike);
    return named == nullptr ? 0 : static_cast<int>(named - bikes.data()) + 1;
}

void MainWindow::choose_bike(int row) {
    if (!opened_ || row < 0) return;
    selection_ = selection_of(*opened_, static_cast<std::size_t>(row));
    stale_.assign(pages_.size(), true);
    show_current_page();
}

void MainWindow::show_page(std::string_view name) {
    const auto found = std::ranges::find(page_names(), name);
    if (found != page_names().end()) tabs_->setCurrentIndex(static_cast<int>(found - page_names().begin()));
}

void MainWindow::show_current_page() {
    const auto index = static_cast<std::size_t>(tabs_->currentIndex());
    if (selection_.garage == nullptr || !stale_[index]) return;
    stale_[index] = false;
    pages_[index]->show_selection(selection_);
}

void MainWindow::show_message(document::Document message) {
    message_->show_document(std::move(message));
    either_->setCurrentIndex(0);
}

} // namespace sumpbook::window
