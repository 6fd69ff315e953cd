// SPDX-License-Identifier: GPL-3.0-or-later
// What libFuzzer calls. FUZZ_TARGET names the target; FUZZ_CHANGE, where its input is made of garage files, the
// function that changes them behind their seals.
#include "tests/fuzz/change_garage.h"
#include "tests/fuzz/targets.h"

#include <algorithm>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    sumpbook::fuzz::FUZZ_TARGET({data, size});
    return 0;
}

#ifdef FUZZ_CHANGE
extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

namespace {

void change(sumpbook::store::Bytes& bytes, std::size_t most) {
    const std::size_t size = bytes.size();
    const std::size_t room = std::max(size, std::min(most, 2 * size + 64));
    bytes.resize(room);
    bytes.resize(LLVMFuzzerMutate(bytes.data(), size, room));
}

std::size_t put(const sumpbook::store::Bytes& bytes, std::uint8_t* out) {
    std::ranges::copy(bytes, out);
    return bytes.size();
}

} // namespace

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most,
                                               unsigned seed) {
    return put(sumpbook::fuzz::FUZZ_CHANGE({data, size}, most, seed, change), data);
}

#ifdef FUZZ_CROSS
extern "C" std::size_t LLVMFuzzerCustomCrossOver(const std::uint8_t* a, std::size_t a_size,
                                                 const std::uint8_t* b, std::size_t b_size,
                                                 std::uint8_t* out, std::size_t most, unsigned seed) {
    return put(sumpbook::fuzz::FUZZ_CROSS({a, a_size}, {b, b_size}, most, seed), out);
}
#endif
#endif
