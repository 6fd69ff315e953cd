// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/hash.h"

namespace sumpbook::store {

/// Where an attachment stands in a garage file.
struct AttachmentSpot {
    Hash256 hash{};     ///< Of the part: its name in records.
    bool shown = false; ///< Its bytes are in this file.
    std::array<std::uint8_t, 16> salt{};
    std::uint64_t at = 0;   ///< First byte of the content in the file.
    std::size_t length = 0; ///< Of the content.
    bool checked = false;   ///< The content was read on opening, and matches.
};

} // namespace sumpbook::store
