// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/due_page.h"

#include "app/window/page_documents.h"
#include "model/upkeep/due.h"
#include "reports/compose/due.h"

#include <QSplitter>
#include <QVBoxLayout>

namespace sumpbook::window {

DuePage::DuePage(QWidget* parent)
    : Page(parent)
    , table_(new TableView("What falls due"))
    , why_(new DocumentView("Why the chosen item is due"))
    , picture_(new DocumentView("Due windows")) {
    auto* below = new QSplitter(Qt::Horizontal);
    below->addWidget(picture_);
    below->addWidget(why_);
    below->setSizes({620, 400});
    auto* all = new QSplitter(Qt::Vertical, this);
    all->addWidget(table_);
    all->addWidget(below);
    all->setSizes({250, 460});
    all->setStretchFactor(0, 1);
    all->setStretchFactor(1, 2);
    all->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(all);
    table_->setObjectName("due-table");
    picture_->setObjectName("due-picture");
    why_->setObjectName("due-why");
    table_->on_current_row([this](int row) { show_item(row); });
}

void DuePage::show_selection(const Selection& selection) {
    items_ = upkeep::due_items(selection.bikes, selection.today);
    auto parts = table_and_rest(compose::due_text(items_));
    table_->setVisible(parts.table.has_value());
    table_->show_table(parts.table.value_or(document::Table{}));
    picture_->show_document(pictures_document(selection, {"due"}));
    why_->show_document(std::move(parts.rest)); // until an item is chosen
    table_->choose_first();
}

void DuePage::show_item(int row) {
    if (row < 0 || static_cast<std::size_t>(row) >= items_.size()) return;
    why_->show_document(compose::due_why_text({items_[static_cast<std::size_t>(row)]}));
}

} // namespace sumpbook::window
