// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/hash.h"

// The functions of libcrypto for SHA-256 alone. Those of EVP set memory aside for every message, which takes
// longer than a short message itself, and a garage file is made of short messages.
#define OPENSSL_SUPPRESS_DEPRECATED // NOLINT(cppcoreguidelines-macro-usage): OpenSSL's own switch
#include <openssl/sha.h>

#include <stdexcept>

namespace sumpbook::store {
namespace {

void require(bool worked) {
    if (!worked) throw std::runtime_error("SHA-256 is not available in the installed OpenSSL");
}

void update(SHA256_CTX& state, ByteView bytes) {
    require(SHA256_Update(&state, bytes.data(), bytes.size()) == 1);
}

Hash256 finished(SHA256_CTX& state) {
    Hash256 hash;
    require(SHA256_Final(hash.data(), &state) == 1);
    return hash;
}

std::optional<unsigned> hex_digit(char c) {
    if (c >= '0' && c <= '9') return static_cast<unsigned>(c - '0');
    if (c >= 'a' && c <= 'f') return static_cast<unsigned>(c - 'a' + 10);
    if (c >= 'A' && c <= 'F') return static_cast<unsigned>(c - 'A' + 10);
    return std::nullopt;
}

} // namespace

struct Sha256::Context {
    SHA256_CTX state{};
};

Sha256::Sha256()
    : context_(std::make_unique<Context>()) {
    require(SHA256_Init(&context_->state) == 1);
}
Sha256::~Sha256() = default;

void Sha256::add(ByteView bytes) { update(context_->state, bytes); }

Hash256 Sha256::finish() {
    const Hash256 hash = finished(context_->state);
    require(SHA256_Init(&context_->state) == 1);
    return hash;
}

Hash256 sha256(std::initializer_list<ByteView> pieces) {
    SHA256_CTX state; // NOLINT(*-member-init): SHA256_Init sets it
    require(SHA256_Init(&state) == 1);
    for (const auto piece : pieces)
        update(state, piece);
    return finished(state);
}

ByteView as_bytes(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()}; // NOLINT: bytes of a text
}

std::string hex_text(ByteView bytes) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    text.reserve(2 * bytes.size());
    for (const auto byte : bytes) {
        text += digits[byte >> 4U];
        text += digits[byte & 15U];
    }
    return text;
}

std::optional<Bytes> bytes_of_hex(std::string_view text) {
    if (text.size() % 2 != 0) return std::nullopt;
    Bytes bytes;
    bytes.reserve(text.size() / 2);
    for (std::size_t i = 0; i < text.size(); i += 2) {
        const auto high = hex_digit(text[i]);
        const auto low = hex_digit(text[i + 1]);
        if (!high || !low) return std::nullopt;
        bytes.push_back(static_cast<std::uint8_t>(*high * 16 + *low));
    }
    return bytes;
}

} // namespace sumpbook::store
