// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/entry_fields_doubted.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::cli;

namespace {

Doubt imported(std::string heading) {
    return {.file = "fills.csv",
            .line = 2,
            .column = std::move(heading),
            .text = "x",
            .expected = "",
            .part = {}};
}
Doubt typed(std::string column) {
    return {.file = {}, .line = 0, .column = std::move(column), .text = "x", .expected = "", .part = {}};
}

} // namespace

TEST_CASE("A heading of any language stands for the option it was read into") {
    CHECK(is_about(imported("Liters"), "fuel", "--volume"));
    CHECK(is_about(imported("Volume (US gal)"), "fuel", "--volume"));
    CHECK(is_about(imported("km-Stand"), "fuel", "--odometer"));
    CHECK(is_about(imported("price per litre"), "fuel", "--price"));
    CHECK(is_about(imported("total cost"), "fuel", "--total"));
    CHECK(is_about(imported("total cost"), "work", "--paid"));
    CHECK(is_about(imported("Betrag"), "cost", "--amount"));
    CHECK(is_about(imported("not full"), "fuel", "--full"));
    CHECK(is_about(imported("DOT code"), "fit", "--tyre-code"));
    CHECK_FALSE(is_about(imported("Liters"), "fuel", "--odometer"));
}

TEST_CASE("A column of a sample is one of its values") {
    CHECK(doubted_fields("sample", imported("Eisen")) == std::vector<DoubtedField>{{"--value", "Fe"}});
}

TEST_CASE("A heading without a known word stands for nothing, one of two meanings for both") {
    CHECK(doubted_fields("fuel", imported("xyzzy")).empty());
    CHECK(is_about(imported("Price"), "fuel", "--price"));
    CHECK(is_about(imported("Price"), "fuel", "--total"));
}

TEST_CASE("What was typed is doubted by its own option") {
    CHECK(is_about(typed("volume-in"), "oil-change", "--volume-in"));
    CHECK(doubted_fields("fuel", typed("volume-in")).empty());
}
