// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/entry.h"
#include "model/store/attachment_spot.h"
#include "reports/document/value.h"

#include <string>
#include <vector>

namespace sumpbook::compose {

/// What is known of the bytes of a file that an entry names. Opening a garage reads those of the last save
/// only.
enum class FileState {
    checked,     ///< Here; they were read and match their hash.
    not_checked, ///< Here; not read yet. They are verified when they are written out, and by `check`.
    left_out,    ///< Taken out on purpose.
    missing,     ///< Not in this garage file.
};

struct KeptFile {
    AttachmentRef reference;
    FileState state = FileState::missing;
};

/// The files that the entry names, in its order.
[[nodiscard]] std::vector<KeptFile> kept_files(const Entry& entry,
                                               const std::vector<store::AttachmentSpot>& spots);

/// "invoice.pdf, 12 345 bytes, not yet checked".
[[nodiscard]] std::string kept_file_words(const KeptFile& file);
[[nodiscard]] document::Array kept_files_json(const std::vector<KeptFile>& files);

} // namespace sumpbook::compose
