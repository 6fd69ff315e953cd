// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/log_page.h"

#include "app/window/page_documents.h"
#include "reports/compose/log.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace sumpbook::window {

LogPage::LogPage(QWidget* parent)
    : Page(parent)
    , find_(new QLineEdit)
    , count_(new QLabel)
    , table_(new TableView("Entries"))
    , entry_(new DocumentView("The chosen entry"))
    , both_(new QSplitter(Qt::Horizontal)) {
    auto* label = new QLabel("&Find");
    label->setBuddy(find_);
    find_->setPlaceholderText("a word, a number, a day: whatever the entry says");
    find_->setClearButtonEnabled(true);
    find_->setObjectName("log-find");
    find_->setAccessibleName("Only entries that say");
    count_->setTextFormat(Qt::PlainText);
    count_->setObjectName("log-count");
    table_->setObjectName("log-table");
    entry_->setObjectName("log-entry");
    auto* line = new QHBoxLayout;
    line->setContentsMargins(14, 8, 14, 0);
    line->addWidget(label);
    line->addWidget(find_, 1);
    line->addWidget(count_);
    both_->addWidget(table_);
    both_->addWidget(entry_);
    both_->setSizes({640, 340});
    both_->setStretchFactor(0, 1);
    both_->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(line);
    layout->addWidget(both_, 1);
    connect(find_, &QLineEdit::textChanged, this, [this] { list(); });
    table_->on_current_row([this](int row) { show_entry(row); });
}

void LogPage::show_selection(const Selection& selection) {
    selection_ = selection;
    list();
}

void LogPage::resizeEvent(QResizeEvent* event) {
    constexpr int both_fit_px = 1150; // eight columns and an entry beside them
    Page::resizeEvent(event);
    both_->setOrientation(width() < both_fit_px ? Qt::Vertical : Qt::Horizontal);
}

void LogPage::list() {
    compose::LogSelection wanted;
    wanted.text = find_->text().trimmed().toStdString();
    entries_ = compose::select(selection_.bikes, wanted);
    std::ranges::reverse(entries_);
    auto parts = table_and_rest(compose::log_text(entries_));
    table_->show_table(parts.table.value_or(document::Table{}));
    count_->setText(QString::fromStdString(std::to_string(entries_.size()) +
                                           (entries_.size() == 1 ? " entry" : " entries")));
    entry_->show_document(std::move(parts.rest));
    table_->choose_first();
}

void LogPage::show_entry(int row) {
    if (row < 0 || static_cast<std::size_t>(row) >= entries_.size()) return;
    const auto& [bike, entry] = entries_[static_cast<std::size_t>(row)];
    entry_->show_document(
        compose::entry_page_text(*bike, *entry, compose::entry_versions(*selection_.records, entry->id),
                                 compose::kept_files(entry->value, *selection_.attachments)));
}

} // namespace sumpbook::window
