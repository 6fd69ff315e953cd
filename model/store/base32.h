// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/bytes.h"

#include <optional>
#include <string>
#include <string_view>

namespace sumpbook::store {

/// Five bits a symbol: the digits and the small letters without i, l, o and u, which are misread for 1, 0
/// and v (DESIGN).
inline constexpr std::string_view base32_symbols = "0123456789abcdefghjkmnpqrstvwxyz";

/// Number 0..31 of a symbol. Capitals count as small letters; o reads as 0, i and l as 1. Absent for
/// anything else.
[[nodiscard]] std::optional<unsigned> base32_number(char symbol);

/// The first `symbols` x 5 bits, highest bit first; missing bits at the end are zero.
[[nodiscard]] std::string base32_text(ByteView bytes, std::size_t symbols);

/// `count` check symbols behind up to 31 - count numbers of 0..31: a Reed-Solomon code over GF(32) with
/// the polynomial x^5 + x^2 + 1 and the roots a^1 .. a^count (textbook construction). With five of them,
/// any one to five wrong symbols are noticed, so also any swap of neighbours.
[[nodiscard]] std::vector<unsigned> check_symbols(const std::vector<unsigned>& numbers, unsigned count);

} // namespace sumpbook::store
