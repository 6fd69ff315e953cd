// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/bike_list.h"
#include "app/window/document_view.h"
#include "app/window/page.h"

#include <QLabel>
#include <QMainWindow>
#include <QStackedWidget>
#include <QTabWidget>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::window {

/// The names of the pages in their order: "due", "log", "oil", "costs".
[[nodiscard]] const std::vector<std::string>& page_names();

/// The window: bikes at the side, one page at a time. It reads a garage and writes nothing; what other programs
/// save is shown within half a second.
class MainWindow final : public QMainWindow {
public:
    /// `options` may name a bike and a day; its garage file is what `open` is given.
    MainWindow(cli::World world, cli::GlobalOptions options);

    /// Reads a garage file and shows it; what keeps it from being read stands in the window as a sentence.
    void open(const std::string& path);
    /// Shows a page by its name; nothing for an unknown one.
    void show_page(std::string_view name);
    /// 0 is all bikes.
    void choose_bike(int row);
    /// Why the garage could not be shown; absent while one is shown.
    [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }

private:
    void add_pages();
    void add_actions();
    void ask_for_file();
    /// `row` of the bikes at the side; 0 is all of them.
    void show_opened(int row);
    void look_again();
    void show_message(document::Document message);
    void show_current_page();
    [[nodiscard]] int first_chosen() const;

    cli::World world_;
    cli::GlobalOptions options_;
    std::optional<Opened> opened_;
    std::optional<Problem> problem_;
    std::vector<Page*> pages_;
    std::vector<bool> stale_; ///< Pages not yet shown for what is chosen now.
    Selection selection_;

    QStackedWidget* either_; ///< The garage, or a message in its place.
    DocumentView* message_;
    QLabel* notices_;
    BikeList* bikes_;
    QTabWidget* tabs_;
    QLabel* file_;
};

} // namespace sumpbook::window
