// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/document_view.h"
#include "app/window/page.h"
#include "app/window/table_view.h"
#include "model/upkeep/due_item.h"

#include <vector>

namespace sumpbook::window {

/// What needs doing, worst first; why the chosen item has its state; and the due windows as a picture.
class DuePage final : public Page {
public:
    explicit DuePage(QWidget* parent = nullptr);
    void show_selection(const Selection& selection) override;

private:
    void show_item(int row);

    TableView* table_;
    DocumentView* why_;
    DocumentView* picture_;
    std::vector<upkeep::DueItem> items_;
};

} // namespace sumpbook::window
