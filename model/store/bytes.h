// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace sumpbook::store {

using Bytes = std::vector<std::uint8_t>;
using ByteView = std::span<const std::uint8_t>;

/// Appends a whole number, lowest byte first, in exactly sizeof(T) bytes.
template <class T>
void put_number(Bytes& out, T number) {
    for (std::size_t i = 0; i < sizeof(T); ++i) {
        out.push_back(static_cast<std::uint8_t>(static_cast<std::uint64_t>(number) >> (8 * i)));
    }
}

/// The number at `at`; the caller has checked that sizeof(T) bytes are there.
template <class T>
[[nodiscard]] T get_number(ByteView bytes, std::size_t at) {
    std::uint64_t number = 0;
    for (std::size_t i = 0; i < sizeof(T); ++i)
        number |= std::uint64_t{bytes[at + i]} << (8 * i);
    return static_cast<T>(number);
}

inline void put_bytes(Bytes& out, ByteView bytes) { out.insert(out.end(), bytes.begin(), bytes.end()); }

/// The N bytes at `at`; the caller has checked that they are there.
template <std::size_t N>
[[nodiscard]] std::array<std::uint8_t, N> get_array(ByteView bytes, std::size_t at) {
    std::array<std::uint8_t, N> array{};
    for (std::size_t i = 0; i < N; ++i)
        array[i] = bytes[at + i];
    return array;
}

[[nodiscard]] inline bool all_zero(ByteView bytes) {
    for (const auto byte : bytes) {
        if (byte != 0) return false;
    }
    return true;
}

} // namespace sumpbook::store
