// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/quantity/dates.h"

#include "tests/catch.h"
#include "tests/model/quantity/generators.h"

#include <type_traits>

using namespace sumpbook;

static_assert(std::is_trivially_copyable_v<RecordedTime>);

namespace {

Date day(std::string_view iso) { return parse_iso_date(iso).value(); }

std::string after_months(std::string_view iso, int months) { return iso_text(plus_months(day(iso), months)); }

} // namespace

TEST_CASE("Months keep the day of the month and clamp to the month's end", "[dates]") {
    CHECK(after_months("2024-01-31", 1) == "2024-02-29");
    CHECK(after_months("2023-01-31", 1) == "2023-02-28");
    CHECK(after_months("2024-02-29", 12) == "2025-02-28");
    CHECK(after_months("2024-02-29", 48) == "2028-02-29");
    CHECK(after_months("2024-08-31", 1) == "2024-09-30");
    CHECK(after_months("2024-12-15", 1) == "2025-01-15");
    CHECK(after_months("2024-03-31", -1) == "2024-02-29");
    CHECK(after_months("2024-01-15", -13) == "2022-12-15");
    CHECK(after_months("2024-01-31", 0) == "2024-01-31");
}

TEST_CASE("A grid of months starts from its first day, never from the clamped one", "[dates]") {
    const Date start = day("2024-01-31");
    CHECK(iso_text(plus_months(start, 2)) == "2024-03-31");
    CHECK(iso_text(plus_months(plus_months(start, 1), 1)) == "2024-03-29");
}

TEST_CASE("Days are counted over leap days and centuries", "[dates]") {
    CHECK(days_between(day("2024-02-28"), day("2024-03-01")) == 2);
    CHECK(days_between(day("1900-02-28"), day("1900-03-01")) == 1);
    CHECK(days_between(day("2000-02-28"), day("2000-03-01")) == 2);
    CHECK(days_between(day("2024-03-01"), day("2024-02-28")) == -2);
    CHECK(days_between(day("1900-01-01"), day("2100-12-31")) == 73'413);
    CHECK(iso_text(plus_days(day("2023-12-31"), 1)) == "2024-01-01");
}

TEST_CASE("Properties of date arithmetic", "[dates][property]") {
    rc::prop("days added are the days between", [] {
        const auto date = *tests::days();
        const int count = *rc::gen::inRange(-40'000, 40'000);
        RC_ASSERT(days_between(date, plus_days(date, count)) == count);
    });
    rc::prop("months added land in the right month, on the same day or on the month's last", [] {
        const auto date = *tests::days();
        const int months = *rc::gen::inRange(-600, 600);
        const Date moved = plus_months(date, months);
        RC_ASSERT(moved.ok());
        RC_ASSERT((moved.year() / moved.month() - date.year() / date.month()) == std::chrono::months{months});
        RC_ASSERT(
            moved.day() == date.day() ||
            (moved.day() < date.day() && moved == Date{moved.year() / moved.month() / std::chrono::last}));
    });
    rc::prop("more months are never an earlier day", [] {
        const auto date = *tests::days();
        const int months = *rc::gen::inRange(-600, 600);
        RC_ASSERT(plus_months(date, months) < plus_months(date, months + 1));
    });
}
