// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/bike_list.h"

#include "app/window/look.h"
#include "model/upkeep/due.h"
#include "reports/compose/made_words.h"

#include <QPainter>
#include <QStyledItemDelegate>

#include <algorithm>

namespace sumpbook::window {
namespace {

using document::Cell;
using document::Severity;
using upkeep::DueState;

constexpr int inner_px = 8;
constexpr int line_gap_px = 2;

/// "2 overdue, 1 due".
Cell attention_of(const std::vector<upkeep::DueItem>& items) {
    const auto overdue = std::ranges::count(items, DueState::overdue, &upkeep::DueItem::state);
    const auto due = std::ranges::count(items, DueState::due, &upkeep::DueItem::state);
    if (items.empty()) return {"nothing planned", Severity::none};
    if (overdue == 0 && due == 0) return {"nothing due", Severity::good};
    std::string text;
    if (overdue != 0) text = std::to_string(overdue) + " overdue";
    if (due != 0) text += (text.empty() ? "" : ", ") + std::to_string(due) + " due";
    return {text, overdue != 0 ? Severity::danger : Severity::caution};
}

/// Three lines: the name, what it is, and what needs attention in its colour beside its mark.
class BikePainter final : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& /*index*/) const override {
        return {160, 3 * option.fontMetrics.height() + 2 * line_gap_px + 2 * inner_px};
    }
    void paint(QPainter* painter, const QStyleOptionViewItem& given,
               const QModelIndex& index) const override {
        QStyleOptionViewItem option = given;
        initStyleOption(&option, index);
        option.text.clear();
        const QWidget* widget = option.widget;
        widget->style()->drawControl(QStyle::CE_ItemViewItem, &option, painter, widget);
        const bool chosen = option.state.testFlag(QStyle::State_Selected);
        const auto role = chosen ? QPalette::HighlightedText : QPalette::Text;
        const QColor text = option.palette.color(role);
        const auto severity = static_cast<Severity>(index.data(BikeListModel::severity_role).toInt());
        const QColor tone = text_colour(severity, theme_of(option.palette));
        QFont strong = option.font;
        strong.setWeight(QFont::DemiBold);
        QRect line = option.rect.adjusted(inner_px, inner_px, -inner_px, 0);
        line.setHeight(option.fontMetrics.height());
        write(*painter, line, strong, text, index.data(BikeListModel::name_role).toString());
        const QColor muted = soft_text(theme_of(option.palette));
        write(*painter, line, option.font, chosen ? text : muted,
              index.data(BikeListModel::made_role).toString());
        write(*painter, line, option.font, chosen || !tone.isValid() ? text : tone,
              index.data(BikeListModel::attention_role).toString());
    }

private:
    static void write(QPainter& painter, QRect& line, const QFont& font, const QColor& colour,
                      const QString& text) {
        painter.setFont(font);
        painter.setPen(colour);
        const auto fits = QFontMetrics(font).elidedText(text, Qt::ElideRight, line.width());
        painter.drawText(line, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, fits);
        line.translate(0, line.height() + line_gap_px);
    }
};

} // namespace

std::vector<BikeLine> bike_lines(const Garage& garage, const Date& today) {
    std::vector<BikeLine> lines;
    std::vector<upkeep::DueItem> all;
    for (const auto& bike : garage.bikes) {
        const auto items = upkeep::due_items({&bike}, today);
        const auto& details = bike.details.value;
        lines.push_back({details.name, compose::made_words(details),
                         details.sold ? Cell{"sold", Severity::none} : attention_of(items)});
        all.insert(all.end(), items.begin(), items.end());
    }
    const auto count = garage.bikes.size();
    BikeLine every{"All bikes", std::to_string(count) + (count == 1 ? " bike" : " bikes"), attention_of(all)};
    lines.insert(lines.begin(), std::move(every));
    return lines;
}

void BikeListModel::show(std::vector<BikeLine> lines) {
    beginResetModel();
    lines_ = std::move(lines);
    endResetModel();
}

int BikeListModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}

QVariant BikeListModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const auto& line = lines_[static_cast<std::size_t>(index.row())];
    const QString attention = marked(line.attention.text, line.attention.severity);
    switch (role) {
    case Qt::DisplayRole:
    case Qt::AccessibleTextRole:
        return QString(shown(line.name) + ", " + shown(line.made) + ", " + shown(line.attention.text));
    case name_role:
        return shown(line.name);
    case made_role:
        return shown(line.made);
    case attention_role:
        return attention;
    case severity_role:
        return static_cast<int>(line.attention.severity);
    default:
        return {};
    }
}

BikeList::BikeList(QWidget* parent)
    : QListView(parent)
    , lines_(new BikeListModel(this)) {
    setModel(lines_);
    setItemDelegate(new BikePainter(this));
    setObjectName("bikes");
    setAccessibleName("Bikes");
    setEditTriggers(NoEditTriggers);
    setUniformItemSizes(true);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

void BikeList::show_lines(std::vector<BikeLine> lines, int chosen_row) {
    lines_->show(std::move(lines));
    setCurrentIndex(lines_->index(std::clamp(chosen_row, 0, std::max(0, lines_->rowCount() - 1))));
}

void BikeList::on_chosen(std::function<void(int)> told) {
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this,
            [told = std::move(told)](const QModelIndex& now) {
                if (now.isValid()) told(now.row());
            });
}

} // namespace sumpbook::window
