// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/plot/layout.h"

namespace sumpbook::plot {

/// What is wrong with a picture, one sentence each; empty for a picture that can be shown. Data: nothing to
/// see; numbers that are not finite; values that a logarithmic axis cannot show; points that go back along
/// the x axis; a ribbon or a span whose ends are the wrong way round; bars or spans that do not match the
/// categories; data outside an axis with given ends. Looks: what cannot be told apart in colour or in grey,
/// or has no name (`looks_faults`). Words: an axis or the picture without a title; labels on top of each
/// other, outside the picture, or left out for want of room at this size.
[[nodiscard]] std::vector<std::string> faults(const Plot& plot, Size size = {});

/// The part of `faults` that looks at a finished layout.
[[nodiscard]] std::vector<std::string> layout_faults(const Layout& layout);

} // namespace sumpbook::plot
