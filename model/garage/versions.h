// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"

#include <cstddef>
#include <cstdint>
#include <vector>

namespace sumpbook {

/// All versions of one thing: their places in the list of records, by the time recorded.
using VersionGroup = std::vector<std::size_t>;

/// As the index in a name: no version of anything, but the frame as a whole, which a withdrawal says was
/// emptied. Things that were erased from one frame do not become one thing by it.
inline constexpr std::uint32_t no_version = 0xFFFFFFFF;

/// Every record belongs to exactly one group: records that replace one another, or the same one whether it
/// is held or not, and those that are about the same thing (the settings, the details of a bike, one plan
/// item, baseline or card value of it). Groups by the time their first version was recorded.
[[nodiscard]] std::vector<VersionGroup> version_groups(const std::vector<NamedRecord>& records);

/// Whether the record is about the same thing by itself, without naming an earlier version: two plan items of
/// one slug are, two entries never.
[[nodiscard]] bool about_the_same(const RecordContent& one, const RecordContent& other);

/// What counts of a group. `used` is one of `heads`: the one recorded last, then the one with the smallest
/// hash.
struct CurrentVersion {
    std::size_t used = 0;
    std::vector<std::size_t> heads; ///< That nothing in the group replaces, by the time recorded.
};
/// Absent heads: the group replaces itself in a circle, which no program writes; `heads` is empty then.
[[nodiscard]] CurrentVersion current_version(const VersionGroup& group,
                                             const std::vector<NamedRecord>& records);

/// A thing that was changed in two or more places, none of which knew of the other. Withdrawals alone are
/// none: they all say the same.
struct Conflict {
    VersionGroup versions;
    CurrentVersion current;
};
[[nodiscard]] std::vector<Conflict> conflicts(const std::vector<NamedRecord>& records);

} // namespace sumpbook
