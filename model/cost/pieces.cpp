// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/cost/pieces.h"

#include <set>

namespace sumpbook::cost {

std::vector<Piece> pieces_of(const Date& last_reading, const Date& today, int months) {
    const Date end = plus_months(today, months);
    std::set<Date> cuts{end};
    for (std::chrono::year_month month{today.year(), today.month()};; month += std::chrono::months{1}) {
        const Date month_end{month / std::chrono::last};
        if (month_end >= end) break;
        if (month_end > today) cuts.insert(month_end);
    }
    for (int after = 12; after < months; after += 12)
        cuts.insert(plus_months(today, after));
    std::vector<Piece> pieces;
    const auto add = [&](const Date& after, const Date& last) {
        pieces.push_back({after, last, static_cast<double>(days_between(today, after)),
                          static_cast<double>(days_between(today, last))});
    };
    add(last_reading, today);
    for (const Date& cut : cuts)
        add(pieces.back().last, cut);
    return pieces;
}

} // namespace sumpbook::cost
