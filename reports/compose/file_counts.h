// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/write_out.h"
#include "reports/document/value.h"

#include <cstdint>
#include <string>

namespace sumpbook::compose {

/// "1 record", "2 records", "no record"; `thing` is one of them.
[[nodiscard]] std::string count_of(std::uint64_t number, const std::string& thing);

/// "Wrote OUT: 34 records in 12 frames and 1 fingerprint. It was read back and verifies."
[[nodiscard]] std::string written_words(const store::WrittenOut& written);
[[nodiscard]] document::Object written_json(const store::WrittenOut& written);

/// A file's name as it can be typed in a command: quoted where it holds more than plain letters.
[[nodiscard]] std::string typed_name(const std::string& path);

} // namespace sumpbook::compose
