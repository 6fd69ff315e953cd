// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/input_file.h"

#include <algorithm>
#include <filesystem>
#include <fstream>

namespace sumpbook::cli {

Result<std::string> bytes_of_input(const std::string& file, std::size_t most, const std::string& too_large) {
    std::error_code unknown; // a path that cannot be looked at is refused when it is opened
    if (std::filesystem::is_directory(file, unknown)) return refuse("This is a folder.", {.file = file});
    std::ifstream in(file, std::ios::binary);
    if (!in)
        return fail(ProblemKind::io, "The file could not be read: it is not there, or may not be opened.",
                    {.file = file});
    constexpr std::size_t piece = 256 * 1024;
    std::string bytes;
    while (in && bytes.size() <= most) {
        const auto have = bytes.size();
        bytes.resize(have + std::min(piece, most + 1 - have));
        in.read(bytes.data() + have, static_cast<std::streamsize>(bytes.size() - have));
        bytes.resize(have + static_cast<std::size_t>(in.gcount()));
    }
    if (in.bad()) return fail(ProblemKind::io, "The file could not be read to its end.", {.file = file});
    if (bytes.size() > most) return refuse(too_large, {.file = file});
    return bytes;
}

} // namespace sumpbook::cli
