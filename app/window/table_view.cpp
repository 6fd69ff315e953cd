// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/table_view.h"

#include "app/window/look.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <QToolTip>

#include <algorithm>
#include <numeric>

namespace sumpbook::window {
namespace {

constexpr int least_width_px = 64;
constexpr int row_padding_px = 8;

int total(const std::vector<int>& widths) { return std::accumulate(widths.begin(), widths.end(), 0); }

/// A little air left and right of every cell.
class Airy final : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    QString displayText(const QVariant& value, const QLocale& /*ours is none*/) const override {
        return with_air(value.toString());
    }
};

/// The widest column that is not of numbers; 0 where all are.
std::size_t widest_of_words(const document::Table& table, const std::vector<int>& wished) {
    std::size_t widest = 0;
    for (std::size_t i = 0; i < wished.size(); ++i) {
        const bool words = table.columns[i].align == document::Align::left;
        const bool wider = table.columns[widest].align != document::Align::left || wished[i] > wished[widest];
        if (words && wider) widest = i;
    }
    return widest;
}

std::vector<int> cut_at(std::vector<int> widths, int most) {
    for (int& width : widths)
        width = std::min(width, most);
    return widths;
}

} // namespace

std::vector<int> fitted_widths(const std::vector<int>& wished, int room, int least, std::size_t wide) {
    if (wished.empty()) return {};
    std::vector<int> widths = wished;
    int most = *std::ranges::max_element(widths);
    while (total(widths) > room && most > least)
        widths = cut_at(wished, --most);
    if (total(widths) < room) widths[wide] += room - total(widths);
    return widths;
}

TableView::TableView(const QString& name, QWidget* parent)
    : QTableView(parent)
    , table_(new TableModel(this))
    , rows_(new QSortFilterProxyModel(this)) {
    rows_->setSortRole(TableModel::order_role);
    rows_->setSourceModel(table_);
    setModel(rows_);
    setAccessibleName(name);
    setItemDelegate(new Airy(this));
    setSelectionBehavior(SelectRows);
    setSelectionMode(ExtendedSelection);
    setEditTriggers(NoEditTriggers);
    setShowGrid(false);
    setAlternatingRowColors(true);
    setWordWrap(false);
    setTabKeyNavigation(false);
    setHorizontalScrollMode(ScrollPerPixel);
    verticalHeader()->hide();
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + row_padding_px);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setSortIndicatorShown(true);
    horizontalHeader()->setSortIndicatorClearable(true);
    horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
    setSortingEnabled(true);
}

void TableView::show_table(document::Table table) {
    table_->show(std::move(table));
    wished_.clear();
    for (int column = 0; column < rows_->columnCount(); ++column)
        wished_.push_back(std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column)) +
                          6);
    wide_ = widest_of_words(table_->table(), wished_);
    fit_columns();
}

int TableView::current_row() const {
    const auto index = rows_->mapToSource(currentIndex());
    return index.isValid() ? index.row() : -1;
}

void TableView::on_current_row(std::function<void(int)> told) {
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this, told = std::move(told)](const QModelIndex& now) {
                const auto index = rows_->mapToSource(now);
                told(index.isValid() ? index.row() : -1);
            });
}

void TableView::choose_first() {
    if (rows_->rowCount() > 0) setCurrentIndex(rows_->index(0, 0));
}

int TableView::height_of_all() const {
    return horizontalHeader()->sizeHint().height() +
           rows_->rowCount() * verticalHeader()->defaultSectionSize() + 2 * frameWidth();
}

int TableView::width_of_all() const { return total(wished_) + 2 * frameWidth(); }

void TableView::copy_chosen() const {
    auto chosen = selectionModel()->selectedRows();
    std::ranges::sort(chosen, {}, &QModelIndex::row);
    QStringList lines;
    for (const auto& row : chosen) {
        QStringList cells;
        for (int column = 0; column < rows_->columnCount(); ++column)
            cells << row.siblingAtColumn(column).data().toString();
        lines << cells.join(u'\t');
    }
    if (!lines.isEmpty()) QGuiApplication::clipboard()->setText(lines.join(u'\n'));
}

bool TableView::is_cut(const QModelIndex& index) const {
    return sizeHintForIndex(index).width() > columnWidth(index.column());
}

bool TableView::viewportEvent(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QTableView::viewportEvent(event);
    const auto& help = static_cast<const QHelpEvent&>(*event);
    const auto index = indexAt(help.pos());
    if (!index.isValid() || !is_cut(index)) {
        QToolTip::hideText();
        return true;
    }
    // Escaped inside a paragraph, so that nobody's words are taken for markup.
    QToolTip::showText(help.globalPos(), "<p>" + index.data().toString().toHtmlEscaped() + "</p>", this);
    return true;
}

void TableView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    fit_columns();
}

void TableView::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) return copy_chosen();
    QTableView::keyPressEvent(event);
}

void TableView::fit_columns() {
    const auto widths = fitted_widths(wished_, viewport()->width(), least_width_px, wide_);
    for (std::size_t column = 0; column < widths.size(); ++column)
        setColumnWidth(static_cast<int>(column), widths[column]);
}

} // namespace sumpbook::window
