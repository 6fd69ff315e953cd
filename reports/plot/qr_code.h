// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::plot {

/// A QR code (ISO/IEC 18004) as squares, `size` by `size`, without the light margin around it.
struct QrCode {
    std::size_t size = 0;
    std::vector<bool> dark; ///< Row by row from the top left.
    /// Light outside the code.
    [[nodiscard]] bool is_dark(std::size_t row, std::size_t column) const {
        return row < size && column < size && dark[row * size + column];
    }
    bool operator==(const QrCode&) const = default;
};

/// Light squares that a reader needs on each side (ISO/IEC 18004, quiet zone).
inline constexpr std::size_t qr_margin = 4;

/// What stands under the code of a fingerprint on a page.
inline constexpr std::string_view qr_caption =
    "The fingerprint with all its 256 bits, to be read by a camera.";

/// One text a row, "1" for dark and "0" for light: for machines.
[[nodiscard]] std::vector<std::string> qr_rows(const QrCode& code);

/// A code for capital letters, digits and blanks, at most 1 000 of them: others, and small letters, are not
/// what this is for and throw std::invalid_argument. A seventh of it may be dirt (error correction level M).
[[nodiscard]] QrCode qr_code(std::string_view text);

} // namespace sumpbook::plot
