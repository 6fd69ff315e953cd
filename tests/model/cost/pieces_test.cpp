// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/pieces.h"

#include "model/cost/forecast_groups.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::cost;
using namespace sumpbook::testing;

namespace {

std::vector<std::string> ends(const std::vector<Piece>& pieces) {
    std::vector<std::string> days;
    for (const auto& piece : pieces)
        days.push_back(iso_text(piece.last));
    return days;
}

} // namespace

TEST_CASE("Pieces end with each month, 12 months from today and at the horizon") {
    const auto pieces = pieces_of(day("2026-03-20"), day("2026-04-10"), 14);
    CHECK(ends(pieces) == std::vector<std::string>{"2026-04-10", "2026-04-30", "2026-05-31", "2026-06-30",
                                                   "2026-07-31", "2026-08-31", "2026-09-30", "2026-10-31",
                                                   "2026-11-30", "2026-12-31", "2027-01-31", "2027-02-28",
                                                   "2027-03-31", "2027-04-10", "2027-04-30", "2027-05-31",
                                                   "2027-06-10"});
    CHECK(pieces[0].from_day == -21);
    CHECK(pieces[0].to_day == 0);
    CHECK(pieces[1].from_day == 0);
    CHECK(pieces[1].to_day == 20);
    CHECK(pieces[1].middle_day() == 10);
    for (std::size_t i = 1; i < pieces.size(); ++i)
        CHECK(pieces[i].after == pieces[i - 1].last);
}

TEST_CASE("From the end of a month the first piece is the next month") {
    const auto pieces = pieces_of(day("2026-01-31"), day("2026-01-31"), 12);
    CHECK(ends(pieces).at(1) == "2026-02-28");
    CHECK(ends(pieces).back() == "2027-01-31");
    CHECK(pieces.size() == 13);
}

TEST_CASE("What is done today counts in today's month and year") {
    const auto pieces = pieces_of(day("2026-12-31"), day("2026-12-31"), 12);
    const auto groups = forecast_groups(pieces, {"Tourer"}, {"fuel"});
    using Kind = ForecastGroup::Kind;
    const auto group = [&](Kind kind, std::string_view key = {}) {
        const auto found = std::ranges::find_if(groups, [&](const ForecastGroup& each) {
            return each.kind == kind && (key.empty() || each.key == key);
        });
        REQUIRE(found != groups.end());
        return *found;
    };
    CHECK(group(Kind::rest_of_year).last_piece == 0);
    CHECK(group(Kind::month, "2026-12").last_piece == 0);
    CHECK(group(Kind::year, "2027").first_piece == 1);
    CHECK(group(Kind::next_12_months).last_piece == 12);
}
