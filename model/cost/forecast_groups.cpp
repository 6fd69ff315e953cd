// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/forecast_groups.h"

namespace sumpbook::cost {
namespace {

using Kind = ForecastGroup::Kind;

/// Consecutive pieces whose last days share the first characters of their date: a year 4, a month 7.
void add_calendar(std::vector<ForecastGroup>& groups, const std::vector<Piece>& pieces, Kind kind,
                  std::size_t characters) {
    std::string previous;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        std::string key = iso_text(pieces[i].last).substr(0, characters);
        if (i == 0 || key != previous)
            groups.push_back({kind, key, {}, {}, i, i});
        else
            groups.back().last_piece = i;
        previous = std::move(key);
    }
}

/// All together, then each bike and each category by itself.
void add_kinds_of(std::vector<ForecastGroup>& groups, const ForecastGroup& all,
                  const std::vector<std::string>& bikes, const std::vector<std::string>& categories) {
    const bool rest = all.kind == Kind::rest_of_year;
    groups.push_back(all);
    for (std::size_t i = 0; i < bikes.size(); ++i) {
        groups.push_back(all);
        groups.back().kind = rest ? all.kind : Kind::bike;
        groups.back().key = bikes[i];
        groups.back().bike = i;
    }
    for (std::size_t i = 0; i < categories.size(); ++i) {
        groups.push_back(all);
        groups.back().kind = rest ? all.kind : Kind::category;
        groups.back().key = categories[i];
        groups.back().category = i;
    }
}

} // namespace

std::vector<ForecastGroup> forecast_groups(const std::vector<Piece>& pieces,
                                           const std::vector<std::string>& bikes,
                                           const std::vector<std::string>& categories) {
    std::vector<ForecastGroup> groups;
    const Date today = pieces.front().last;
    const Date in_a_year = plus_months(today, 12);
    std::size_t last_of_12_months = 0;
    std::size_t last_of_year = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (pieces[i].last <= in_a_year) last_of_12_months = i;
        if (pieces[i].last.year() == today.year()) last_of_year = i;
    }
    add_kinds_of(groups, {Kind::next_12_months, {}, {}, {}, 0, last_of_12_months}, bikes, categories);
    add_kinds_of(groups, {Kind::rest_of_year, {}, {}, {}, 0, last_of_year}, bikes, categories);
    add_calendar(groups, pieces, Kind::month, 7);
    add_calendar(groups, pieces, Kind::year, 4);
    for (std::size_t i = 1; i < pieces.size(); ++i)
        groups.push_back({Kind::up_to_month, iso_text(pieces[i].last), {}, {}, 0, i});
    return groups;
}

} // namespace sumpbook::cost
