// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

namespace sumpbook::plot {

/// What a label wants of a line: its middle at `wanted`, `length` for itself. Pixels.
struct Wish {
    double wanted = 0;
    double length = 0;
};

/// Middles of labels on one line between `from` and `to`, none on top of another, each as close to where it
/// wants to be as its neighbours allow (least squares), in the order of their wishes. Absent where they do
/// not all fit.
[[nodiscard]] std::optional<std::vector<double>> pushed_apart(const std::vector<Wish>& wishes, double from,
                                                              double to);

/// A label beside a pole that holds it up, over the line the pole starts from: like a flag.
struct Flag {
    double pole = 0;  ///< Where the pole stands, pixels from the left.
    double left = 0;  ///< Of the label.
    double right = 0; ///< Of the label.
};

/// The row of each flag, from 0 at the bottom, so that no label lies on another and no pole goes through
/// one; absent for those that find no place in `rows` rows.
[[nodiscard]] std::vector<std::optional<int>> rows_of(const std::vector<Flag>& flags, int rows);

} // namespace sumpbook::plot
