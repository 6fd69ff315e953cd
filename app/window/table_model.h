// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"

#include <QAbstractTableModel>

#include <vector>

namespace sumpbook::window {

/// A table of a document for a view: the same cells, with marks before the words that have a severity, and
/// their colours from the palette in force.
class TableModel final : public QAbstractTableModel {
public:
    /// Role of the SortKey's place in the order of its column: an integer.
    static constexpr int order_role = Qt::UserRole;

    explicit TableModel(QObject* parent = nullptr);

    /// Takes the place of what was shown. Every row has one cell a column.
    void show(document::Table table);
    [[nodiscard]] const document::Table& table() const { return table_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    document::Table table_;
    std::vector<std::vector<int>> order_; ///< [column][row]: place by SortKey; equal keys share one.
};

} // namespace sumpbook::window
