// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/document.h"

#include <QFontMetricsF>

#include <vector>

namespace sumpbook::render {

/// What a column wants: room for its widest word, so that none is broken; and for its longest text, so that
/// none is wrapped. Pixels of the device, padding included.
struct ColumnWish {
    double least = 0;
    double most = 0;
};

/// `mark` is how wide the mark before a cell that matters is.
[[nodiscard]] std::vector<ColumnWish>
column_wishes(const document::Table& table, const QFontMetricsF& metrics, double mark, double padding);

/// Widths that add up to at most `room`: all texts on one line where they fit; else what the words need and a
/// share of the rest; where not even the words fit, the narrow columns keep theirs and the widest give way.
[[nodiscard]] std::vector<double> column_widths(const std::vector<ColumnWish>& wishes, double room);

} // namespace sumpbook::render
