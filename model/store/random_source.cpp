// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/random_source.h"

#include "model/store/hash.h"

#include <openssl/rand.h>

#include <algorithm>
#include <stdexcept>

namespace sumpbook::store {

void SystemRandom::fill(std::span<std::uint8_t> bytes) {
    if (RAND_bytes(bytes.data(), static_cast<int>(bytes.size())) != 1) {
        throw std::runtime_error("the system's random generator gave nothing");
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
