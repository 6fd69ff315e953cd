// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/document_view.h"

#include "app/window/figure_row.h"
#include "app/window/look.h"
#include "app/window/table_view.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>
#include <QScrollBar>
#include <QVBoxLayout>

namespace sumpbook::window {
namespace {

constexpr int margin_px = 14;
constexpr int gap_px = 8;
constexpr int gap_above_heading_px = 10;

/// Whatever it says is shown as it is, never read as markup.
QLabel* plain_label(const QString& text) {
    auto* label = new QLabel;
    label->setTextFormat(Qt::PlainText);
    label->setText(text);
    label->setWordWrap(true);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    label->setFocusPolicy(Qt::ClickFocus);
    return label;
}

void colour(QLabel& label, const QColor& tone) {
    if (!tone.isValid()) return;
    QPalette palette = label.palette();
    palette.setColor(QPalette::WindowText, tone);
    palette.setColor(QPalette::Text, tone); // what a label on paper is written in
    label.setPalette(palette);
}

QFont heading_font(QFont font, int level) {
    constexpr double larger[] = {1.35, 1.15, 1.0};
    font.setPointSizeF(font.pointSizeF() * larger[std::min(std::max(level, 1), 3) - 1]);
    font.setWeight(QFont::DemiBold);
    return font;
}

/// Adds one block after another to a column of widgets.
class Builder {
public:
    explicit Builder(QVBoxLayout& column)
        : column_(column) {}

    void operator()(const document::Heading& heading) {
        row_ = nullptr;
        if (column_.count() > 0) column_.addSpacing(gap_above_heading_px);
        auto* label = plain_label(shown(heading.text));
        label->setFont(heading_font(label->font(), heading.level));
        column_.addWidget(label);
    }
    void operator()(const document::Sentence& sentence) {
        row_ = nullptr;
        auto* label = plain_label(marked(sentence.text, sentence.severity));
        colour(*label, text_colour(sentence.severity, theme_of(label->palette())));
        column_.addWidget(label);
    }
    void operator()(const document::Facts& facts) {
        row_ = nullptr;
        auto* box = new QWidget;
        auto* grid = new QGridLayout(box);
        grid->setContentsMargins(0, 0, 0, 0);
        grid->setHorizontalSpacing(margin_px);
        grid->setVerticalSpacing(3);
        grid->setColumnStretch(1, 1);
        for (int row = 0; const auto& [name, text] : facts.lines) {
            auto* label = plain_label(shown(name));
            label->setWordWrap(false);
            colour(*label, soft_text(theme_of(label->palette())));
            grid->addWidget(label, row, 0, Qt::AlignTop);
            auto* value = plain_label(shown(text));
            colour(*value, text_colour(severity_of(text), theme_of(value->palette())));
            grid->addWidget(value, row++, 1);
        }
        column_.addWidget(box);
    }
    void operator()(const document::Table& table) {
        row_ = nullptr;
        auto* view = new TableView(QString("Table"));
        view->show_table(table);
        view->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        view->setFixedHeight(view->height_of_all());
        view->setMaximumWidth(view->width_of_all());
        column_.addWidget(view);
    }
    void operator()(const document::Figure& figure) {
        if (row_ == nullptr) column_.addWidget(row_ = new FigureRow);
        row_->add(*figure.plot);
    }

private:
    QVBoxLayout& column_;
    FigureRow* row_ = nullptr; ///< Takes further pictures while they follow one another.
};

} // namespace

QWidget* document_widget(const document::Document& document) {
    auto* page = new QWidget;
    page->setAutoFillBackground(true);
    page->setBackgroundRole(QPalette::Base); // the paper of charts and tables
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(margin_px, margin_px, margin_px, margin_px);
    column->setSpacing(gap_px);
    Builder builder(*column);
    for (const auto& block : document.blocks)
        std::visit(builder, block);
    column->addStretch(1);
    return page;
}

DocumentView::DocumentView(const QString& name, QWidget* parent)
    : QScrollArea(parent) {
    setWidgetResizable(true);
    setFrameShape(NoFrame);
    setAccessibleName(name);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
}

void DocumentView::show_document(document::Document document) {
    document_ = std::move(document);
    build();
    verticalScrollBar()->setValue(0);
}

void DocumentView::build() {
    setWidget(document_widget(document_));
    give_room();
}

void DocumentView::give_room() {
    if (widget() == nullptr) return;
    // Asked one by one: to Qt a class without its macro is a QWidget like any other.
    for (auto* part : widget()->findChildren<QWidget*>()) {
        if (auto* row = dynamic_cast<FigureRow*>(part)) row->set_room(viewport()->height() - 2 * margin_px);
    }
}

void DocumentView::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    give_room();
}

void DocumentView::changeEvent(QEvent* event) {
    QScrollArea::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && widget() != nullptr) build();
}

} // namespace sumpbook::window
