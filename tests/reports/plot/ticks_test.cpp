// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/text.h"
#include "reports/plot/ticks.h"

#include "tests/catch.h"

#include <cmath>
#include <random>

using namespace sumpbook;
using namespace sumpbook::plot;

namespace {

std::vector<std::string> labels(const std::vector<Tick>& ticks) {
    std::vector<std::string> result;
    for (const Tick& tick : ticks)
        result.push_back(tick.label);
    return result;
}

Range days(const char* from, const char* to) {
    return {day_position(*parse_iso_date(from)), day_position(*parse_iso_date(to))};
}

using Labels = std::vector<std::string>;

} // namespace

TEST_CASE("Ticks of a linear axis are multiples of 1, 2 or 5 times a power of ten", "[ticks]") {
    CHECK(labels(linear_ticks({0, 100}, 6)) == Labels{"0", "20", "40", "60", "80", "100"});
    CHECK(labels(linear_ticks({0.3, 97.1}, 6)) == Labels{"20", "40", "60", "80"});
    CHECK(labels(linear_ticks({-1.5, 1.5}, 8)) == Labels{"-1.5", "-1.0", "-0.5", "0.0", "0.5", "1.0", "1.5"});
    CHECK(labels(linear_ticks({40000, 54000}, 5)) == Labels{"40 000", "45 000", "50 000"});
    CHECK(labels(linear_ticks({0, 1234567}, 4)) == Labels{"0", "500 000", "1 000 000"});
    CHECK(labels(linear_ticks({0.011, 0.019}, 10)).front() == "0.011");
    CHECK(linear_ticks({5, 5}, 6).empty());
}

TEST_CASE("There are never more ticks than asked, and they lie on the axis", "[ticks]") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> exponent(-6, 9), start(-1, 1);
    for (int i = 0; i < 2000; ++i) {
        const double length = std::pow(10, exponent(random));
        const double from = start(random) * length * 10;
        const Range range{from, from + length};
        const int at_most = 3 + i % 10;
        const auto ticks = linear_ticks(range, at_most);
        CAPTURE(range.from, range.to, at_most);
        REQUIRE(static_cast<int>(ticks.size()) <= at_most);
        REQUIRE_FALSE(ticks.empty());
        for (const Tick& tick : ticks)
            REQUIRE((tick.at >= range.from - length * 1e-6 && tick.at <= range.to + length * 1e-6));
    }
}

TEST_CASE("Logarithmic axes have decades, and 1-2-5 where they are short", "[ticks]") {
    CHECK(labels(logarithmic_ticks({1, 100}, 8)) == Labels{"1", "2", "5", "10", "20", "50", "100"});
    CHECK(labels(logarithmic_ticks({1, 10000}, 6)) == Labels{"1", "10", "100", "1 000", "10 000"});
    CHECK(labels(logarithmic_ticks({0.01, 1}, 4)) == Labels{"0.01", "0.1", "1"});
    CHECK(logarithmic_ticks({0, 10}, 5).empty());
    CHECK(logarithmic_ticks({-1, 10}, 5).empty());
    CHECK(logarithmic_ticks({1e-9, 1e9}, 5).size() <= 5);
}

