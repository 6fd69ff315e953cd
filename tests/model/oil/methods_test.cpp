// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/methods.h"
#include "tests/catch.h"

using namespace sumpbook::oil;

TEST_CASE("A method is known by its number, whatever the edition", "[oil]") {
    using Method = std::optional<std::string>;
    CHECK(method_of("tbn", "ASTM D2896-21") == Method("perchloric"));
    CHECK(method_of("tbn", "d4739") == Method("hydrochloric"));
    CHECK(method_of("flash", "ASTM D92") == Method("open-cup"));
    CHECK(method_of("flash", "Pensky-Martens") == Method("closed-cup"));
    CHECK(method_of("flash", "ASTM D924") == Method("astmd924"));
    CHECK(method_of("tbn", "house method 7") == Method("housemethod7"));
    CHECK_FALSE(method_of("tbn", " ").has_value());
    CHECK_FALSE(method_of("tbn", std::nullopt).has_value());
}
