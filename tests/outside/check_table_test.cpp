// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/outside/check_table.h"

#include "tests/catch.h"

#include <stdexcept>

using namespace sumpbook::outside;

TEST_CASE("Check tables are read by RFC 4180", "[harness]") {
    // RFC 4180, section 2, rules 1, 2, 5, 6 and 7.
    CHECK(csv_records("aaa,bbb,ccc\r\nzzz,yyy,xxx") ==
          std::vector<std::vector<std::string>>{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(csv_records("a,b\n").size() == 1);
    CHECK(csv_records("\"aaa\",\"b\r\nbb\",\"ccc\"").front().at(1) == "b\r\nbb");
    CHECK(csv_records("\"aaa\",\"b\"\"bb\",\"ccc\"").front().at(1) == "b\"bb");
    CHECK(csv_records("a,,\n").front() == std::vector<std::string>{"a", "", ""});
    CHECK_THROWS_AS(csv_records("\"open"), std::logic_error);
    CHECK_THROWS_AS(csv_records("a\"b"), std::logic_error);
    CHECK_THROWS_AS(csv_records("\"a\"b"), std::logic_error);
}

TEST_CASE("A row has a key no other row of its table has", "[harness]") {
    CHECK(check_table("std-units.csv").front().key() == "US liquid gallon in litres");
    CHECK(check_table("std-money-cases.csv").front().key() == "1234 | JPY");
    CHECK(check_row("std-money-cases.csv", "5 | USD")["text"] == "0.05");
    CHECK_THROWS_AS(check_row("std-money-cases.csv", "6 | USD"), std::logic_error);
    CHECK_THROWS_AS(check_table("no-such-table.csv"), std::logic_error);
    CHECK_THROWS_AS(check_table("std-units.csv").front()["no such column"], std::logic_error);
}

TEST_CASE("Numbers of a check table may carry the dots of a recurring decimal", "[harness]") {
    CHECK(check_row("std-units.csv", "L/100km x mpg(US)").number("value") == 235.2145833333);
    CHECK(check_row("std-units.csv", "bar in kPa").number("value") == 100);
    CHECK_THROWS_AS(check_row("std-units.csv", "bar in kPa").number("exact"), std::logic_error);
}

TEST_CASE("The account of rows finds what was neither tested nor skipped", "[harness]") {
    Account account;
    account.read["t.csv"] = {"a", "b", "c"};
    account.tested["t.csv"] = {{"a", 2}, {"b", 1}};
    account.skip["t.csv"] = {{"c", "prose"}};
    CHECK(complaints_about(account).empty());
    CHECK(summary_of(account) == std::vector<std::string>{"t.csv: 3 read, 2 tested, 1 skipped: prose"});

    SECTION("a row nobody tested") {
        account.tested["t.csv"].erase("b");
        CHECK(complaints_about(account) == std::vector<std::string>{"t.csv: neither tested nor skipped: b"});
    }
    SECTION("a table nobody opened") {
        account.read["u.csv"] = {"x"};
        CHECK(complaints_about(account) == std::vector<std::string>{"u.csv: neither tested nor skipped: x"});
    }
    SECTION("a skip that is no longer one") {
        account.tested["t.csv"]["c"] = 1;
        CHECK(complaints_about(account) ==
              std::vector<std::string>{"t.csv: listed as skipped, but tested: c"});
    }
    SECTION("a skip of a row that is not there") {
        account.skip["t.csv"]["d"] = "gone";
        CHECK(complaints_about(account) ==
              std::vector<std::string>{"t.csv: the list of skips names no such row: d"});
    }
    SECTION("a skip without a reason") {
        account.skip["t.csv"]["c"] = "";
        CHECK(complaints_about(account) == std::vector<std::string>{"t.csv: skipped without a reason: c"});
    }
}
