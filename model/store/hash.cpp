// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/hash.h"

#include <openssl/evp.h>

#include <algorithm>
#include <stdexcept>

namespace sumpbook::store {
namespace {

const EVP_MD* fetched_sha256() {
    static const EVP_MD* const algorithm = EVP_MD_fetch(nullptr, "SHA256", nullptr);
    return algorithm;
}

void require(bool worked) {
    if (!worked) throw std::runtime_error("SHA-256 is not available in the installed OpenSSL");
}

std::optional<unsigned> hex_digit(char c) {
    if (c >= '0' && c <= '9') return static_cast<unsigned>(c - '0');
    if (c >= 'a' && c <= 'f') return static_cast<unsigned>(c - 'a' + 10);
    if (c >= 'A' && c <= 'F') return static_cast<unsigned>(c - 'A' + 10);
    return std::nullopt;
}

} // namespace

struct Sha256::Context {
    EVP_MD_CTX* handle = EVP_MD_CTX_new();
    ~Context() { EVP_MD_CTX_free(handle); }
    void start() const {
        require(handle != nullptr && EVP_DigestInit_ex2(handle, fetched_sha256(), nullptr) == 1);
    }
};

Sha256::Sha256()
    : context_(std::make_unique<Context>()) {
    context_->start();
}
Sha256::~Sha256() = default;

void Sha256::add(ByteView bytes) {
    if (!bytes.empty()) require(EVP_DigestUpdate(context_->handle, bytes.data(), bytes.size()) == 1);
}

Hash256 Sha256::finish() {
    Hash256 hash;
    require(EVP_DigestFinal_ex(context_->handle, hash.data(), nullptr) == 1);
    context_->start();
    return hash;
}

Hash256 sha256(std::initializer_list<ByteView> pieces) {
    thread_local Sha256 hasher;
    // Short pieces are put together first: every call into the library costs as much as a block.
    std::array<std::uint8_t, 256> together; // NOLINT(*-member-init): only what is filled is used
    std::size_t filled = 0;
    for (const auto piece : pieces) {
        if (piece.size() > together.size() - filled) {
            hasher.add(ByteView(together).first(filled));
            filled = 0;
        }
        if (piece.size() > together.size()) {
            hasher.add(piece);
        } else {
            std::ranges::copy(piece, together.begin() + static_cast<std::ptrdiff_t>(filled));
            filled += piece.size();
        }
    }
    hasher.add(ByteView(together).first(filled));
    return hasher.finish();
}

ByteView as_bytes(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()}; // NOLINT: bytes of a text
}

std::string hex_text(ByteView bytes) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    for (const auto byte : bytes) {
        text += digits[byte >> 4U];
        text += digits[byte & 15U];
    }
    return text;
}

std::optional<Bytes> bytes_of_hex(std::string_view text) {
    if (text.size() % 2 != 0) return std::nullopt;
    Bytes bytes;
    for (std::size_t i = 0; i < text.size(); i += 2) {
        const auto high = hex_digit(text[i]);
        const auto low = hex_digit(text[i + 1]);
        if (!high || !low) return std::nullopt;
        bytes.push_back(static_cast<std::uint8_t>(*high * 16 + *low));
    }
    return bytes;
}

} // namespace sumpbook::store
