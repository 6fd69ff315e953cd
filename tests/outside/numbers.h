// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cctype>
#include <cstdlib>
#include <string>
#include <vector>

namespace sumpbook::outside {

/// The numbers of a cell that holds several, such as "22;155.33;1.685" or "60 % of 5 + 40 % of 20", in the
/// order they stand there. A minus counts only where no digit stands before it.
[[nodiscard]] inline std::vector<double> numbers_in(const std::string& text) {
    std::vector<double> numbers;
    const auto digit_at = [&](std::size_t i) {
        return i < text.size() && std::isdigit(static_cast<unsigned char>(text[i])) != 0;
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (!digit_at(i)) continue;
        std::size_t end = i;
        while (digit_at(end))
            ++end;
        if (end < text.size() && text[end] == '.' && digit_at(end + 1)) {
            ++end;
            while (digit_at(end))
                ++end;
        }
        const bool exponent = end + 1 < text.size() && (text[end] == 'e' || text[end] == 'E');
        if (exponent && (digit_at(end + 1) || (text[end + 1] == '-' && digit_at(end + 2)))) {
            end += 2;
            while (digit_at(end))
                ++end;
        }
        const bool negative = i > 0 && text[i - 1] == '-' && !(i > 1 && digit_at(i - 2));
        const double size = std::strtod(text.substr(i, end - i).c_str(), nullptr);
        numbers.push_back(negative ? -size : size);
        i = end;
    }
    return numbers;
}

} // namespace sumpbook::outside
