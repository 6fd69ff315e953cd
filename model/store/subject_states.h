// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/fingerprint.h"

#include <set>

namespace sumpbook::store {

/// The frames of each subject held in a file, as places in `index.frames()`, in file order.
[[nodiscard]] std::map<SubjectId, std::vector<std::size_t>> frames_by_subject(const ChainIndex& index);

struct StateSearch {
    std::optional<FingerprintLeaf> found;
    bool all = true; ///< Where none is found: every state was tried.
};

/// The state of one subject, now or at any earlier time, whose leaf is one of `leaves`. `frames` are all its
/// frames, in file order.
///
/// A state is any set of frames none of which follows another: each chain cut back to any length or left
/// out, each fork to any length of its branches. Where that makes more than `most_states` (DESIGN; chains
/// multiply), only the states are tried through which the file grew, frame by frame.
[[nodiscard]] StateSearch state_with_leaf(const ChainIndex& index, const std::vector<std::size_t>& frames,
                                          const std::set<Hash256>& leaves, std::size_t most_states);

} // namespace sumpbook::store
