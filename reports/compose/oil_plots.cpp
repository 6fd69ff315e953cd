// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/oil_plots.h"

#include "model/oil/quantities.h"
#include "model/oil/words.h"
#include "reports/compose/calc_figures.h"
#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using oil::QuantityTrend;
using oil::TrendPoint;
using plot::Tone;

constexpr std::size_t most_metals = 6;
constexpr Tone tones[most_metals] = {Tone::first,  Tone::second, Tone::third,
                                     Tone::fourth, Tone::fifth,  Tone::sixth};

/// Where the point stands: at half the limit where it is below detection. Absent without an odometer or an
/// amount.
std::optional<plot::Point> point_of(const TrendPoint& point, const QuantityTrend& trend) {
    const bool below = point.value.state == ValueState::below;
    if (!point.position || (!below && point.value.state != ValueState::measured)) return std::nullopt;
    const auto number = oil::in_oil_unit(
        point.value.number, point.value.unit.empty() ? trend.unit : point.value.unit, trend.unit);
    if (!number) return std::nullopt;
    const double x = in_unit(*point.position, trend.dial_unit, 1).to_double();
    return plot::Point{x, below ? number->to_double() / 2 : number->to_double(), below};
}

plot::Series series_of(const QuantityTrend& trend, std::size_t place) {
    plot::Series series;
    series.label = oil::quantity_name(trend.quantity);
    series.tone = tones[place % most_metals];
    std::size_t fill = 0;
    for (const TrendPoint& each : trend.points) {
        const auto point = point_of(each, trend);
        if (!point) continue;
        if (series.runs.empty() || each.fill != fill) series.runs.emplace_back();
        fill = each.fill;
        series.runs.back().push_back(*point);
    }
    return series;
}

bool ever_detected(const QuantityTrend& trend) {
    return std::any_of(trend.points.begin(), trend.points.end(),
                       [](const TrendPoint& point) { return point.value.state == ValueState::measured; });
}

plot::Axis odometer_axis(DistanceUnit unit) {
    plot::Axis axis;
    axis.title = unit == DistanceUnit::mi ? "Odometer, mi" : "Odometer, km";
    return axis;
}

/// The signs that text on a terminal does without.
std::string in_signs(std::string text) {
    for (const auto& [plain, sign] : {std::pair{"100 C", "100 °C"}, {"40 C", "40 °C"}, {"mm2/s", "mm²/s"}}) {
        if (const auto at = text.find(plain); at != std::string::npos)
            text.replace(at, std::string_view(plain).size(), sign);
    }
    return text;
}

std::string with_unit(const std::string& text, const std::string& unit) {
    return unit.empty() ? text : text + ", " + in_signs(unit);
}

std::string capital(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

plot::Plot empty_plot(const QuantityTrend& trend, const std::string& what) {
    plot::Plot plot;
    plot.title = trend.bike + ", " + in_signs(what) + " over the odometer";
    plot.x = odometer_axis(trend.dial_unit);
    plot.y.title = with_unit(capital(in_signs(what)), trend.unit);
    plot.y.from = 0;
    return plot;
}

/// "17", and "below 1" of a point that is drawn at half the detection limit.
std::string point_words(const plot::Point& point) {
    const auto text =
        grouped(without_trailing_zeros(decimal_from_double(point.hollow ? 2 * point.y : point.y, 2)));
    return point.hollow ? "below " + text : text;
}

/// "latest 21, lowest below 1, highest 32 mg/kg".
std::string range_words(const QuantityTrend& trend, const plot::Series& series) {
    plot::Point low = series.runs.front().front();
    plot::Point high = low;
    for (const auto& run : series.runs) {
        for (const plot::Point& point : run) {
            if (point.y < low.y) low = point;
            if (point.y > high.y) high = point;
        }
    }
    return "latest " + point_words(series.runs.back().back()) + ", lowest " + point_words(low) +
           ", highest " + point_words(high) + (trend.unit.empty() ? "" : " " + in_signs(trend.unit));
}

Tone tone_of(oil::Ladder ladder) {
    if (ladder == oil::Ladder::act) return Tone::danger;
    return ladder == oil::Ladder::watch ? Tone::caution : Tone::good;
}

void add_levels(plot::Plot& plot, const QuantityTrend& trend) {
    if (trend.levels.empty()) return;
    plot.bands.push_back({"below the levels of " + trend.set, std::nullopt,
                          trend.levels.front().value.to_double(), Tone::good});
    for (std::size_t i = 0; i < trend.levels.size(); ++i) {
        const auto& level = trend.levels[i];
        const auto next = i + 1 < trend.levels.size()
                              ? std::optional<double>(trend.levels[i + 1].value.to_double())
                              : std::nullopt;
        plot.bands.push_back(
            {level.level + " (" + trend.set + ")", level.value.to_double(), next, tone_of(level.ladder)});
    }
}

/// The series of one quantity and what it shows in words.
void add_one(plot::Plot& plot, const QuantityTrend& trend) {
    plot::Series series = series_of(trend, 0);
    if (series.runs.empty()) return;
    plot.description = capital(range_words(trend, series)) + ".";
    plot.series.push_back(std::move(series));
}

/// The metals that can be drawn: seen at least once, with an odometer.
std::vector<const QuantityTrend*> drawable(const std::vector<const QuantityTrend*>& trends) {
    std::vector<const QuantityTrend*> found;
    for (const QuantityTrend* trend : trends) {
        const bool can = oil::is_wear_metal(trend->quantity) && ever_detected(*trend) &&
                         !series_of(*trend, 0).runs.empty();
        if (can && found.size() < most_metals) found.push_back(trend);
    }
    return found;
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const auto& part : parts)
        text += (text.empty() ? "" : "; ") + part;
    return text;
}

