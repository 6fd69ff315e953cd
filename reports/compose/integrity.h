// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/review/finding.h"
#include "model/store/fingerprint.h"
#include "reports/compose/time_stamps.h"
#include "reports/document/document.h"
#include "reports/document/value.h"
#include "reports/plot/qr_code.h"

#include <cstdint>
#include <vector>

namespace sumpbook::compose {

// Whether a garage is as it was: its fingerprint, a test against one, and a test of the whole file.

/// With time stamps just taken in, and the code where it was asked for; null: not.
[[nodiscard]] document::Value fingerprint_json(const store::FingerprintRecord& record,
                                               const std::vector<CheckedTimeStamp>& stamps,
                                               const plot::QrCode* code);
[[nodiscard]] document::Document fingerprint_words(const store::FingerprintRecord& record);

/// All 256 bits as 64 hexadecimal digits in capitals, which `verify` takes back.
[[nodiscard]] plot::QrCode fingerprint_code(const store::Hash256& fingerprint);

[[nodiscard]] document::Value verify_json(const store::FingerprintCheck& check,
                                          const std::vector<CheckedTimeStamp>& stamps = {});
[[nodiscard]] document::Document verify_text(const store::FingerprintCheck& check);

/// A file of which every byte was verified.
struct CheckedFile {
    std::uint64_t bytes = 0;
    std::size_t frames = 0;
    std::size_t records = 0;
    std::vector<review::Finding> findings; ///< Of the file and of its bikes.
};
[[nodiscard]] document::Value check_json(const CheckedFile& file);
[[nodiscard]] document::Document check_text(const CheckedFile& file);

} // namespace sumpbook::compose
