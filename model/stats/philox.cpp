// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/stats/philox.h"

namespace sumpbook::stats {
namespace {

// The constants of Philox4x32: the multipliers, and the Weyl sequence the key runs through.
constexpr std::uint64_t first_multiplier = 0xD2511F53;
constexpr std::uint64_t second_multiplier = 0xCD9E8D57;
constexpr std::uint32_t first_key_step = 0x9E3779B9;  // golden ratio
constexpr std::uint32_t second_key_step = 0xBB67AE85; // sqrt(3) - 1

std::uint32_t high(std::uint64_t product) { return static_cast<std::uint32_t>(product >> 32U); }
std::uint32_t low(std::uint64_t product) { return static_cast<std::uint32_t>(product); }

} // namespace

PhiloxCounter philox4x32(PhiloxCounter counter, PhiloxKey key, int rounds) {
    for (int round = 0; round < rounds; ++round) {
        const std::uint64_t first = first_multiplier * counter[0];
        const std::uint64_t second = second_multiplier * counter[2];
        counter = {high(second) ^ counter[1] ^ key[0], low(second), high(first) ^ counter[3] ^ key[1],
                   low(first)};
        key[0] += first_key_step;
        key[1] += second_key_step;
    }
    return counter;
}

double unit_interval(const PhiloxCounter& block) {
    constexpr double cell = 0x1p-52;
    const std::uint64_t bits = (std::uint64_t{block[0]} << 32U | block[1]) >> 12U;
    return (static_cast<double>(bits) + 0.5) * cell;
}

} // namespace sumpbook::stats
