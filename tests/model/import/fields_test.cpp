// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/fields.h"

#include "model/import/value_words.h"
#include "tests/catch.h"

#include <fstream>
#include <sstream>
#include <string>

using namespace sumpbook;
using namespace sumpbook::import;

namespace {

std::string guide_page() {
    std::ifstream in(std::string(SUMPBOOK_SOURCE_DIR) + "/app/guide/import.md");
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

} // namespace

TEST_CASE("Every field of every import is in the guide") {
    const std::string guide = guide_page();
    REQUIRE_FALSE(guide.empty());
    for (const auto kind :
         {ImportKind::fuel, ImportKind::work, ImportKind::costs, ImportKind::readings, ImportKind::samples})
        for (const auto& field : fields_of(kind)) {
            INFO(name_of(kind) << ": " << field.slug);
            CHECK(guide.find(field.slug) != std::string::npos);
        }
}

TEST_CASE("A field is found by its name, whatever the case and the hyphens") {
    REQUIRE(find_field(ImportKind::fuel, "Price-Per-Unit") != nullptr);
    CHECK(find_field(ImportKind::fuel, "Price-Per-Unit")->slug == "price per unit");
    CHECK(find_field(ImportKind::fuel, "price per unit")->part == Part::money);
    CHECK(find_field(ImportKind::fuel, "Fe") == nullptr);
    CHECK(find_field(ImportKind::samples, "fe")->slug == "Fe");
}

TEST_CASE("Words stand for the values of their list only") {
    CHECK(value_of_word("work-kind", "Lay-up") == "layup");
    CHECK(value_of_word("category", "Reifen") == "tyres");
    CHECK(value_of_word("plan-item", "Oil change") == "engine-oil");
    CHECK_FALSE(value_of_word("category", "engine-oil"));
    CHECK_FALSE(value_of_word("no such list", "yes"));
    CHECK_FALSE(value_of_word("yes-no", ""));
}

TEST_CASE("A sign of several currencies is the garage's own, or refused") {
    const auto usd = Currency::from_code("USD").value();
    const auto eur = Currency::from_code("EUR").value();
    CHECK(read_currency("$", usd) == usd);
    CHECK_FALSE(read_currency("$", eur));
    CHECK(read_currency("\u20AC", usd) == eur);
    CHECK(read_currency("usd", eur) == usd);
    CHECK_FALSE(read_currency("doubloon", eur));
}