TEST_CASE("Date axes mark the first days of what fits", "[ticks]") {
    CHECK(labels(date_ticks(days("2026-02-27", "2026-03-04"), 8)) ==
          Labels{"27 Feb 2026", "28 Feb", "1 Mar", "2 Mar", "3 Mar", "4 Mar"});
    // 2026-03-02 is a Monday.
    CHECK(labels(date_ticks(days("2026-03-01", "2026-03-25"), 5)) ==
          Labels{"2 Mar 2026", "9 Mar", "16 Mar", "23 Mar"});
    CHECK(labels(date_ticks(days("2025-12-15", "2026-03-15"), 4)) ==
          Labels{"Jan 2026", "Feb 2026", "Mar 2026"});
    CHECK(labels(date_ticks(days("2025-01-01", "2026-12-31"), 8)) ==
          Labels{"Jan 2025", "Apr 2025", "Jul 2025", "Oct 2025", "Jan 2026", "Apr 2026", "Jul 2026",
                 "Oct 2026"});
    CHECK(labels(date_ticks(days("2019-05-05", "2026-03-03"), 7)) ==
          Labels{"2020", "2021", "2022", "2023", "2024", "2025", "2026"});
    CHECK(labels(date_ticks(days("1985-05-05", "2026-03-03"), 5)) == Labels{"1990", "2000", "2010", "2020"});
    for (const Tick& tick : date_ticks(days("2023-05-02", "2026-02-14"), 7))
        CHECK(static_cast<unsigned>(day_at(tick.at).day()) == 1);
    CHECK(date_ticks(days("2026-01-01", "2026-01-01"), 5).empty());
}

TEST_CASE("An axis is widened to whole steps, and never from nothing to nothing", "[ticks]") {
    const Axis linear{AxisKind::linear, "x"};
    CHECK(nice(linear, {3, 97}, 6) == Range{0, 100});
    CHECK(nice(linear, {41000, 46600}, 8) == Range{41000, 47000});
    const Range flat = nice(linear, {5, 5}, 6);
    CHECK((flat.from < 5 && flat.to > 5));
    CHECK(nice(linear, {0, 0}, 6).from == 0);
    CHECK(nice(linear, {0, 0}, 6).to > 0);
    const Axis fixed{AxisKind::linear, "x", 0, 45};
    CHECK(nice(fixed, {8, 31}, 6) == Range{0, 45});
    const Axis logarithmic{AxisKind::logarithmic, "y"};
    CHECK(nice(logarithmic, {0.7, 2900}, 6) == Range{0.5, 5000});
    const Range single = nice(logarithmic, {10, 10}, 6);
    CHECK((single.from > 0 && single.from < 10 && single.to > 10));
    CHECK(nice(logarithmic, {0, 0}, 6).from > 0);
    const Range day = nice({AxisKind::date, "d"}, {100, 100}, 6);
    CHECK((day.from < 100 && day.to > 100));
    CHECK(nice({AxisKind::category, "", {}, {}, {"a", "b"}}, {}, 6) == Range{-0.5, 1.5});
}

TEST_CASE("Labels beside each other keep half an em apart", "[ticks]") {
    const Axis dates{AxisKind::date, "Date"};
    for (double length = 60; length < 1200; length += 7) {
        const Range range = days("2023-05-02", "2026-02-14");
        const auto found = ticks(dates, range, Direction::across, length, 12);
        CAPTURE(length);
        for (std::size_t i = 1; i < found.size(); ++i) {
            const double apart = (found[i].at - found[i - 1].at) / (range.to - range.from) * length;
            REQUIRE(apart >=
                    (text_width(found[i].label, 12) + text_width(found[i - 1].label, 12)) / 2 + 6 - 1e-6);
        }
    }
}

TEST_CASE("Category labels are shortened, then only some are written", "[ticks]") {
    Axis axis{AxisKind::category, ""};
    axis.categories = {"fuel", "insurance", "carburettor synchronisation"};
    CHECK(labels(ticks(axis, {}, Direction::across, 900, 12)) == Labels(axis.categories));
    const auto narrow = labels(ticks(axis, {}, Direction::across, 270, 12));
    CHECK(narrow[0] == "fuel");
    CHECK(narrow[2].ends_with("\u2026"));
    axis.categories.assign(30, "carburettor");
    const auto thin = ticks(axis, {}, Direction::across, 600, 12);
    REQUIRE(thin.size() == 30);
    CHECK_FALSE(thin[0].label.empty());
    CHECK(thin[1].label.empty());
    CHECK(ticks(axis, {}, Direction::up, 1000, 12)[1].label == "carburettor");
}
