// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/wear_line.h"

#include "model/stats/line_fit.h"

#include <algorithm>
#include <cmath>

namespace sumpbook::upkeep {
namespace {

constexpr double new_part_share = 0.1; // DESIGN
constexpr double furthest_km = 1e6;    // past any bike's life: no forecast

/// How far a value is from the limit; 0 at it, below 0 past it.
double left(const Decimal& value, const Decimal& limit, WearDirection direction) {
    const double fall = value.to_double() - limit.to_double();
    return direction == WearDirection::falls ? fall : -fall;
}

struct Line {
    double slope = 0;
    double intercept = 0;
};

std::optional<Line> line_through(const std::vector<double>& km, const std::vector<double>& values) {
    if (km.size() == 2) {
        if (km[0] == km[1]) return std::nullopt;
        const double slope = (values[1] - values[0]) / (km[1] - km[0]);
        return Line{slope, values[0] - slope * km[0]};
    }
    const auto fit = stats::fit_line(km, values);
    return fit ? std::optional(Line{fit->slope, fit->intercept}) : std::nullopt;
}

std::optional<Distance> first_worn_at(const std::vector<WearPoint>& points, const Decimal& limit,
                                      WearDirection direction) {
    const auto found = std::ranges::find_if(points, [&](const WearPoint& point) {
        return point.distance && worn_out(point.value, limit, direction);
    });
    return found == points.end() ? std::nullopt : found->distance;
}

} // namespace

bool worn_out(const Decimal& value, const Decimal& limit, WearDirection direction) {
    return direction == WearDirection::falls ? value <= limit : value >= limit;
}

std::vector<WearPoint> since_new(const std::vector<WearPoint>& points, const Decimal& limit,
                                 WearDirection direction) {
    std::vector<WearPoint> kept;
    double best = 0;
    for (const auto& point : points) {
        const double now = left(point.value, limit, direction);
        const double before = kept.empty() ? now : left(kept.back().value, limit, direction);
        if (now - before > new_part_share * std::max(best, now)) {
            kept.clear();
            best = 0;
        }
        best = std::max(best, now);
        kept.push_back(point);
    }
    return kept;
}

std::optional<Distance> worn_out_at(const std::vector<WearPoint>& points, const Decimal& limit,
                                    WearDirection direction) {
    if (points.empty()) return std::nullopt;
    if (worn_out(points.back().value, limit, direction)) return first_worn_at(points, limit, direction);
    std::vector<double> km;
    std::vector<double> lefts;
    Distance last;
    for (const auto& point : points) {
        if (!point.distance) continue;
        last = *point.distance;
        km.push_back(last.km());
        lefts.push_back(left(point.value, limit, direction));
    }
    if (km.size() < 2) return std::nullopt;
    const auto line = line_through(km, lefts);
    if (!line || line->slope >= 0) return std::nullopt;
    const double meets = std::max(-line->intercept / line->slope, km.back());
    if (meets > km.back() + furthest_km) return std::nullopt;
    return std::max(Distance::from_whole_km(std::llround(meets)), last);
}

} // namespace sumpbook::upkeep
