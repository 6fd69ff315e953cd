// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"
#include "reports/render/theme.h"

class QWidget;

namespace sumpbook::render {

/// A plot drawn live, as large as it is given room, with its title as its accessible name, and its
/// description and numbers as its accessible description. It takes no focus and lets the wheel through to
/// what it stands in. The caller owns it.
[[nodiscard]] QWidget* chart_widget(const plot::Plot& plot, Theme theme);

} // namespace sumpbook::render
