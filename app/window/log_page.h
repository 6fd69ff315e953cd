// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/document_view.h"
#include "app/window/page.h"
#include "app/window/table_view.h"
#include "reports/compose/log_selection.h"

#include <QLabel>
#include <QLineEdit>
#include <QSplitter>

#include <vector>

namespace sumpbook::window {

/// Every entry, newest first, those that say what is typed above; beside them all there is to the chosen one.
class LogPage final : public Page {
public:
    explicit LogPage(QWidget* parent = nullptr);
    void show_selection(const Selection& selection) override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void list();
    void show_entry(int row);

    QLineEdit* find_;
    QLabel* count_;
    TableView* table_;
    DocumentView* entry_;
    QSplitter* both_; ///< The entry beside the list, or below it where the window is narrow.
    Selection selection_;
    std::vector<compose::BikeEntry> entries_;
};

} // namespace sumpbook::window
