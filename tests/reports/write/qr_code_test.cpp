// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/qr_code.h"

#include "tests/catch.h"
#include "tests/reports/write/xml_check.h"

#include <sstream>

using namespace sumpbook;

namespace {

/// The squares that the boxes of an SVG path cover; "M5 4h3v1h-3z" is three of the first row.
plot::QrCode squares_of(const std::string& svg, std::size_t size) {
    plot::QrCode code{.size = size, .dark = std::vector<bool>(size * size)};
    const auto from = svg.find("fill=\"#000\" d=\"") + 15;
    std::string path = svg.substr(from, svg.find('"', from) - from);
    for (char& c : path) {
        if (c == 'M' || c == 'h' || c == 'v' || c == 'z') c = ' ';
    }
    std::istringstream in(path);
    std::size_t column = 0, row = 0, length = 0;
    int down = 0, back = 0;
    while (in >> column >> row >> length >> down >> back) {
        for (std::size_t i = 0; i < length; ++i)
            code.dark[(row - plot::qr_margin) * size + column - plot::qr_margin + i] = true;
    }
    return code;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);)
        lines.push_back(line);
    return lines;
}

} // namespace

TEST_CASE("The SVG of a QR code shows exactly its squares, on white", "[qr]") {
    const auto code = plot::qr_code("0123456789ABCDEF");
    const auto svg = write::qr_svg(code, "Fingerprint <of> this & that");
    CHECK(write::testing::read_markup(svg).fault.empty());
    CHECK(squares_of(svg, code.size) == code);
    CHECK(svg.find("viewBox=\"0 0 29 29\"") != std::string::npos);
    CHECK(svg.find("<title>Fingerprint &lt;of&gt; this &amp; that</title>") != std::string::npos);
}

TEST_CASE("In a terminal half a symbol is a square, light ones inked, within a margin of four", "[qr]") {
    const auto code = plot::qr_code("0123456789ABCDEF");
    const auto lines = lines_of(write::qr_blocks(code, false));
    REQUIRE(lines.size() == 15); // 21 + 8 rows, two a line
    std::string margin;
    for (int i = 0; i < 29; ++i)
        margin += "█";
    CHECK(lines[0] == margin);
    CHECK(lines[1] == margin);
    // Row 0 is the dark border of the finders over row 1, dark at both ends of them.
    CHECK(lines[2].starts_with("████ ▄▄▄▄▄ "));
    const auto coloured = lines_of(write::qr_blocks(code, true));
    CHECK(coloured[2] == "\x1b[97;40m" + lines[2] + "\x1b[0m");
}
