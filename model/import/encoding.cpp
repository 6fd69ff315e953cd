// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/encoding.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>

namespace sumpbook::import {
namespace {

constexpr std::string_view utf8_mark = "\xEF\xBB\xBF";
constexpr std::string_view utf16_little_mark = "\xFF\xFE";
constexpr std::string_view utf16_big_mark = "\xFE\xFF";

std::uint8_t byte_at(std::string_view bytes, std::size_t at) { return static_cast<std::uint8_t>(bytes[at]); }

Place on_line(std::string_view bytes, std::size_t at) {
    const auto breaks = std::count(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(at), '\n');
    return {.file = {}, .line = static_cast<std::size_t>(breaks) + 1, .column = {}, .text = {}};
}

void append_utf8(std::string& out, char32_t c) {
    const auto put = [&out](char32_t bits) { out.push_back(static_cast<char>(bits)); };
    if (c < 0x80) {
        put(c);
    } else if (c < 0x800) {
        put(0xC0 | (c >> 6));
        put(0x80 | (c & 0x3F));
    } else if (c < 0x10000) {
        put(0xE0 | (c >> 12));
        put(0x80 | ((c >> 6) & 0x3F));
        put(0x80 | (c & 0x3F));
    } else {
        put(0xF0 | (c >> 18));
        put(0x80 | ((c >> 12) & 0x3F));
        put(0x80 | ((c >> 6) & 0x3F));
        put(0x80 | (c & 0x3F));
    }
}

/// The permitted range of the second byte of a sequence, Unicode Standard table 3-7.
std::pair<std::uint8_t, std::uint8_t> second_byte_range(std::uint8_t lead) {
    switch (lead) {
    case 0xE0:
        return {0xA0, 0xBF};
    case 0xED:
        return {0x80, 0x9F};
    case 0xF0:
        return {0x90, 0xBF};
    case 0xF4:
        return {0x80, 0x8F};
    default:
        return {0x80, 0xBF};
    }
}

std::size_t length_by_lead(std::uint8_t lead) {
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return 2;
    if (lead >= 0xE0 && lead <= 0xEF) return 3;
    if (lead >= 0xF0 && lead <= 0xF4) return 4;
    return 0;
}

/// Length of the well-formed UTF-8 sequence at `at`, or 0.
std::size_t utf8_length(std::string_view bytes, std::size_t at) {
    const std::uint8_t lead = byte_at(bytes, at);
    const std::size_t length = length_by_lead(lead);
    if (length < 2) return length;
    if (at + length > bytes.size()) return 0;
    const auto [low, high] = second_byte_range(lead);
    const std::uint8_t second = byte_at(bytes, at + 1);
    if (second < low || second > high) return 0;
    for (std::size_t i = 2; i < length; ++i)
        if ((byte_at(bytes, at + i) & 0xC0) != 0x80) return 0;
    return length;
}

struct Utf8Survey {
    std::size_t letters = 0;              ///< Well-formed sequences of two bytes and more.
    std::optional<std::size_t> first_bad; ///< Position of the first byte that is none.
};

Utf8Survey survey_utf8(std::string_view bytes) {
    Utf8Survey found;
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t length = utf8_length(bytes, at);
        if (length == 0 && !found.first_bad) found.first_bad = at;
        if (length > 1) ++found.letters;
        at += std::max<std::size_t>(length, 1);
    }
    return found;
}

/// Bytes 0x80 to 0x9F of Windows-1252 (Unicode mapping table CP1252.TXT); 0 where it has no character.
constexpr std::array<char32_t, 32> windows_1252_high = {
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

Result<DecodedText> from_windows_1252(std::string_view bytes) {
    DecodedText decoded{.text = {}, .encoding = Encoding::windows_1252};
    for (std::size_t at = 0; at < bytes.size(); ++at) {
        const std::uint8_t byte = byte_at(bytes, at);
        const bool high = byte >= 0x80 && byte <= 0x9F;
        const char32_t letter = high ? windows_1252_high[byte - 0x80U] : byte;
        if (high && letter == 0)
            return refuse(
                fmt::format("The byte 0x{:02X} is neither UTF-8 nor Windows-1252. Save the file as UTF-8.",
                            byte),
                on_line(bytes, at));
        append_utf8(decoded.text, letter);
    }
    return decoded;
}

Result<DecodedText> from_utf8(std::string_view bytes, Encoding encoding) {
    const Utf8Survey survey = survey_utf8(bytes);
    if (survey.first_bad)
        return refuse("The file is marked as UTF-8, but this line holds a byte that is not UTF-8.",
                      on_line(bytes, *survey.first_bad));
    return DecodedText{.text = std::string(bytes), .encoding = encoding};
}

/// `bytes` without the mark.
Result<DecodedText> from_utf16(std::string_view bytes, Encoding encoding) {
    if (bytes.size() % 2 != 0)
        return refuse("The file is UTF-16 and ends in the middle of a character: it was cut short.");
    const std::size_t low = encoding == Encoding::utf16_big ? 1 : 0;
    const auto unit = [&](std::size_t at) {
        return static_cast<char32_t>(byte_at(bytes, at + low) | (byte_at(bytes, at + 1 - low) << 8));
    };
    DecodedText decoded{.text = {}, .encoding = encoding};
    for (std::size_t at = 0; at < bytes.size(); at += 2) {
        char32_t letter = unit(at);
        if (letter >= 0xD800 && letter <= 0xDFFF) {
            const bool paired =
                letter <= 0xDBFF && at + 2 < bytes.size() && (unit(at + 2) & 0xFC00) == 0xDC00;
            if (!paired)
                return refuse("This line holds half of a UTF-16 character: the file is damaged.",
                              on_line(decoded.text, decoded.text.size()));
            at += 2;
            letter = 0x10000 + ((letter - 0xD800) << 10) + (unit(at) - 0xDC00);
        }
        append_utf8(decoded.text, letter);
    }
    return decoded;
}

Result<DecodedText> guess(std::string_view bytes) {
    const Utf8Survey survey = survey_utf8(bytes);
    if (!survey.first_bad) return DecodedText{.text = std::string(bytes), .encoding = Encoding::utf8};
    if (survey.letters > 0)
        return refuse("The file holds UTF-8 letters, but this line has a byte that is not UTF-8. Save the "
                      "file again as "
                      "UTF-8, or state the encoding.",
                      on_line(bytes, *survey.first_bad));
    return from_windows_1252(bytes);
}

std::string_view without_mark(std::string_view bytes, std::string_view mark) {
    return bytes.starts_with(mark) ? bytes.substr(mark.size()) : bytes;
}

Result<DecodedText> decode_as(std::string_view bytes, Encoding encoding) {
    switch (encoding) {
    case Encoding::utf8:
    case Encoding::utf8_with_mark:
        return from_utf8(without_mark(bytes, utf8_mark),
                         bytes.starts_with(utf8_mark) ? Encoding::utf8_with_mark : Encoding::utf8);
    case Encoding::utf16_little:
    case Encoding::utf16_big:
        if (bytes.starts_with(utf16_little_mark)) return from_utf16(bytes.substr(2), Encoding::utf16_little);
        return from_utf16(without_mark(bytes, utf16_big_mark),
                          bytes.starts_with(utf16_big_mark) ? Encoding::utf16_big : encoding);
    case Encoding::windows_1252:
        return from_windows_1252(bytes);
    }
    return refuse("The encoding is not known.");
}

Result<DecodedText> decode_by_mark(std::string_view bytes) {
    if (bytes.starts_with(utf8_mark)) return decode_as(bytes, Encoding::utf8_with_mark);
    if (bytes.starts_with(utf16_little_mark)) return decode_as(bytes, Encoding::utf16_little);
    if (bytes.starts_with(utf16_big_mark)) return decode_as(bytes, Encoding::utf16_big);
    return guess(bytes);
}

} // namespace

std::string_view name_of(Encoding encoding) {
    switch (encoding) {
    case Encoding::utf8:
        return "UTF-8";
    case Encoding::utf8_with_mark:
        return "UTF-8 with a mark";
    case Encoding::utf16_little:
        return "UTF-16 (little end first)";
    case Encoding::utf16_big:
        return "UTF-16 (big end first)";
    case Encoding::windows_1252:
        return "Windows-1252";
    }
    return "unknown";
}

Result<Encoding> read_encoding(std::string_view text) {
    if (text == "utf-8") return Encoding::utf8;
    if (text == "utf-16" || text == "utf-16be") return Encoding::utf16_big;
    if (text == "utf-16le") return Encoding::utf16_little;
    if (text == "windows-1252") return Encoding::windows_1252;
    return fail(
        ProblemKind::wrong_usage,
        fmt::format("'{}' is no encoding known here: utf-8, utf-16, utf-16le, utf-16be or windows-1252.",
                    text));
}

Result<DecodedText> decode_text(std::string_view bytes, std::optional<Encoding> stated) {
    if (bytes.size() > largest_file_bytes)
        return refuse("The file is larger than 16 MB: that is no table of entries.");
    auto decoded = stated ? decode_as(bytes, *stated) : decode_by_mark(bytes);
    if (!decoded) return decoded;
    if (const auto nul = decoded->text.find('\0'); nul != std::string::npos)
        return refuse("The file holds a zero byte: it is not text, or it is UTF-16 without its mark (state "
                      "the encoding).",
                      on_line(decoded->text, nul));
    return decoded;
}

} // namespace sumpbook::import
