// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/bytes.h"

#include <openssl/bio.h>

#include <memory>
#include <string>
#include <string_view>

namespace sumpbook::store {

/// Frees an object of OpenSSL with the function it names for that.
template <auto Free>
struct FreeWith {
    template <class T>
    void operator()(T* object) const {
        Free(object);
    }
};
template <class T, auto Free>
using OpensslHandle = std::unique_ptr<T, FreeWith<Free>>;

using Bio = OpensslHandle<BIO, &BIO_free>;

/// A text to be read by OpenSSL; it must outlive the result.
[[nodiscard]] inline Bio bio_over(std::string_view text) {
    return Bio(BIO_new_mem_buf(text.data(), static_cast<int>(text.size())));
}

/// For reading PEM: never asks on the terminal. `asked`, a bool or null, becomes true where it would have.
inline int no_password(char* /*into*/, int /*size*/, int /*writing*/, void* asked) {
    if (asked != nullptr) *static_cast<bool*>(asked) = true;
    return -1;
}

/// What was written into a memory BIO.
[[nodiscard]] inline std::string text_in(BIO* bio) {
    char* data = nullptr;
    const auto size = BIO_get_mem_data(bio, &data); // NOLINT: a macro of OpenSSL
    return size > 0 ? std::string(data, static_cast<std::size_t>(size)) : std::string();
}

/// The DER encoding of an object, by its i2d function; empty if it has none.
template <class T>
[[nodiscard]] Bytes der_of(int (*encode)(const T*, unsigned char**), const T* object) {
    const int size = encode(object, nullptr);
    if (size <= 0) return {};
    Bytes bytes(static_cast<std::size_t>(size));
    unsigned char* at = bytes.data();
    encode(object, &at);
    return bytes;
}

/// The object that `bytes` encode as a whole, by its d2i function; null where they encode none, or more.
template <class T>
[[nodiscard]] T* object_of(T* (*decode)(T**, const unsigned char**, long), void (*discard)(T*),
                           ByteView bytes) {
    const unsigned char* at = bytes.data();
    T* object = decode(nullptr, &at, static_cast<long>(bytes.size()));
    if (object == nullptr || at == bytes.data() + bytes.size()) return object;
    discard(object);
    return nullptr;
}

} // namespace sumpbook::store
