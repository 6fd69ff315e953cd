// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/random_source.h"

#include "model/store/hash.h"

#include <openssl/rand.h>

#include <algorithm>
#include <stdexcept>

namespace sumpbook::store {

void SystemRandom::fill(std::span<std::uint8_t> bytes) {
    while (!bytes.empty()) {
        if (left_ == 0) {
            if (RAND_bytes(ahead_.data(), static_cast<int>(ahead_.size())) != 1)
                throw std::runtime_error("the system's random generator gave nothing");
            left_ = ahead_.size();
        }
        const auto given = std::span(ahead_).last(left_).first(std::min(bytes.size(), left_));
        std::ranges::copy(given, bytes.begin());
        std::ranges::fill(given, std::uint8_t{0});
        left_ -= given.size();
        bytes = bytes.subspan(given.size());
    }
}

void SeededRandom::fill(std::span<std::uint8_t> bytes) {
    while (!bytes.empty()) {
        Bytes number;
        put_number(number, counter_++);
        const Hash256 block = sha256({as_bytes(seed_), number});
        const auto take = std::min(bytes.size(), block.size());
        std::copy_n(block.begin(), take, bytes.begin());
        bytes = bytes.subspan(take);
    }
}

} // namespace sumpbook::store
