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
/// or noticed.
void try_reader(store::ByteView bytes);

/// The first two bytes choose what is imported and what the owner states, the rest is the file. Rows and
/// counts add up, lines are lines, what is planned can be saved, and once saved a second import adds nothing.
void try_import(store::ByteView bytes);

/// As try_reader, with a mistake planted behind it: the unit of a sample's value is copied into 16 bytes
/// whatever its length. For showing that the search reaches what is inside sealed frames.
void try_planted(store::ByteView bytes);

} // namespace sumpbook::fuzz
