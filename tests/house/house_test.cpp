// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/house/source_tree.h"

#include "tests/catch.h"

#include <algorithm>
#include <functional>
#include <regex>
#include <set>
#include <string>

using namespace sumpbook::house;

namespace {

using Names = std::vector<std::string>;

/// "file: what" for every file that is asked about and has the fault; fails when no file is asked about.
Names faults(const std::function<bool(const SourceFile&)>& asked,
             const std::function<Names(const SourceFile&)>& faults_of) {
    Names found;
    int files = 0;
    for (const SourceFile& file : source_files()) {
        if (!asked(file)) continue;
        ++files;
        for (const auto& fault : faults_of(file))
            found.push_back(fault);
    }
    REQUIRE(files > 0);
    return found;
}

Names words_in(const SourceFile& file, const std::string& code, const Names& words) {
    Names found;
    for (const auto& word : words) {
        if (code.find(word) != std::string::npos) found.push_back(file.path + ": " + word);
    }
    return found;
}

std::string without(std::string text, const std::string& words) {
    for (auto at = text.find(words); at != std::string::npos; at = text.find(words))
        text.erase(at, words.size());
    return text;
}

bool in_model(const SourceFile& file) { return file.is_cpp() && file.is_under("model"); }
bool in_a_folder(const SourceFile& file) { return file.is_cpp() && is_folder(file.folder()); }

/// Folders whose files may include Qt.
bool may_use_qt(const SourceFile& file) {
    return file.is_under("reports/render") || file.is_under("app/window") || file.is_under("tests");
}

/// Code, builds and scripts, which people change; and the data compiled in.
bool carries_licence(const SourceFile& file) {
    return file.is_cpp() || file.path.ends_with("CMakeLists.txt") || file.path.ends_with(".cmake") ||
           file.path.ends_with(".py") || file.path.ends_with(".sh") || file.text.starts_with("#!") ||
           (file.path.ends_with(".csv") && file.is_under("model"));
}

bool licensed(const SourceFile& file) {
    const auto line = "SPDX-License-Identifier: "; // in the first line, or behind a #! line
    const auto at = file.text.find(line);
    return at != std::string::npos && line_count(file.text.substr(0, at)) <= 1;
}

} // namespace

TEST_CASE("Includes run only along the edges between folders", "[house]") {
    CHECK(faults(in_a_folder, wrong_includes) == Names{});
    CHECK(faults([](const SourceFile& file) { return file.is_cpp() && file.is_under("app/cli"); },
                 [](const SourceFile& file) {
                     Names wrong;
                     for (const auto& include : includes_of(file.text)) {
                         if (include.starts_with("app/window") || include.starts_with("reports/render")) {
                             wrong.push_back(file.path + " includes " + include);
                         }
                     }
                     return wrong;
                 }) == Names{});
}

TEST_CASE("Every folder of model and reports is in the table of edges", "[house]") {
    CHECK(faults(
              [](const SourceFile& file) {
                  return file.is_cpp() && (file.is_under("model") || file.is_under("reports"));
              },
              [](const SourceFile& file) { return is_folder(file.folder()) ? Names{} : Names{file.path}; }) ==
          Names{});
}

TEST_CASE("Targets link only along the edges between folders", "[house]") {
    CHECK(faults(
              [](const SourceFile& file) {
                  return file.path.ends_with("/CMakeLists.txt") && is_folder(file.folder());
              },
              wrong_links) == Names{});
}

TEST_CASE("Qt is included only where pictures and windows are made", "[house]") {
    CHECK(faults([](const SourceFile& file) { return file.is_cpp() && !may_use_qt(file); },
                 [](const SourceFile& file) {
                     Names wrong;
                     for (const auto& include : includes_of(file.text)) {
                         if (is_qt(include)) wrong.push_back(file.path + " includes " + include);
                     }
                     return wrong;
                 }) == Names{});
}

TEST_CASE("Qt Charts are included only where pictures are drawn", "[house]") {
    const auto is_of_charts = [](const std::string& include) {
        return include.starts_with("QtCharts") || include.starts_with("QChart") ||
               include.starts_with("QLegend") ||
               (include.starts_with("Q") && (include.ends_with("Series") || include.ends_with("Axis")));
    };
    CHECK(is_of_charts("QChartView"));
    CHECK_FALSE(is_of_charts("QTableView"));
    CHECK(faults([](const SourceFile& file) { return file.is_cpp() && !file.is_under("reports/render"); },
                 [&](const SourceFile& file) {
                     Names wrong;
                     for (const auto& include : includes_of(file.text)) {
                         const bool tests_render = file.is_under("tests/reports/render");
                         if (is_of_charts(include) && !tests_render)
                             wrong.push_back(file.path + " includes " + include);
                     }
                     return wrong;
                 }) == Names{});
}

TEST_CASE("The model reads no clock, no locale and no environment, prints nothing and never exits",
          "[house]") {
    const Names words{"system_clock::now",
                      "steady_clock::now",
                      "std::time(",
                      "std::cout",
                      "std::cerr",
                      "std::clog",
                      "printf",
                      "puts(",
                      "getenv",
                      "std::exit",
                      "std::locale",
                      "setlocale"};
    const auto uses = [&](const SourceFile& file) {
        // Text in the classic locale is the same text everywhere.
        return words_in(file, without(code_only(file.text), "std::locale::classic()"), words);
    };
    CHECK(faults(in_model, uses) == Names{});
    CHECK(uses({"model/a.cpp", "std::locale here; f(std::locale::classic());"}) ==
          Names{"model/a.cpp: std::locale"});
    CHECK(uses({"model/a.cpp", "f(std::locale::classic()); // std::cout"}) == Names{});
}

