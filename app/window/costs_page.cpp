// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/costs_page.h"

#include "app/window/page_documents.h"

#include <QVBoxLayout>

namespace sumpbook::window {

CostsPage::CostsPage(QWidget* parent)
    : Page(parent)
    , costs_(new DocumentView("Costs")) {
    costs_->setObjectName("costs");
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(costs_);
}

void CostsPage::show_selection(const Selection& selection) {
    costs_->show_document(costs_document(selection));
}

} // namespace sumpbook::window
