// SPDX-License-Identifier: GPL-3.0-or-later
// The house rules are only worth as much as the reading of the sources: these show that faults are seen.
#include "tests/house/source_tree.h"

#include "tests/catch.h"

using namespace sumpbook::house;

TEST_CASE("Includes are found however they are spaced", "[house]") {
    CHECK(includes_of(
              "#include <map>\n  #  include \"model/a/b.h\" // why\n// #include <no>\nint include;\n") ==
          std::vector<std::string>{"map", "model/a/b.h"});
}

TEST_CASE("Comments and literals are no code", "[house]") {
    CHECK(code_only("a // b\nc") == "a     \nc");
    CHECK(code_only("a /* b\nb */ c") == "a     \n     c");
    CHECK(code_only("f(\"x // y\", '\"', z)") == "f(        ,    , z)");
    CHECK(code_only("1'000'000 + \"\\\"\" + b") == "1'000'000 +      + b");
    CHECK(code_only("R\"(a \" b)\" c") == "           c");
    CHECK(code_only("std::cout << 1;").find("std::cout") != std::string::npos);
}

TEST_CASE("Edges lead on, and not back", "[house]") {
    CHECK(reachable("model/usage") ==
          std::set<std::string>{"model/garage", "model/quantity", "model/stats", "model/usage"});
    CHECK(reachable("model/quantity") == std::set<std::string>{"model/quantity"});
    CHECK_FALSE(reachable("reports/write").contains("model/garage"));
    CHECK(reachable("reports/compose").contains("model/store"));
}

TEST_CASE("An include against the edges is seen", "[house]") {
    const auto wrong = [](std::string path, std::string include) {
        return wrong_includes({std::move(path), "#include \"" + std::move(include) + "\"\n"}).size();
    };
    CHECK(wrong("model/stats/a.cpp", "model/oil/b.h") == 1);
    CHECK(wrong("model/quantity/a.h", "model/garage/bike.h") == 1);
    CHECK(wrong("model/oil/a.cpp", "reports/document/document.h") == 1);
    CHECK(wrong("model/oil/a.cpp", "app/cli/session.h") == 1);
    CHECK(wrong("reports/write/a.cpp", "model/garage/bike.h") == 1);
    CHECK(wrong("model/oil/a.cpp", "tests/catch.h") == 1);
    CHECK(wrong("model/oil/a.cpp", "model/stats/median.h") == 0);
    CHECK(wrong("model/oil/a.cpp", "embedded/limits_csv.h") == 0);
    CHECK(wrong("model/oil/a.cpp", "map") == 0);
}

TEST_CASE("A link against the edges is seen", "[house]") {
    const auto wrong = [](std::string links) {
        return wrong_links(
            {"model/usage/CMakeLists.txt", "sumpbook_library(usage LINKS " + std::move(links) + ")"});
    };
    CHECK(wrong("sumpbook::oil") == std::vector<std::string>{"model/usage/CMakeLists.txt links oil"});
    CHECK(wrong("sumpbook::garage sumpbook::compose").size() == 1);
    CHECK(wrong("sumpbook::garage sumpbook::stats").empty());
    CHECK(wrong("x # namespace sumpbook::data { limits_csv() }").empty());
}

TEST_CASE("Qt headers are told by their names", "[house]") {
    CHECK(is_qt("QString"));
    CHECK(is_qt("QtCharts/QChart"));
    CHECK(is_qt("QtCharts"));
    CHECK_FALSE(is_qt("queue"));
    CHECK_FALSE(is_qt("Quantity.h"));
    CHECK_FALSE(is_qt("model/quantity/decimal.h"));
}

TEST_CASE("A file knows its folder", "[house]") {
    const SourceFile file{"model/oil/profiles/a.csv", ""};
    CHECK(file.folder() == "model/oil");
    CHECK(file.is_under("model"));
    CHECK(file.is_under("model/oil"));
    CHECK_FALSE(file.is_under("model/o"));
    CHECK(SourceFile{"model/CMakeLists.txt", ""}.folder().empty());
}
