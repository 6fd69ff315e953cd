// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/typed.h"

namespace sumpbook::cli {

/// Where an amount was typed without a currency and the garage has none of its own: TypedAs::currency is the
/// empty one, as in a bike handed over by itself with no amounts, or with amounts in several.
[[nodiscard]] Problem no_currency(const std::string& field, const std::string& text);

} // namespace sumpbook::cli
