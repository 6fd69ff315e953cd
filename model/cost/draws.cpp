// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/draws.h"

#include "model/stats/philox.h"

#include <openssl/evp.h>

#include <array>
#include <stdexcept>

namespace sumpbook::cost {

std::uint32_t hash32(std::string_view text) {
    std::array<unsigned char, EVP_MAX_MD_SIZE> hash{};
    if (EVP_Digest(text.data(), text.size(), hash.data(), nullptr, EVP_sha256(), nullptr) != 1)
        throw std::runtime_error("SHA-256 is not available in the installed OpenSSL");
    return std::uint32_t{hash[0]} | std::uint32_t{hash[1]} << 8U | std::uint32_t{hash[2]} << 16U |
           std::uint32_t{hash[3]} << 24U;
}

std::string hex_text(const SubjectId& id) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const auto byte : id.bytes) {
        text += digits[byte >> 4U];
        text += digits[byte & 15U];
    }
    return text;
}

double Draws::uniform(std::uint32_t bike, std::uint32_t path, std::uint32_t piece,
                      std::uint32_t purpose) const {
    const stats::PhiloxKey key{static_cast<std::uint32_t>(seed_), static_cast<std::uint32_t>(seed_ >> 32U)};
    return stats::unit_interval(stats::philox4x32({bike, path, piece, purpose}, key));
}

NumberedPurpose::NumberedPurpose(std::string text)
    : text_(std::move(text)) {
    constexpr std::size_t kept = 16;
    for (std::size_t number = 1; number <= kept; ++number)
        first_.push_back(hash32(text_ + std::to_string(number)));
}

std::uint32_t NumberedPurpose::at(std::size_t number) const {
    return number <= first_.size() ? first_[number - 1] : hash32(text_ + std::to_string(number));
}

} // namespace sumpbook::cost
