// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/window.h"

#include <algorithm>

namespace sumpbook::store {

ByteView Window::view(std::uint64_t at, std::size_t length) {
    viewed_ += length;
    if (at < start_ || at + length > start_ + bytes_.size()) {
        const auto wanted = std::min<std::uint64_t>(std::max(capacity_, length), size_ - at);
        if (bytes_.capacity() > capacity_ && wanted <= capacity_) Bytes().swap(bytes_);
        bytes_.resize(wanted);
        start_ = at;
        const auto got = read_fully(*file_, at, bytes_);
        if (!got || *got < length) {
            bytes_.clear();
            throw IoFailure{got ? IoError{IoFault::ended, 0} : got.error()};
        }
        bytes_.resize(*got);
    }
    return ByteView(bytes_).subspan(static_cast<std::size_t>(at - start_), length);
}

} // namespace sumpbook::store
