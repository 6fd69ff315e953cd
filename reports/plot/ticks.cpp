// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/ticks.h"

#include "model/quantity/decimal.h"
#include "reports/plot/text.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace sumpbook::plot {

namespace {

constexpr std::array<double, 3> steps{1, 2, 5};
constexpr double tolerance = 1e-9; // of a step: what adding up binary fractions may be off

int decimals_of(double power_of_ten) {
    return std::clamp(-static_cast<int>(std::floor(std::log10(power_of_ten) + tolerance)), 0,
                      Decimal::max_scale);
}

/// The 1-2-5 number next to `value`, at or below it, or at or above it.
double step_number(double value, bool above) {
    const double power = std::pow(10, std::floor(std::log10(value) + tolerance));
    double best = power;
    for (const double factor : {1.0, 2.0, 5.0, 10.0}) {
        const double candidate = factor * power;
        if (above && candidate >= value * (1 - tolerance)) return candidate;
        if (!above && candidate <= value * (1 + tolerance)) best = candidate;
    }
    return best;
}

std::vector<Tick> powers(Range range, const std::vector<double>& factors, int every) {
    std::vector<Tick> result;
    const int first = static_cast<int>(std::floor(std::log10(range.from) + tolerance));
    const int last = static_cast<int>(std::floor(std::log10(range.to) + tolerance));
    for (int exponent = first; exponent <= last; ++exponent) {
        if (exponent % every != 0) continue;
        const double power = std::pow(10, exponent);
        for (const double factor : factors) {
            const double at = factor * power;
            if (at < range.from * (1 - tolerance) || at > range.to * (1 + tolerance)) continue;
            result.push_back({at, grouped_number(at, decimals_of(power))});
        }
    }
    return result;
}

Range nice_linear(const Axis& axis, Range data, int at_most) {
    if (!axis.from && data.from > 0 && data.from < data.to / 2) data.from = 0; // DESIGN: 0 in sight if near
    if (data.from >= data.to) {
        const double half = std::max(std::abs(data.from) / 10, data.from == 0 ? 1.0 : 0.0);
        data = {data.from - half, data.to + half};
        if (axis.from.value_or(data.from) == 0 || data.from == -half) data.from = 0;
    }
    const Range given{axis.from.value_or(data.from), axis.to.value_or(data.to)};
    if (given.from >= given.to) return given;
    const double step = nice_step(given.to - given.from, at_most).size;
    const double from = step * std::floor(given.from / step + tolerance);
    const double to = step * std::ceil(given.to / step - tolerance);
    return {axis.from.value_or(from), axis.to.value_or(to)};
}

Range nice_logarithmic(const Axis& axis, Range data) {
    if (data.from <= 0 || data.to <= 0) return {axis.from.value_or(1), axis.to.value_or(10)};
    double from = step_number(data.from, false);
    double to = step_number(data.to, true);
    if (from >= to) { // one value, on a mark
        from = step_number(from / 2, false);
        to = step_number(to * 2, true);
    }
    return {axis.from.value_or(from), axis.to.value_or(to)};
}

Range nice_dates(const Axis& axis, Range data) {
    constexpr double days_around_one = 15;
    constexpr double share_around = 0.02;
    double around = (data.to - data.from) * share_around;
    if (data.to <= data.from) around = days_around_one;
    return {axis.from.value_or(data.from - around), axis.to.value_or(data.to + around)};
}

bool come_too_close(const std::vector<Tick>& ticks, Range range, bool logarithmic, double length_px,
                    double font_px) {
    const auto place = [&](double at) {
        const double share = logarithmic ? std::log(at / range.from) / std::log(range.to / range.from)
                                         : (at - range.from) / (range.to - range.from);
        return share * length_px;
    };
    double end = -1e9;
    for (const Tick& tick : ticks) {
        const double half = text_width(tick.label, font_px) / 2;
        if (place(tick.at) - half < end + font_px / 2) return true;
        end = place(tick.at) + half;
    }
    return false;
}

std::vector<Tick> numbered(AxisKind kind, Range range, int at_most) {
    if (kind == AxisKind::date) return date_ticks(range, at_most);
    return kind == AxisKind::logarithmic ? logarithmic_ticks(range, at_most) : linear_ticks(range, at_most);
}

std::vector<Tick> category_ticks(const std::vector<std::string>& categories, Direction direction,
                                 double length_px, double font_px) {
    constexpr double enough_letters = 4.5; // in em: a shortened label below this is no label
    constexpr double line_height = 1.35;
    std::vector<Tick> result;
    if (categories.empty()) return result;
    const double slot = length_px / static_cast<double>(categories.size());
    double widest = 0;
    for (const std::string& category : categories)
        widest = std::max(widest, text_width(category, font_px));
    const double needed = direction == Direction::up
                              ? line_height * font_px
                              : std::min(widest, enough_letters * font_px) + font_px / 2;
    const auto every = static_cast<std::size_t>(std::max(1.0, std::ceil(needed / slot)));
    const double room = static_cast<double>(every) * slot - font_px / 2;
    for (std::size_t i = 0; i < categories.size(); ++i) {
        std::string label;
        if (i % every == 0)
            label = direction == Direction::up ? categories[i] : shortened(categories[i], room, font_px);
        result.push_back({static_cast<double>(i), label});
    }
    return result;
}

} // namespace

