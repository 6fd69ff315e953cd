// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/document_view.h"
#include "app/window/page.h"

namespace sumpbook::window {

/// What was spent and what will be, and what the engines use.
class CostsPage final : public Page {
public:
    explicit CostsPage(QWidget* parent = nullptr);
    void show_selection(const Selection& selection) override;

private:
    DocumentView* costs_;
};

} // namespace sumpbook::window
