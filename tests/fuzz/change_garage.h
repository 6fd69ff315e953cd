// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/bytes.h"

#include <functional>

namespace sumpbook::fuzz {

/// Changes bytes in place, within a largest length.
using ChangeBytes = std::function<void(store::Bytes& bytes, std::size_t most)>;

/// A garage file with one to a few changes that `seed` chooses: to the bytes inside a part, to a frame's heading,
/// to which parts are shown, to the order and number of actions, or records made up by the same archive
/// that reads them. Seals, hashes and links are made right again; one time in eight the bytes are changed as
/// they stand and nothing is made right. At most `most` bytes.
[[nodiscard]] store::Bytes changed_garage(store::ByteView bytes, std::size_t most, std::uint32_t seed,
                                          const ChangeBytes& change);

/// One of the two files of a merge changed, or the second made from the first by a change.
[[nodiscard]] store::Bytes changed_merge(store::ByteView bytes, std::size_t most, std::uint32_t seed,
                                         const ChangeBytes& change);

/// The actions of both files in one, some of each.
[[nodiscard]] store::Bytes crossed_garages(store::ByteView a, store::ByteView b, std::size_t most,
                                           std::uint32_t seed);

} // namespace sumpbook::fuzz
