// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/table_model.h"

#include "app/window/look.h"
#include "app/window/sort_key.h"

#include <QGuiApplication>

#include <algorithm>
#include <numeric>

namespace sumpbook::window {

using document::Align;
using document::Cell;
using document::Severity;

namespace {

/// The place of every row by the key of one column.
std::vector<int> order_of(const document::Table& table, std::size_t column) {
    std::vector<SortKey> keys;
    keys.reserve(table.rows.size());
    for (const auto& row : table.rows)
        keys.push_back(sort_key(row[column]));
    std::vector<std::size_t> rows(keys.size());
    std::iota(rows.begin(), rows.end(), std::size_t{0});
    std::ranges::stable_sort(rows, [&](auto a, auto b) { return keys[a] < keys[b]; });
    std::vector<int> places(keys.size());
    int place = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i != 0 && keys[rows[i - 1]] < keys[rows[i]]) ++place;
        places[rows[i]] = place;
    }
    return places;
}

int alignment(Align align) {
    const Qt::Alignment side = align == Align::right ? Qt::AlignRight : Qt::AlignLeft;
    return static_cast<int>((side | Qt::AlignVCenter).toInt());
}

QVariant colour(Severity severity) {
    if (severity == Severity::none) return {};
    return text_colour(severity, theme_of(QGuiApplication::palette()));
}

} // namespace

TableModel::TableModel(QObject* parent)
    : QAbstractTableModel(parent) {}

void TableModel::show(document::Table table) {
    beginResetModel();
    table_ = std::move(table);
    order_.clear();
    for (std::size_t column = 0; column < table_.columns.size(); ++column)
        order_.push_back(order_of(table_, column));
    endResetModel();
}

int TableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(table_.rows.size());
}

int TableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(table_.columns.size());
}

QVariant TableModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const auto row = static_cast<std::size_t>(index.row());
    const auto column = static_cast<std::size_t>(index.column());
    const Cell& cell = table_.rows[row][column];
    switch (role) {
    case Qt::DisplayRole:
        return marked(cell.text, cell.severity);
    case Qt::TextAlignmentRole:
        return alignment(table_.columns[column].align);
    case Qt::ForegroundRole:
        return colour(cell.severity);
    case order_role:
        return order_[column][row];
    default:
        return {};
    }
}

QVariant TableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
    const auto& column = table_.columns[static_cast<std::size_t>(section)];
    if (role == Qt::DisplayRole) return with_air(shown(column.heading));
    if (role == Qt::AccessibleTextRole) return shown(column.heading);
    if (role == Qt::TextAlignmentRole) return alignment(column.align);
    return {};
}

} // namespace sumpbook::window
