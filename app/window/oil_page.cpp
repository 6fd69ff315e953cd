// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/oil_page.h"

#include <QSplitter>
#include <QVBoxLayout>

namespace sumpbook::window {

OilPage::OilPage(QWidget* parent)
    : Page(parent)
    , samples_(new TableView("Oil samples"))
    , sample_(new DocumentView("The chosen sample")) {
    auto* both = new QSplitter(Qt::Vertical);
    both->addWidget(samples_);
    both->addWidget(sample_);
    both->setSizes({150, 520});
    both->setStretchFactor(1, 1);
    both->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(both);
    samples_->setObjectName("oil-table");
    sample_->setObjectName("oil-sample");
    samples_->on_current_row([this](int row) { show_sample(row); });
}

void OilPage::show_selection(const Selection& selection) {
    selection_ = selection;
    judged_ = oil_samples(selection);
    samples_->show_table(samples_table(judged_.samples));
    samples_->setVisible(!judged_.samples.empty());
    document::Document none;
    for (const auto& problem : judged_.problems)
        none.sentence(problem.sentence, document::Severity::caution);
    none.sentence("There is no sample of used oil yet. Send one to a laboratory and record what it found: "
                  "sumpbook -g FILE import samples samples.csv");
    sample_->show_document(std::move(none));
    samples_->choose_first();
}

void OilPage::show_sample(int row) {
    if (row < 0 || static_cast<std::size_t>(row) >= judged_.samples.size()) return;
    sample_->show_document(sample_document(selection_, judged_.samples[static_cast<std::size_t>(row)]));
}

} // namespace sumpbook::window
