// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/file_counts.h"

#include "tests/catch.h"

using namespace sumpbook::compose;

TEST_CASE("Numbers of things are said as people say them") {
    CHECK(count_of(0, "record") == "no record");
    CHECK(count_of(1, "record") == "1 record");
    CHECK(count_of(2, "record") == "2 records");
}

TEST_CASE("A file's name in a suggested command is taken by a shell as it is") {
    CHECK(typed_name("my.sumpbook") == "my.sumpbook");
    CHECK(typed_name("/home/x/a_b-1.sumpbook") == "/home/x/a_b-1.sumpbook");
    CHECK(typed_name("my garage.sumpbook") == "'my garage.sumpbook'");
    CHECK(typed_name("it's.sumpbook") == "'it'\\''s.sumpbook'");
    CHECK(typed_name("$(rm x)") == "'$(rm x)'");
    CHECK(typed_name("") == "''");
}

TEST_CASE("What was written is said with what it holds") {
    CHECK(written_words({.path = "a.sumpbook", .bytes = 1, .frames = 1, .entries = 3, .fingerprints = 0}) ==
          "Wrote a.sumpbook: 3 records in 1 frame. It was read back and verifies.");
    CHECK(written_words({.path = "a.sumpbook", .bytes = 1, .frames = 2, .entries = 1, .fingerprints = 2}) ==
          "Wrote a.sumpbook: 1 record in 2 frames and 2 fingerprints. It was read back and verifies.");
}