/// 100 is the first level of each metal; what it is called where all of them agree.
void add_share_bands(plot::Plot& plot, const std::vector<const QuantityTrend*>& metals) {
    constexpr double limit = 100;
    constexpr double near = 80; // DESIGN (numbers.md 6.1)
    const auto& first = *metals.front();
    const auto& level = first.levels.front();
    const bool one_limit = std::ranges::all_of(metals, [&](const QuantityTrend* trend) {
        return trend->levels.size() == 1 && trend->levels.front().ladder == oil::Ladder::act;
    });
    const bool one_name = std::ranges::all_of(metals, [&](const QuantityTrend* trend) {
        return trend->set == first.set && trend->levels.front().level == level.level;
    });
    const std::string name = one_name ? level.level + " (" + first.set + ")" : "first level reached";
    plot.bands.push_back({"within", std::nullopt, one_limit ? near : limit, Tone::good});
    if (one_limit) plot.bands.push_back({"watch (our 80 %)", near, limit, Tone::caution});
    plot.bands.push_back({name, limit, std::nullopt, tone_of(level.ladder)});
}

/// The whole band of the grade is in sight, and a little on both sides of it.
void show_band(plot::Plot& plot) {
    const auto& band = plot.bands.back();
    double low = band.from.value_or(0);
    double high = band.to.value_or(low);
    for (const auto& series : plot.series) {
        for (const auto& run : series.runs) {
            for (const auto& point : run) {
                low = std::min(low, point.y);
                high = std::max(high, point.y);
            }
        }
    }
    constexpr double margin = 0.05;
    plot.y.from = low - margin * (high - low);
    plot.y.to = high + margin * (high - low);
}

/// Each metal in per cent of its own limit, so that all of them stand before the same bands.
plot::Plot share_plot(const std::vector<const QuantityTrend*>& metals,
                      const std::vector<std::string>& without_limit) {
    plot::Plot plot = empty_plot(*metals.front(), "wear metals");
    plot.title = metals.front()->bike + ", wear metals against their limits";
    plot.y.title = "Share of the limit in brackets, %";
    double highest = 0;
    std::vector<std::string> said;
    for (const QuantityTrend* trend : metals) {
        const double limit = trend->levels.front().value.to_double();
        plot::Series series = series_of(*trend, plot.series.size());
        const std::string bracket =
            grouped(without_trailing_zeros(trend->levels.front().value)) + " " + trend->unit;
        said.push_back(series.label + " " + range_words(*trend, series) + ", limit " + bracket);
        series.label += " (" + bracket + ")";
        for (auto& run : series.runs) {
            for (auto& point : run) {
                point.y *= 100 / limit;
                highest = std::max(highest, point.y);
            }
        }
        plot.series.push_back(std::move(series));
    }
    constexpr double lowest_top = 120; // the limit is always in sight
    constexpr double headroom = 1.08;
    plot.y.to = std::max(lowest_top, highest * headroom);
    add_share_bands(plot, metals);
    plot.description = "In each sample, parted by fills of oil: " + joined(said) + ".";
    if (!without_limit.empty())
        plot.description += " No published limit, so not drawn: " + joined(without_limit) + ".";
    return plot;
}

plot::Plot amounts_plot(const std::vector<const QuantityTrend*>& metals) {
    plot::Plot plot = empty_plot(*metals.front(), "wear metals");
    std::vector<std::string> said;
    for (const QuantityTrend* trend : metals) {
        plot::Series series = series_of(*trend, plot.series.size());
        said.push_back(series.label + " " + range_words(*trend, series));
        plot.series.push_back(std::move(series));
    }
    plot.description =
        "In each sample, parted by fills of oil; the limit sets in use have no limit for them: " +
        joined(said) + ".";
    return plot;
}

} // namespace

plot::Plot wear_metals_plot(const std::vector<const QuantityTrend*>& trends) {
    const auto all = drawable(trends);
    if (all.empty()) return {};
    std::vector<const QuantityTrend*> limited;
    std::vector<std::string> without_limit;
    for (const QuantityTrend* trend : all) {
        if (trend->levels.empty())
            without_limit.push_back(oil::quantity_name(trend->quantity));
        else
            limited.push_back(trend);
    }
    return limited.empty() ? amounts_plot(all) : share_plot(limited, without_limit);
}

plot::Plot quantity_plot(const QuantityTrend& trend) {
    if (trend.quantity == "kv100") return viscosity_plot(trend);
    plot::Plot plot = empty_plot(trend, oil::quantity_name(trend.quantity));
    add_one(plot, trend);
    add_levels(plot, trend);
    return plot;
}

plot::Plot viscosity_plot(const QuantityTrend& kv100) {
    plot::Plot plot = empty_plot(kv100, "viscosity at 100 C");
    plot.y.from.reset();
    add_one(plot, kv100);
    if (kv100.grade) {
        if (const auto band = oil::band_of(*kv100.grade)) {
            const auto top =
                band->below_mm2_s ? std::optional<double>(band->below_mm2_s->to_double()) : std::nullopt;
            plot.bands.push_back({"SAE " + oil::text_of(*kv100.grade) + " (J300)",
                                  band->from_mm2_s.to_double(), top, Tone::good});
            show_band(plot);
        }
    }
    if (kv100.new_oil) plot.rules.push_back({"new oil", *kv100.new_oil});
    return plot;
}

} // namespace sumpbook::compose