Step nice_step(double length, int at_most) {
    const double least = length / std::max(at_most, 1);
    double power = std::pow(10, std::floor(std::log10(least)));
    for (int tries = 0; tries < 2; ++tries, power *= 10)
        for (const double factor : steps)
            // One mark more than intervals.
            if (std::floor(length / (factor * power) + tolerance) + 1 <= std::max(at_most, 2))
                return {factor * power, decimals_of(power)};
    return {power, decimals_of(power)};
}

std::vector<Tick> linear_ticks(Range range, int at_most) {
    std::vector<Tick> result;
    if (!(range.from < range.to)) return result;
    const Step step = nice_step(range.to - range.from, at_most);
    const double first = std::ceil(range.from / step.size - tolerance);
    const double last = std::floor(range.to / step.size + tolerance);
    for (double count = first; count <= last; ++count)
        result.push_back({count * step.size, grouped_number(count * step.size, step.decimals)});
    return result;
}

std::vector<Tick> logarithmic_ticks(Range range, int at_most) {
    if (!(range.from > 0) || !(range.from < range.to)) return {};
    const std::vector<std::vector<double>> finest_first{{1, 2, 5}, {1, 3}, {1}};
    for (const std::vector<double>& factors : finest_first)
        if (auto found = powers(range, factors, 1); static_cast<int>(found.size()) <= at_most) return found;
    int every = 2;
    auto found = powers(range, {1}, every);
    while (static_cast<int>(found.size()) > std::max(at_most, 1))
        found = powers(range, {1}, ++every);
    return found;
}

Range nice(const Axis& axis, Range data, int at_most) {
    switch (axis.kind) {
    case AxisKind::linear:
        return nice_linear(axis, data, at_most);
    case AxisKind::logarithmic:
        return nice_logarithmic(axis, data);
    case AxisKind::date:
        return nice_dates(axis, data);
    case AxisKind::category:
        break;
    }
    return {-0.5, std::max(static_cast<double>(axis.categories.size()), 1.0) - 0.5};
}

int most_ticks(Direction direction, double length_px, double font_px) {
    const double room = font_px * (direction == Direction::up ? 2.6 : 5.0); // DESIGN: air between labels
    return std::clamp(static_cast<int>(length_px / room), 2, 12);
}

std::vector<Tick> ticks(const Axis& axis, Range range, Direction direction, double length_px,
                        double font_px) {
    if (axis.kind == AxisKind::category)
        return category_ticks(axis.categories, direction, length_px, font_px);
    int at_most = most_ticks(direction, length_px, font_px);
    std::vector<Tick> result = numbered(axis.kind, range, at_most);
    if (direction == Direction::up) return result;
    const bool logarithmic = axis.kind == AxisKind::logarithmic;
    while (at_most > 1 && come_too_close(result, range, logarithmic, length_px, font_px))
        result = numbered(axis.kind, range, --at_most);
    return result;
}

} // namespace sumpbook::plot
