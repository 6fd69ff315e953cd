// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/qr_code.h"

#include <qrencode.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

namespace sumpbook::plot {
namespace {

constexpr std::size_t most_symbols = 1000;

struct FreeCode {
    void operator()(QRcode* code) const { QRcode_free(code); }
};

bool is_allowed(char c) { return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == ' '; }

} // namespace

std::vector<std::string> qr_rows(const QrCode& code) {
    std::vector<std::string> rows;
    for (std::size_t row = 0; row < code.size; ++row) {
        auto& text = rows.emplace_back();
        for (std::size_t column = 0; column < code.size; ++column)
            text += code.is_dark(row, column) ? '1' : '0';
    }
    return rows;
}

QrCode qr_code(std::string_view text) {
    if (text.empty() || text.size() > most_symbols || !std::ranges::all_of(text, is_allowed))
        throw std::invalid_argument("a QR code of other than capital letters and digits");
    constexpr int smallest_that_holds_it = 0;
    constexpr int as_letters_and_digits = 1; // not changed to capitals, they are
    const std::unique_ptr<QRcode, FreeCode> made(QRcode_encodeString(
        std::string(text).c_str(), smallest_that_holds_it, QR_ECLEVEL_M, QR_MODE_8, as_letters_and_digits));
    if (made == nullptr) throw std::runtime_error("the QR code could not be made");
    QrCode code{.size = static_cast<std::size_t>(made->width), .dark = {}};
    for (std::size_t i = 0; i < code.size * code.size; ++i)
        code.dark.push_back((made->data[i] & 1U) != 0);
    return code;
}

} // namespace sumpbook::plot
