// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"
#include "model/store/chain_notes.h"
#include "model/store/random_source.h"

#include <string>
#include <vector>

namespace sumpbook::store {

/// A record that is about to be written, and what it speaks of.
struct NewRecord {
    SubjectId subject;
    Record record;
};

/// One action, ready to be written, and what follows from writing it.
struct NewAction {
    Bytes bytes;
    std::vector<ChainNote> notes;     ///< With this action as the one about to be written.
    std::vector<std::size_t> order;   ///< Place in the input of each record, in the order they are written.
    std::vector<std::string> notices; ///< Why a chain was begun although there was one.
};

/// The records of each subject as frames at the end of this installation's chain of that subject, or of a
/// new chain (store.md rule 4). Salts and chain ids come from `random`, used once. Refused: a record past a
/// limit.
[[nodiscard]] Result<NewAction> make_action(const std::vector<NewRecord>& records,
                                            std::vector<ChainNote> notes, const ChainIndex& index,
                                            RandomSource& random);

/// The notes once that action is known to be on the disk.
[[nodiscard]] std::vector<ChainNote> as_written(std::vector<ChainNote> notes);

} // namespace sumpbook::store
