// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/qr_code.h"

#include "tests/catch.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

using namespace sumpbook;
using plot::QrCode;

namespace {

const std::string digits = "00FF1234567890ABCDEF00FF1234567890ABCDEF00FF1234567890ABCDEF0123";

/// The 7 x 7 squares of a finder pattern (ISO/IEC 18004): dark border, light ring, dark middle of 3 x 3.
bool has_finder_at(const QrCode& code, std::size_t row, std::size_t column) {
    for (std::size_t y = 0; y < 7; ++y) {
        for (std::size_t x = 0; x < 7; ++x) {
            const bool border = y == 0 || y == 6 || x == 0 || x == 6;
            const bool middle = y >= 2 && y <= 4 && x >= 2 && x <= 4;
            if (code.is_dark(row + y, column + x) != (border || middle)) return false;
        }
    }
    return true;
}

/// Black and white squares, 4 dots each, as a portable bit map with its margin.
void write_bitmap(const QrCode& code, const std::string& path) {
    constexpr std::size_t dots = 4;
    const std::size_t side = code.size + 2 * plot::qr_margin;
    std::ofstream out(path);
    out << "P1\n" << side * dots << ' ' << side * dots << '\n';
    for (std::size_t y = 0; y < side * dots; ++y) {
        for (std::size_t x = 0; x < side * dots; ++x)
            out << (code.is_dark(y / dots - plot::qr_margin, x / dots - plot::qr_margin) ? "1 " : "0 ");
        out << '\n';
    }
}

/// What a reader of such codes makes of it.
std::string read_back(const QrCode& code) {
    const auto folder = std::filesystem::temp_directory_path();
    const auto path =
        (folder / ("sumpbook-qr-" + std::to_string(std::rand()) + ".pbm")).string(); // NOLINT: a test
    write_bitmap(code, path);
    std::string text;
    if (FILE* out = popen(
            ("zbarimg --quiet --raw -Sdisable -Sqrcode.enable " + path + " 2>/dev/null").c_str(), "r")) {
        for (int c = std::fgetc(out); c != EOF; c = std::fgetc(out))
            text += static_cast<char>(c);
        pclose(out);
    }
    std::filesystem::remove(path);
    return text;
}

} // namespace

TEST_CASE("A QR code of 256 bits has the size and the patterns of ISO/IEC 18004", "[qr]") {
    const auto code = plot::qr_code(digits);
    // 64 of the 45 symbols at level M need version 4 (90 fit, 61 into version 3): 17 + 4 x 4 squares.
    CHECK(code.size == 33);
    CHECK(code.dark.size() == 33 * 33);
    CHECK(has_finder_at(code, 0, 0));
    CHECK(has_finder_at(code, 0, 26));
    CHECK(has_finder_at(code, 26, 0));
    CHECK_FALSE(has_finder_at(code, 26, 26));
    for (std::size_t i = 8; i < 25; ++i) { // the timing patterns
        CHECK(code.is_dark(6, i) == (i % 2 == 0));
        CHECK(code.is_dark(i, 6) == (i % 2 == 0));
    }
    CHECK(code.is_dark(25, 8)); // the dark module
    CHECK_FALSE(code.is_dark(33, 0));
    CHECK(code == plot::qr_code(digits));
}

TEST_CASE("A QR code is read back by a reader of another make", "[qr]") {
    if (std::system("command -v zbarimg >/dev/null") != 0) { // NOLINT: a test
        WARN("zbarimg (Debian: zbar-tools) is not here: QR codes were not read back");
        return;
    }
    CHECK(read_back(plot::qr_code(digits)) == digits + "\n");
    auto dirty = plot::qr_code(digits);
    for (std::size_t row = 12; row < 16; ++row) {
        for (std::size_t column = 12; column < 16; ++column)
            dirty.dark[row * dirty.size + column] = true;
    }
    CHECK(dirty != plot::qr_code(digits));
    CHECK(read_back(dirty) == digits + "\n");
}

TEST_CASE("Rows of a QR code for machines", "[qr]") {
    const auto rows = plot::qr_rows(plot::qr_code("A"));
    REQUIRE(rows.size() == 21);
    for (const auto& row : rows)
        CHECK(row.size() == 21);
    CHECK(rows[0].starts_with("1111111"));
    CHECK(rows[1].starts_with("1000001"));
}

TEST_CASE("What is not meant for a QR code is a mistake of the program", "[qr]") {
    CHECK_THROWS_AS(plot::qr_code(""), std::invalid_argument);
    CHECK_THROWS_AS(plot::qr_code("abc"), std::invalid_argument);
    CHECK_THROWS_AS(plot::qr_code(std::string(1001, 'A')), std::invalid_argument);
    CHECK(plot::qr_code(std::string(1000, 'A')).size > 21);
}
