// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
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

/// What the subjects of an answer are called.
struct VerifiedNames {
    std::string bike; ///< The answer is about this one alone; empty: about all that the file holds.
    std::vector<std::string> tested;
    std::vector<std::string> untold;
};
/// `settings`: the subject that the garage itself is.
[[nodiscard]] VerifiedNames verified_names(const store::FingerprintCheck& check, const Garage& garage,
                                           const SubjectId& settings, const std::string& bike);
[[nodiscard]] document::Value verify_json(const store::FingerprintCheck& check, const VerifiedNames& names,
                                          const std::vector<CheckedTimeStamp>& stamps = {});
[[nodiscard]] document::Document verify_text(const store::FingerprintCheck& check,
                                             const VerifiedNames& names);

/// A file of which every byte was looked at. It is damaged where stretches of it or attachments do not
/// verify; then the frames and records counted are those that do.
struct CheckedFile {
    std::string path;
    std::uint64_t bytes = 0;
    std::size_t frames = 0;
    std::size_t records = 0;
    std::size_t attachments = 0; ///< Whose bytes are here.
    std::size_t damaged_attachments = 0;
    std::size_t broken_stretches = 0;
    std::uint64_t torn_bytes = 0; ///< At its end, of a save that is not whole; left out.
    [[nodiscard]] bool verifies() const { return damaged_attachments == 0 && broken_stretches == 0; }
    std::vector<review::Finding> findings; ///< Of the file and of its bikes.
};
[[nodiscard]] document::Value check_json(const CheckedFile& file);
[[nodiscard]] document::Document check_text(const CheckedFile& file);

} // namespace sumpbook::compose
