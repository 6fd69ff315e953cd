// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/qr_code.h"

#include "reports/write/markup.h"

namespace sumpbook::write {
namespace {

/// Two squares, one above the other, in one symbol; what is light is inked.
std::string_view half_blocks(bool upper_light, bool lower_light) {
    if (upper_light) return lower_light ? "█" : "▀";
    return lower_light ? "▄" : " ";
}

/// Every run of dark squares of a row as one box, side by side without seams.
std::string boxes(const plot::QrCode& code) {
    std::string path;
    for (std::size_t row = 0; row < code.size; ++row) {
        for (std::size_t column = 0; column < code.size;) {
            std::size_t end = column;
            while (code.is_dark(row, end))
                ++end;
            if (end > column) {
                const auto length = std::to_string(end - column);
                path += "M" + std::to_string(column + plot::qr_margin) + " " +
                        std::to_string(row + plot::qr_margin) + "h" + length + "v1h-" + length + "z";
            }
            column = end + 1;
        }
    }
    return path;
}

} // namespace

std::string qr_blocks(const plot::QrCode& code, bool colour) {
    // Rows and columns in front of the code wrap round to numbers far past its end, which are light too.
    const std::size_t side = code.size + 2 * plot::qr_margin;
    std::string text;
    for (std::size_t row = 0; row < side; row += 2) {
        if (colour) text += "\x1b[97;40m";
        for (std::size_t column = 0; column < side; ++column) {
            const auto light = [&](std::size_t at) {
                return at < side && !code.is_dark(at - plot::qr_margin, column - plot::qr_margin);
            };
            text += half_blocks(light(row), light(row + 1));
        }
        if (colour) text += "\x1b[0m";
        text += '\n';
    }
    return text;
}

std::string qr_svg(const plot::QrCode& code, const std::string& title) {
    const auto side = std::to_string(code.size + 2 * plot::qr_margin);
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + side + " " + side +
           "\" width=\"40mm\" height=\"40mm\" role=\"img\" shape-rendering=\"crispEdges\">\n<title>" +
           markup(title) + "</title>\n<path fill=\"#fff\" d=\"M0 0h" + side + "v" + side + "h-" + side +
           "z\"/>\n<path fill=\"#000\" d=\"" + boxes(code) + "\"/>\n</svg>\n";
}

} // namespace sumpbook::write
