// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/ids.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::cost {

/// First 4 bytes, little-endian, of the SHA-256 (FIPS 180-4) of a text: numbers.md 5.7.
[[nodiscard]] std::uint32_t hash32(std::string_view text);

/// 32 digits of hexadecimal, lower case: the id of a bike as text.
[[nodiscard]] std::string hex_text(const SubjectId& id);

/// One uniform number, strictly between 0 and 1, for each bike, path, piece and purpose, whatever was drawn
/// before: adding a bike or a job leaves all others as they are.
class Draws {
public:
    explicit Draws(std::uint64_t seed)
        : seed_(seed) {}
    [[nodiscard]] double uniform(std::uint32_t bike, std::uint32_t path, std::uint32_t piece,
                                 std::uint32_t purpose) const;

private:
    std::uint64_t seed_;
};

/// The purposes "job/engine-oil/1", "job/engine-oil/2", ... of a text that ends in "/".
class NumberedPurpose {
public:
    explicit NumberedPurpose(std::string text);
    /// hash32 of the text with the number; number from 1.
    [[nodiscard]] std::uint32_t at(std::size_t number) const;

private:
    std::string text_;
    std::vector<std::uint32_t> first_; ///< Of the numbers that come up in almost every path.
};

} // namespace sumpbook::cost
