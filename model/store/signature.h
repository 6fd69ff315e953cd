// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"
#include "model/store/bytes.h"
#include "model/store/random_source.h"

#include <string>
#include <string_view>

namespace sumpbook::store {

// Ed25519 of RFC 8032 (PureEdDSA, no context) through OpenSSL: pure functions on bytes.

/// 32 random bytes that only the signer may know (RFC 8032, 5.1.5). Wiped from memory at the end.
class PrivateKey {
public:
    explicit PrivateKey(const std::array<std::uint8_t, 32>& bytes)
        : bytes_(bytes) {}
    PrivateKey(const PrivateKey&) = default;
    PrivateKey& operator=(const PrivateKey&) = default;
    ~PrivateKey();
    [[nodiscard]] ByteView bytes() const { return bytes_; }

private:
    std::array<std::uint8_t, 32> bytes_;
};

using PublicKey = std::array<std::uint8_t, 32>;
using Signature = std::array<std::uint8_t, 64>;

[[nodiscard]] PrivateKey new_private_key(RandomSource& random);
[[nodiscard]] PublicKey public_key_of(const PrivateKey& key);
[[nodiscard]] Signature signature_of(const PrivateKey& key, ByteView message);
/// Whether whoever knows the private key signed exactly these bytes.
[[nodiscard]] bool signature_fits(const PublicKey& key, ByteView message, const Signature& signature);

/// PKCS#8 as PEM, not encrypted (RFC 5958, RFC 8410, RFC 7468).
[[nodiscard]] std::string pem_text(const PrivateKey& key);
/// SubjectPublicKeyInfo as PEM.
[[nodiscard]] std::string pem_text(const PublicKey& key);
/// Text around the PEM block is passed over. Refused: none there, protected by a password, not Ed25519.
[[nodiscard]] Result<PrivateKey> read_private_key(std::string_view pem);
[[nodiscard]] Result<PublicKey> read_public_key(std::string_view pem);

} // namespace sumpbook::store
