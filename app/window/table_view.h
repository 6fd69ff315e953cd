// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/table_model.h"

#include <QSortFilterProxyModel>
#include <QTableView>

#include <functional>
#include <vector>

namespace sumpbook::window {

/// Shows a table of a document: sorted by a click on a heading, rows copied with Ctrl+C as lines with tabs,
/// columns as wide as their words while there is room, and the whole of a cut cell as a tip.
class TableView final : public QTableView {
public:
    explicit TableView(const QString& name, QWidget* parent = nullptr);

    /// The rows stand in the table's own order until a heading is clicked.
    void show_table(document::Table table);
    /// Called with the table's row whenever another becomes current; -1 for none.
    void on_current_row(std::function<void(int)> told);
    [[nodiscard]] const TableModel& model_shown() const { return *table_; }
    /// The row of the table that is current, whatever the order shown; -1 for none.
    [[nodiscard]] int current_row() const;
    /// Makes the first row shown current; nothing where there is none.
    void choose_first();
    /// The height that shows all rows without a scroll bar.
    [[nodiscard]] int height_of_all() const;
    /// The width that shows all words uncut.
    [[nodiscard]] int width_of_all() const;
    void copy_chosen() const;

protected:
    bool viewportEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void fit_columns();
    [[nodiscard]] bool is_cut(const QModelIndex& index) const;

    TableModel* table_;
    QSortFilterProxyModel* rows_; ///< In the order that was asked for.
    std::vector<int> wished_;     ///< Width of each column's words.
    std::size_t wide_ = 0;        ///< The column that takes what room is left: the widest of words.
};

/// Widths that fit `room`: as wished where there is room, else the widest are cut alike, none below
/// `least`; what is left over goes to the column `wide`. All in pixels.
[[nodiscard]] std::vector<int> fitted_widths(const std::vector<int>& wished, int room, int least,
                                             std::size_t wide);

} // namespace sumpbook::window
