// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "reports/document/value.h"

#include <string>

namespace sumpbook::write {

/// RFC 8259 text, UTF-8, two blanks an indent, a line feed at the end. Members in their order, numbers
/// digit for digit; the same value gives the same bytes everywhere. Bytes that are not UTF-8 are
/// replaced by U+FFFD.
[[nodiscard]] std::string json(const document::Value& value);

} // namespace sumpbook::write
