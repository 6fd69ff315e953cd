// SPDX-License-Identifier: GPL-3.0-or-later
// Every input that a search has kept and every one that once broke something, through the same targets.
#include "tests/catch.h"
#include "tests/fuzz/targets.h"
#include "tests/model/store/temp_folder.h"

#include <algorithm>
#include <cstdio>

using namespace sumpbook;
using namespace sumpbook::fuzz;

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> inputs_in(const std::string& folder) {
    std::vector<fs::path> files;
    const auto path = fs::path(SUMPBOOK_SOURCE_DIR) / "tests/fuzz" / folder;
    if (!fs::exists(path)) return files;
    for (const auto& item : fs::directory_iterator(path))
        files.push_back(item.path());
    std::ranges::sort(files);
    return files;
}

using Target = void (*)(store::ByteView);

/// Tries every kept and found input; returns how many there were.
std::size_t replay(const std::string& name, Target target) {
    std::size_t count = 0;
    for (const auto* folder : {"corpus/", "found/"}) {
        for (const auto& file : inputs_in(folder + name)) {
            INFO(file.string());
            const auto bytes = store::bytes_of_file(file.string());
            CHECK_NOTHROW(target(bytes));
            ++count;
        }
    }
    std::printf("fuzz replay, %s: %zu inputs\n", name.c_str(), count);
    return count;
}

} // namespace

TEST_CASE("No file can hurt us: inputs kept from searching the reader", "[fuzz]") {
    CHECK(replay("reader", try_reader) > 20);
}

TEST_CASE("No file can hurt us: inputs kept from searching the import", "[fuzz]") {
    CHECK(replay("import", try_import) > 20);
}

TEST_CASE("No file can hurt us: inputs kept from searching the merge", "[fuzz]") {
    CHECK(replay("merge", try_merge) > 20);
}
