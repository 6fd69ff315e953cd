// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/mark_shape.h"

#include <array>
#include <cmath>
#include <numbers>

namespace sumpbook::plot {

namespace {

/// `count` corners on a circle from the top on, each second one at `inner` of the way where it is below 1.
std::vector<Corner> round_about(int count, double inner) {
    std::vector<Corner> result;
    for (int i = 0; i < count; ++i) {
        const double angle = 2 * std::numbers::pi * i / count;
        const double reach = i % 2 == 0 ? 1 : inner;
        result.push_back({reach * std::sin(angle), -reach * std::cos(angle)});
    }
    return result;
}

} // namespace

std::vector<Corner> corners(Mark mark) {
    constexpr double pentagram = 0.382; // where the lines of a five-pointed star cross
    switch (mark) {
    case Mark::none:
    case Mark::circle:
        break;
    case Mark::square:
        return {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
    case Mark::triangle:
        return {{0, -1}, {1, 1}, {-1, 1}};
    case Mark::diamond:
        return {{0, -1}, {1, 0}, {0, 1}, {-1, 0}};
    case Mark::star:
        return round_about(10, pentagram);
    case Mark::pentagon:
        return round_about(5, 1);
    }
    return {};
}

double mark_share(Mark mark) {
    constexpr std::array shares{0.0, 1.0, 0.95, 1.15, 1.3, 1.55, 1.15};
    return shares.at(static_cast<std::size_t>(mark));
}

} // namespace sumpbook::plot
