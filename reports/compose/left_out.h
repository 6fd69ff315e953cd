// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/store/left_out.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// What a new version of these records would lack, and what to do about it; there is at least one of them.
[[nodiscard]] std::string left_out_words(const store::LeftOut& left_out,
                                         const std::vector<NamedRecord>& records);

} // namespace sumpbook::compose
