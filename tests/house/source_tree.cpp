// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/house/source_tree.h"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <sstream>

namespace sumpbook::house {
namespace {

namespace fs = std::filesystem;

const fs::path root = SUMPBOOK_SOURCE_DIR;

bool left_out(const fs::path& path) {
    const std::string name = path.filename().string();
    return name.starts_with('.') || path == root / "build" || path == root / "tests" / "outside" / "data" ||
           fs::exists(path / "CMakeCache.txt");
}

/// What each folder may include from besides itself; what those may include follows.
const std::map<std::string, std::vector<std::string>>& edges() {
    static const std::map<std::string, std::vector<std::string>> table{
        {"model/quantity", {}},
        {"model/garage", {"model/quantity"}},
        {"model/store", {"model/garage"}},
        {"model/stats", {"model/quantity"}},
        {"model/usage", {"model/garage", "model/stats"}},
        {"model/upkeep", {"model/usage"}},
        {"model/oil", {"model/usage", "model/upkeep"}},
        {"model/cost", {"model/upkeep", "model/oil"}},
        {"model/import", {"model/garage", "model/upkeep"}},
        {"model/review", {"model/cost", "model/oil", "model/store"}},
        {"reports/document", {"model/quantity"}},
        {"reports/plot", {"model/quantity"}},
        {"reports/compose", {"model/cost", "model/oil", "model/review", "reports/document", "reports/plot"}},
        {"reports/write", {"reports/document", "reports/plot"}},
        {"reports/render", {"reports/document", "reports/plot"}},
    };
    return table;
}

void reach(const std::string& folder, std::set<std::string>& reached) {
    if (!reached.insert(folder).second) return;
    const auto next = edges().find(folder);
    if (next == edges().end()) return;
    for (const auto& edge : next->second)
        reach(edge, reached);
}

/// The first two names of a path that has more than two.
std::string folder_of(std::string_view path) {
    const auto first = path.find('/');
    const auto second = first == std::string_view::npos ? first : path.find('/', first + 1);
    return second == std::string_view::npos ? std::string{} : std::string(path.substr(0, second));
}

std::string bytes_of(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// Length of the comment or literal that begins a text, 0 when none does.
std::size_t skipped_length(std::string_view text, char before) {
    const auto up_to = [&](std::string_view end, std::size_t from) {
        const auto at = text.find(end, from);
        return at == std::string_view::npos ? text.size() : at + end.size();
    };
    if (text.starts_with("//")) return std::min(text.find('\n'), text.size());
    if (text.starts_with("/*")) return up_to("*/", 2);
    if (text.starts_with("R\"")) {
        const std::string end = ")" + std::string(text.substr(2, text.find('(') - 2)) + "\"";
        return up_to(end, 2);
    }
    const char quote = text.front();
    const bool digit_separator = quote == '\'' && std::isxdigit(static_cast<unsigned char>(before)) != 0;
    if ((quote != '"' && quote != '\'') || digit_separator) return 0;
    std::size_t at = 1;
    while (at < text.size() && text[at] != quote)
        at += text[at] == '\\' ? 2U : 1U;
    return std::min(at + 1, text.size());
}

} // namespace

bool SourceFile::is_under(std::string_view folder) const {
    return path.starts_with(folder) && path.size() > folder.size() && path[folder.size()] == '/';
}

bool SourceFile::is_cpp() const { return path.ends_with(".h") || path.ends_with(".cpp"); }

std::string SourceFile::folder() const { return folder_of(path); }

const std::vector<SourceFile>& source_files() {
    static const std::vector<SourceFile> files = [] {
        std::vector<SourceFile> found;
        for (auto at = fs::recursive_directory_iterator(root); at != fs::recursive_directory_iterator();
             ++at) {
            if (left_out(at->path())) {
                at.disable_recursion_pending();
            } else if (at->is_regular_file()) {
                found.push_back({fs::relative(at->path(), root).generic_string(), bytes_of(at->path())});
            }
        }
        return found;
    }();
    return files;
}

std::set<std::string> top_level() {
    std::set<std::string> names;
    for (const auto& entry : fs::directory_iterator(root)) {
        if (!left_out(entry.path())) names.insert(entry.path().filename().string());
    }
    return names;
}

std::vector<std::string> includes_of(std::string_view text) {
    std::vector<std::string> includes;
    std::istringstream lines{std::string(text)};
    for (std::string line; std::getline(lines, line);) {
        const auto hash = line.find_first_not_of(" \t");
        if (hash == std::string::npos || line[hash] != '#') continue;
        const auto word = line.find_first_not_of(" \t", hash + 1);
        if (word == std::string::npos || line.compare(word, 7, "include") != 0) continue;
        const auto open = line.find_first_of("\"<", word);
        const auto close = open == std::string::npos ? open : line.find_first_of("\">", open + 1);
        if (close != std::string::npos) includes.push_back(line.substr(open + 1, close - open - 1));
    }
    return includes;
}

std::string code_only(std::string_view text) {
    std::string code;
    while (!text.empty()) {
        const std::size_t length = skipped_length(text, code.empty() ? ' ' : code.back());
        for (const char c : text.substr(0, length))
            code += c == '\n' ? '\n' : ' ';
        text.remove_prefix(length);
        if (length == 0) {
            code += text.front();
            text.remove_prefix(1);
        }
    }
    return code;
}

std::size_t line_count(std::string_view text) {
    return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

std::set<std::string> reachable(const std::string& folder) {
    std::set<std::string> reached;
    reach(folder, reached);
    return reached;
}

bool is_folder(const std::string& folder) { return edges().contains(folder); }

std::vector<std::string> wrong_includes(const SourceFile& file) {
    std::vector<std::string> wrong;
    const auto allowed = reachable(file.folder());
    for (const auto& include : includes_of(file.text)) {
        const bool ours = include.starts_with("model/") || include.starts_with("reports/") ||
                          include.starts_with("app/") || include.starts_with("tests/");
        if (ours && !allowed.contains(folder_of(include)))
            wrong.push_back(file.path + " includes " + include);
    }
    return wrong;
}

std::vector<std::string> wrong_links(const SourceFile& file) {
    static const std::regex target("sumpbook::([a-z_]+)(?![a-z_:])");
    std::vector<std::string> wrong;
    const auto allowed = reachable(file.folder());
    for (auto at = std::sregex_iterator(file.text.begin(), file.text.end(), target);
         at != std::sregex_iterator(); ++at) {
        const std::string name = (*at)[1];
        if (name == "data") continue; // the namespace of embedded data files
        if (!allowed.contains("model/" + name) && !allowed.contains("reports/" + name)) {
            wrong.push_back(file.path + " links " + name);
        }
    }
    return wrong;
}

bool is_qt(std::string_view include) {
    return include.starts_with("Qt") ||
           (include.size() > 1 && include[0] == 'Q' && include[1] >= 'A' && include[1] <= 'Z');
}

} // namespace sumpbook::house
