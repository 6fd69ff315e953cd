// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/bytes.h"

#include <compare>
#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::store {

/// A SHA-256 value. The same type as RecordName::frame_hash, so that names need no translation.
using Hash256 = std::array<std::uint8_t, 32>;

/// 128 random bits that tell one run of frames, written by one installation about one subject, from all
/// others.
struct ChainId {
    std::array<std::uint8_t, 16> bytes{};
    auto operator<=>(const ChainId&) const = default;
};

/// SHA-256 of FIPS 180-4 through OpenSSL, of a message that comes piece by piece. One object hashes any
/// number of messages, one after the other.
class Sha256 {
public:
    Sha256();
    ~Sha256();
    Sha256(const Sha256&) = delete;
    Sha256& operator=(const Sha256&) = delete;

    void add(ByteView bytes);
    /// The hash of everything added since the last call; the next message starts empty.
    [[nodiscard]] Hash256 finish();

private:
    struct Context;
    std::unique_ptr<Context> context_;
};

/// SHA-256 of the pieces put end to end.
[[nodiscard]] Hash256 sha256(std::initializer_list<ByteView> pieces);

/// A fixed text as bytes, for tags in front of hashed data.
[[nodiscard]] ByteView as_bytes(std::string_view text);

[[nodiscard]] std::string hex_text(ByteView bytes);
/// Lower or upper case, an even number of digits, nothing else; absent otherwise.
[[nodiscard]] std::optional<Bytes> bytes_of_hex(std::string_view text);

} // namespace sumpbook::store
