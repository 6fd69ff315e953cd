// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/garage_file.h"

#include <stdexcept>
#include <string>

namespace sumpbook::fuzz {

/// A rule that must hold for every input did not.
struct BrokenRule : std::logic_error {
    using std::logic_error::logic_error;
};

inline void must(bool holds, const char* rule) {
    if (!holds) throw BrokenRule(rule);
}

// Each target takes any bytes at all. It returns; or throws BrokenRule; or a sanitizer stops it.

/// A file of these bytes is opened and everything in it is looked at. The answer is a sentence or a garage;
/// what opens is in its only encoding, answers for its own fingerprint, and cut anywhere it is an older state
/// or noticed; what can be recovered of a file that does not open does open. A quarter of the files are also
/// read by several threads, which say what one says.
void try_reader(store::ByteView bytes);

/// The first two bytes choose what is imported and what the owner states, the rest is the file. Rows and
/// counts add up, lines are lines, what is planned can be saved, and once saved a second import adds nothing.
void try_import(store::ByteView bytes);

/// Two files of a garage: merged in either order they give the same bytes, merged again nothing more, nothing is
/// lost, and hand-overs of each bike bring their garage nothing.
void try_merge(store::ByteView bytes);
/// Length of the first file 4, parts withheld in hand-overs 1, both files.
inline constexpr std::size_t merge_head_bytes = 5;
/// Both files of an input of at least that length.
[[nodiscard]] std::pair<store::ByteView, store::ByteView> files_of_merge(store::ByteView bytes);
[[nodiscard]] store::Bytes bytes_of_merge(store::ByteView a, store::ByteView b, std::uint8_t withheld);

/// As try_reader, with a mistake planted behind it: the unit of a sample's value is copied into 16 bytes
/// whatever its length. For showing that the search reaches what is inside sealed frames.
void try_planted(store::ByteView bytes);

} // namespace sumpbook::fuzz