TEST_CASE("Only the file layer touches files", "[house]") {
    const Names headers{"fstream",    "filesystem", "cstdio",     "stdio.h",  "fcntl.h", "unistd.h",
                        "sys/file.h", "sys/stat.h", "sys/mman.h", "dirent.h", "iostream"};
    const std::regex calls(
        R"((^|[^A-Za-z0-9_:>])(::(open|creat|read|write|rename|stat|mkdir|truncate|unlink)\s*\(|)"
        R"((fopen|openat|opendir|freopen|fdopen|p(read|write)v?|f(data)?sync|fstat|flock|ftruncate|)"
        R"(mkstemp|tmpfile|mmap|unlink(at)?)\s*\(|)"
        R"(std::(filesystem|rename|i?o?fstream|basic_i?o?fstream|filebuf)\b|FILE\s*\*))");
    const auto touches = [&](const SourceFile& file) {
        Names wrong;
        const std::string code = code_only(file.text);
        for (std::sregex_iterator at(code.begin(), code.end(), calls), end; at != end; ++at)
            wrong.push_back(file.path + ": " + at->str(2));
        for (const auto& include : includes_of(file.text)) {
            if (std::ranges::find(headers, include) != headers.end())
                wrong.push_back(file.path + " includes " + include);
        }
        return wrong;
    };
    const auto asked = [](const SourceFile& file) {
        return in_model(file) && file.path != "model/store/posix_file_layer.cpp";
    };
    CHECK(faults(asked, touches) == Names{});
    // The file layer itself would be found out, and so would each way round it.
    CHECK_FALSE(
        faults([&](const SourceFile& file) { return in_model(file) && !asked(file); }, touches).empty());
    CHECK(touches({"model/a.cpp", "#include <fstream>\nstd::ifstream in(path);"}) ==
          Names{"model/a.cpp: std::ifstream", "model/a.cpp includes fstream"});
    CHECK(touches({"model/a.cpp", "int f = ::open(path, 0); // fopen"}) == Names{"model/a.cpp: ::open("});
    CHECK(touches({"model/a.cpp", "if (fopen(a, b)) std::filesystem::remove(a);"}) ==
          Names{"model/a.cpp: fopen(", "model/a.cpp: std::filesystem"});
    CHECK(touches({"model/a.cpp",
                   "Io<int> A::open(int); f(layer.open(x), spread(1), reopen(2), \"fopen(\");"}) == Names{});
}

TEST_CASE("Each promise of the garage file has a test of its name", "[house]") {
    const auto tests = [](const std::string& text) {
        std::set<int> promises;
        const std::string begin = "TEST_CASE(\"Promise ";
        for (auto at = text.find(begin); at != std::string::npos; at = text.find(begin, at + 1)) {
            std::size_t digits = 0;
            const auto number = text.substr(at + begin.size(), 3);
            const int promise = std::stoi(number, &digits);
            if (number.substr(digits, 1) == ":") promises.insert(promise);
        }
        return promises;
    };
    CHECK(tests("TEST_CASE(\"Promise 10: x\")\n TEST_CASE(\"Promise 2 is\") TEST_CASE(\"Promise 3: y\")") ==
          std::set<int>{3, 10});
    std::set<int> kept;
    for (const SourceFile& file : source_files()) {
        if (file.is_under("tests/model/store") && file.path.ends_with("_test.cpp"))
            kept.merge(tests(file.text));
    }
    CHECK(kept == std::set<int>{1, 2, 3, 4, 5, 6, 7, 8, 9, 10});
}

TEST_CASE("The date library stays inside one file", "[house]") {
    CHECK(faults([](const SourceFile& file) { return file.is_cpp(); },
                 [](const SourceFile& file) {
                     Names users;
                     for (const auto& include : includes_of(file.text)) {
                         if (include.starts_with("date/")) users.push_back(file.path);
                     }
                     return users;
                 }) == Names{"model/quantity/date_text.cpp"});
}

TEST_CASE("No source is longer than 600 lines", "[house]") {
    CHECK(
        faults([](const SourceFile& file) { return file.is_cpp() || file.path.ends_with("CMakeLists.txt"); },
               [](const SourceFile& file) {
                   return line_count(file.text) > 600 ? Names{file.path} : Names{};
               }) == Names{});
}

TEST_CASE("Every source names its licence in its first lines", "[house]") {
    CHECK(faults(carries_licence, [](const SourceFile& file) {
              return licensed(file) ? Names{} : Names{file.path};
          }) == Names{});
}

TEST_CASE("Nothing is left to do in the sources", "[house]") {
    // In pieces, so that this file does not hold the words itself.
    const Names words{"TO"
                      "DO",
                      "FIX"
                      "ME",
                      "X"
                      "XX:",
                      "not impl"
                      "emented"};
    CHECK(faults([](const SourceFile& file) { return carries_licence(file); },
                 [&](const SourceFile& file) { return words_in(file, file.text, words); }) == Names{});
}

TEST_CASE("Nothing is added to the top level", "[house]") {
    const std::set<std::string> allowed{
        "CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "LICENSE", "app",
        "model",          "reports",           "tests",     "sample_garage"};
    for (const auto& name : top_level()) {
        INFO(name);
        CHECK(allowed.contains(name));
    }
    for (const auto& name :
         {"CMakeLists.txt", "CMakePresets.json", "LICENSE", "app", "model", "reports", "tests"}) {
        INFO(name);
        CHECK(top_level().contains(name));
    }
}
