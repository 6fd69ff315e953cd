// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/file_counts.h"

#include <algorithm>
#include <string_view>

namespace sumpbook::compose {

std::string count_of(std::uint64_t number, const std::string& thing) {
    if (number == 0) return "no " + thing;
    return std::to_string(number) + " " + thing + (number == 1 ? "" : "s");
}

std::string written_words(const store::WrittenOut& written) {
    std::string words = "Wrote " + written.path + ": " + count_of(written.entries, "record") + " in " +
                        count_of(written.frames, "frame");
    if (written.fingerprints > 0) words += " and " + count_of(written.fingerprints, "fingerprint");
    return words + ". It was read back and verifies.";
}

document::Object written_json(const store::WrittenOut& written) {
    document::Object json;
    json.add("file", written.path).add("bytes", written.bytes).add("frames", written.frames);
    json.add("records", written.entries).add("fingerprints", written.fingerprints);
    return json;
}

std::string typed_name(const std::string& path) {
    constexpr std::string_view plain =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789./_-+,:=@%";
    const bool is_plain =
        !path.empty() && !path.starts_with('-') && path.find_first_not_of(plain) == std::string::npos;
    if (is_plain) return path;
    std::string quoted = "'";
    for (const char c : path)
        quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return quoted + "'";
}

} // namespace sumpbook::compose
