// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/store/chain_index.h"

#include <vector>

namespace sumpbook::store {

/// Parts that were saved and are not in this file, because they were left out of a hand-over. A version made
/// here to stand for such a record stands without them, also where a merge brings them back.
struct LeftOut {
    std::vector<RecordName> records; ///< Of those asked about that lack something, in the order asked.
    bool money = false;
    bool personal = false; ///< Notes, names, places, and which files belong to a record.
};

/// Of records that can be read here. Parts are left out by the save: where several records were saved together
/// it is not known which of them has any money or notes.
[[nodiscard]] LeftOut left_out_of(const ChainIndex& index, const std::vector<RecordName>& records);
/// Of all records that can be read here, without naming them.
[[nodiscard]] LeftOut left_out_of(const ChainIndex& index);

} // namespace sumpbook::store
