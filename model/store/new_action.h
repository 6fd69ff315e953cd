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

/// A file on its way into the garage. Records name it by its hash, which depends on the salt, so that
/// nobody can test whether a document he holds is inside.
struct NewAttachment {
    SubjectId subject;
    Salt salt{};
    Hash256 hash{}; ///< AttachmentRef::part_hash
    Bytes bytes;
};
/// Refused: more than 64 MiB.
[[nodiscard]] Result<NewAttachment> new_attachment(const SubjectId& subject, Bytes bytes,
                                                   RandomSource& random);

/// One action, ready to be written, and what follows from writing it.
struct NewAction {
    Bytes bytes;
    std::vector<ChainNote> notes;     ///< With this action as the one about to be written.
    std::vector<std::size_t> order;   ///< Place in the input of each record, in the order they are written.
    std::vector<std::string> notices; ///< Why a chain was begun although there was one.
};

/// The records of each subject as frames at the end of this installation's chain of that subject, or of a
/// new chain, behind the attachments. Salts and chain ids come from `random`, used once. Refused: a record
/// past a limit.
[[nodiscard]] Result<NewAction> make_action(const std::vector<NewRecord>& records,
                                            const std::vector<NewAttachment>& attachments,
                                            std::vector<ChainNote> notes, const ChainIndex& index,
                                            RandomSource& random);

/// The notes once that action is known to be on the disk.
[[nodiscard]] std::vector<ChainNote> as_written(std::vector<ChainNote> notes);

} // namespace sumpbook::store
