// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/fills.h"

#include <optional>
#include <string>

namespace sumpbook::oil {

/// The name of the oil a sample was drawn from: of its oil change, else as the sample itself names it.
[[nodiscard]] std::optional<std::string> oil_name_of(const FilledSample& sample);

} // namespace sumpbook::oil
