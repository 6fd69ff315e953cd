// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook {

/// An ISO 4217 currency by its three-letter code. Always one of the codes of `currencies.csv`;
/// made only by `from_code`. The default is XXX, "no currency", for empty values only.
class Currency {
public:
    constexpr Currency() = default;
    /// Upper or lower case; refused, with the code in the sentence, when it is not in the list.
    [[nodiscard]] static Result<Currency> from_code(std::string_view code);

    [[nodiscard]] std::string code() const { return {code_.begin(), code_.end()}; }
    /// Digits after the point of the minor unit: 2 for EUR, 0 for JPY, 3 for KWD.
    [[nodiscard]] int minor_digits() const;

    auto operator<=>(const Currency&) const = default;

private:
    std::array<char, 3> code_{'X', 'X', 'X'};
};

[[nodiscard]] std::vector<Currency> all_currencies();

} // namespace sumpbook
