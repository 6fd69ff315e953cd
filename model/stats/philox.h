// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>

namespace sumpbook::stats {

using PhiloxCounter = std::array<std::uint32_t, 4>;
using PhiloxKey = std::array<std::uint32_t, 2>;

/// Random bits without a state: the block of a counter under a key, the same on every machine and in every
/// order. SOURCE: Salmon, Moraes, Dror, Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11,
/// Philox4x32; known answers in stat-philox-kat.csv.
[[nodiscard]] PhiloxCounter philox4x32(PhiloxCounter counter, PhiloxKey key, int rounds = 10);

/// A number strictly between 0 and 1 from the first two words of a block:
/// (((w0 << 32 | w1) >> 12) + 0.5) x 2^-52. DESIGN (numbers.md 5.7).
[[nodiscard]] double unit_interval(const PhiloxCounter& block);

} // namespace sumpbook::stats
