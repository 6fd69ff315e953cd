// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/plot.h"
#include "reports/plot/ticks.h"

#include <optional>

namespace sumpbook::plot {

/// Where positions of an axis lie on the picture: pixels from its left or top edge.
class Scale {
public:
    Scale() = default;
    /// `from` is drawn at `start_px`, `to` at `end_px`; the scale goes on beyond both. On logarithmic axes
    /// both are above 0.
    Scale(AxisKind kind, Range range, double start_px, double end_px);

    /// Absent for a value that has no place: not finite, or not above 0 on a logarithmic axis.
    [[nodiscard]] std::optional<double> px(double value) const;
    /// What the axis is straight in: the value itself, or its decimal logarithm.
    [[nodiscard]] std::optional<double> straight(double value) const;
    [[nodiscard]] double straight_at(double px) const;
    /// True for values on the axis between its ends, both included.
    [[nodiscard]] bool shows(double value) const;
    [[nodiscard]] AxisKind kind() const { return kind_; }
    [[nodiscard]] Range range() const { return range_; }

private:
    AxisKind kind_ = AxisKind::linear;
    Range range_;
    double from_ = 0; ///< straight(range_.from)
    double to_ = 1;
    double start_px_ = 0;
    double end_px_ = 1;
};

/// What is to be seen along an axis: points, ribbons, bars (from 0 to the top of the stack), spans, and the
/// rules across it. Bands do not count: they are the ground, as far as the data goes. Values without a place
/// on the axis are left out. Absent where nothing is left.
[[nodiscard]] std::optional<Range> data_range_x(const Plot& plot);
[[nodiscard]] std::optional<Range> data_range_y(const Plot& plot);

} // namespace sumpbook::plot
