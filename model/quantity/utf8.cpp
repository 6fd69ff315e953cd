// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/utf8.h"

namespace sumpbook {
namespace {

constexpr char32_t replacement = U'\uFFFD';

struct Shape {
    std::size_t bytes = 0;
    char32_t lead_bits = 0;
    char32_t smallest = 0; ///< A smaller code point has a shorter form, so this one is not UTF-8.
};

/// RFC 3629, section 3: what the first byte announces. 0 bytes: it cannot begin a code point.
Shape shape_of(unsigned char lead) {
    if (lead < 0x80) return {1, lead, 0};
    if (lead >= 0xC0 && lead < 0xE0) return {2, lead & 0x1FU, 0x80};
    if (lead >= 0xE0 && lead < 0xF0) return {3, lead & 0x0FU, 0x800};
    if (lead >= 0xF0 && lead < 0xF8) return {4, lead & 0x07U, 0x10000};
    return {};
}

} // namespace

Utf8First utf8_first(std::string_view text) {
    if (text.empty()) return {};
    const Shape shape = shape_of(static_cast<unsigned char>(text.front()));
    if (shape.bytes == 0 || shape.bytes > text.size()) return {replacement, 1};
    char32_t code_point = shape.lead_bits;
    for (std::size_t i = 1; i < shape.bytes; ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if ((byte & 0xC0U) != 0x80U) return {replacement, 1};
        code_point = (code_point << 6U) | (byte & 0x3FU);
    }
    const bool surrogate = code_point >= 0xD800 && code_point <= 0xDFFF;
    if (code_point < shape.smallest || code_point > 0x10FFFF || surrogate) return {replacement, 1};
    return {code_point, shape.bytes};
}

} // namespace sumpbook
