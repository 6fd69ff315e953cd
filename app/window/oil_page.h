// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/document_view.h"
#include "app/window/page.h"
#include "app/window/page_documents.h"
#include "app/window/table_view.h"

namespace sumpbook::window {

/// The samples, newest first; for the chosen one the trends of its bike and what there is to say of it.
class OilPage final : public Page {
public:
    explicit OilPage(QWidget* parent = nullptr);
    void show_selection(const Selection& selection) override;

private:
    void show_sample(int row);

    TableView* samples_;
    DocumentView* sample_;
    Selection selection_;
    OilSamples judged_;
};

} // namespace sumpbook::window
