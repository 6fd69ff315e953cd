// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/media_type.h"

#include <algorithm>
#include <array>
#include <utility>

namespace sumpbook::cli {
namespace {

/// What owners keep: papers, pictures, tables, a short film or a recording of a noise. Types as registered
/// with IANA (iana.org, Media Types), endings as the registrations give them.
constexpr std::array<std::pair<std::string_view, std::string_view>, 24> types{{
    {"avif", "image/avif"},
    {"csv", "text/csv"},
    {"eml", "message/rfc822"},
    {"gif", "image/gif"},
    {"heic", "image/heic"},
    {"html", "text/html"},
    {"jpeg", "image/jpeg"},
    {"jpg", "image/jpeg"},
    {"json", "application/json"},
    {"mp3", "audio/mpeg"},
    {"mp4", "video/mp4"},
    {"odt", "application/vnd.oasis.opendocument.text"},
    {"ods", "application/vnd.oasis.opendocument.spreadsheet"},
    {"ogg", "audio/ogg"},
    {"pdf", "application/pdf"},
    {"png", "image/png"},
    {"svg", "image/svg+xml"},
    {"tif", "image/tiff"},
    {"tiff", "image/tiff"},
    {"txt", "text/plain"},
    {"webp", "image/webp"},
    {"xml", "application/xml"},
    {"xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"},
    {"zip", "application/zip"},
}};

} // namespace

std::string media_type_of(std::string_view name) {
    const auto dot = name.rfind('.');
    std::string ending(dot == std::string_view::npos ? std::string_view() : name.substr(dot + 1));
    std::ranges::transform(ending, ending.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    const auto found =
        std::ranges::find(types, ending, &std::pair<std::string_view, std::string_view>::first);
    return std::string(found == types.end() ? "application/octet-stream" : found->second);
}

} // namespace sumpbook::cli
