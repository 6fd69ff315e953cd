// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/base32.h"

namespace sumpbook::store {
namespace {

/// Product in GF(32), reduced by x^5 + x^2 + 1.
unsigned times(unsigned a, unsigned b) {
    unsigned product = 0;
    for (unsigned bit = 0; bit < 5; ++bit) {
        if ((b >> bit & 1U) != 0) product ^= a << bit;
    }
    for (unsigned bit = 9; bit >= 5; --bit) {
        if ((product >> bit & 1U) != 0) product ^= 0b100101U << (bit - 5);
    }
    return product;
}

/// (x - a^1)(x - a^2)...(x - a^count) with a = 2; highest power first, its coefficient 1 left out.
std::vector<unsigned> generator(unsigned count) {
    std::vector<unsigned> polynomial{1};
    unsigned root = 1;
    for (unsigned i = 0; i < count; ++i) {
        root = times(root, 2);
        polynomial.push_back(0);
        for (std::size_t k = polynomial.size() - 1; k > 0; --k)
            polynomial[k] ^= times(polynomial[k - 1], root);
    }
    polynomial.erase(polynomial.begin());
    return polynomial;
}

} // namespace

std::optional<unsigned> base32_number(char symbol) {
    char c = symbol;
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == 'o') c = '0';
    if (c == 'i' || c == 'l') c = '1';
    const auto at = base32_symbols.find(c);
    if (at == std::string_view::npos) return std::nullopt;
    return static_cast<unsigned>(at);
}

std::string base32_text(ByteView bytes, std::size_t symbols) {
    std::string text;
    for (std::size_t i = 0; i < symbols; ++i) {
        unsigned number = 0;
        for (std::size_t bit = i * 5; bit < i * 5 + 5; ++bit) {
            const unsigned byte = bit / 8 < bytes.size() ? bytes[bit / 8] : 0U;
            number = number * 2 + (byte >> (7 - bit % 8) & 1U);
        }
        text += base32_symbols[number];
    }
    return text;
}

std::vector<unsigned> check_symbols(const std::vector<unsigned>& numbers, unsigned count) {
    const auto polynomial = generator(count);
    std::vector<unsigned> rest(count, 0);
    for (const auto number : numbers) {
        const unsigned factor = number ^ rest.front();
        rest.erase(rest.begin());
        rest.push_back(0);
        for (unsigned i = 0; i < count; ++i)
            rest[i] ^= times(factor, polynomial[i]);
    }
    return rest;
}

} // namespace sumpbook::store
