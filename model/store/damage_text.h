// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/loader.h"

namespace sumpbook::store {

/// "by its heading the entries k7-12 to k7-14": of a heading that may itself be what is wrong.
[[nodiscard]] std::string heading_text(const FrameHeader& header, const ChainIndex& index);
/// The first damage of a file, in a sentence, with how many there are.
[[nodiscard]] Problem damage_problem(const std::string& path, const Scan& scan, const ChainIndex& index);
[[nodiscard]] Problem fault_problem(const std::string& path, const Loader::Fault& fault);

} // namespace sumpbook::store
