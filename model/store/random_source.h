// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/bytes.h"

#include <string>

namespace sumpbook::store {

/// Where subject ids, chain ids and salts come from. Passed in, so that examples and tests can be
/// repeated to the byte.
class RandomSource {
public:
    virtual ~RandomSource() = default;
    virtual void fill(std::span<std::uint8_t> bytes) = 0;

    [[nodiscard]] std::array<std::uint8_t, 16> sixteen() {
        std::array<std::uint8_t, 16> bytes{};
        fill(bytes);
        return bytes;
    }
};

/// The operating system's generator, through OpenSSL. Throws std::runtime_error if it gives nothing: a
/// guessed salt must never be written. Some bytes are fetched ahead, since asking costs more than they do; each
/// is given once, so there are no copies, and a program that forks makes a new one.
class SystemRandom final : public RandomSource {
public:
    SystemRandom() = default;
    SystemRandom(const SystemRandom&) = delete;
    SystemRandom& operator=(const SystemRandom&) = delete;
    void fill(std::span<std::uint8_t> bytes) override;

private:
    std::array<std::uint8_t, 512> ahead_{};
    std::size_t left_ = 0; ///< At the end of `ahead_`.
};

/// Block n is SHA-256(seed, n as 8 bytes). For examples and tests only: whoever knows the seed knows
/// every salt.
class SeededRandom final : public RandomSource {
public:
    explicit SeededRandom(std::string seed)
        : seed_(std::move(seed)) {}
    void fill(std::span<std::uint8_t> bytes) override;

private:
    std::string seed_;
    std::uint64_t counter_ = 0;
};

} // namespace sumpbook::store
