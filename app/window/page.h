// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/opened.h"

#include <QWidget>

namespace sumpbook::window {

/// One page of the window. Shown only when it is looked at: `show_selection` is called then, and again
/// whenever the garage or the bikes chosen are others.
class Page : public QWidget {
public:
    using QWidget::QWidget;
    /// The selection stays valid until the next call.
    virtual void show_selection(const Selection& selection) = 0;
};

} // namespace sumpbook::window
