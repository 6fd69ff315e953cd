// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::house {

/// A file of the source tree: its path from the root with forward slashes, and its bytes.
struct SourceFile {
    std::string path;
    std::string text;

    [[nodiscard]] bool is_under(std::string_view folder) const; ///< "model", "app/cli"
    [[nodiscard]] bool is_cpp() const;                          ///< .h or .cpp
    /// "model/oil" of model/oil/judge.cpp, empty for files not in a folder of that depth.
    [[nodiscard]] std::string folder() const;
};

/// All files but hidden ones, builds and the published tables of tests/outside/data.
[[nodiscard]] const std::vector<SourceFile>& source_files();
/// Names at the root, hidden ones and builds left out.
[[nodiscard]] std::set<std::string> top_level();

/// What stands between the quotes or brackets of the #include lines.
[[nodiscard]] std::vector<std::string> includes_of(std::string_view text);
/// C++ without comments and without the insides of literals, line by line as long as before.
[[nodiscard]] std::string code_only(std::string_view text);
[[nodiscard]] std::size_t line_count(std::string_view text);

/// The folders a folder may include from, itself and everything its edges lead to.
[[nodiscard]] std::set<std::string> reachable(const std::string& folder);
/// True for a folder of the table of edges.
[[nodiscard]] bool is_folder(const std::string& folder);

/// What this file includes against the edges, as "model/stats/x.h includes model/oil/y.h".
[[nodiscard]] std::vector<std::string> wrong_includes(const SourceFile& file);
/// The same for the targets named in a CMakeLists.txt: "model/stats/CMakeLists.txt links oil".
[[nodiscard]] std::vector<std::string> wrong_links(const SourceFile& file);
/// True for <QString>, <QtCharts/...>, <Qt...>.
[[nodiscard]] bool is_qt(std::string_view include);

} // namespace sumpbook::house
