// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <compare>
#include <cstdint>

namespace sumpbook {

/// What a record speaks of: one bike, or the garage itself. Random, 128 bits, never reused.
struct SubjectId {
    std::array<std::uint8_t, 16> bytes{};
    auto operator<=>(const SubjectId&) const = default;
};

/// The lasting name of a record: the hash of the frame it was written in and its place there.
struct RecordName {
    std::array<std::uint8_t, 32> frame_hash{};
    std::uint32_t index = 0;
    auto operator<=>(const RecordName&) const = default;
};

} // namespace sumpbook
