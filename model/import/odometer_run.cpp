// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/odometer_run.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace sumpbook::import {
namespace {

constexpr std::size_t none = static_cast<std::size_t>(-1);
constexpr std::size_t most_typing_faults_in_a_row = 2;
constexpr double far_off = 10;

/// Digits only, so no locale and no sign matter.
double number_of(const std::string& digits) {
    double number = 0;
    for (const char c : digits)
        number = number * 10 + (c - '0');
    return number;
}

/// Marks the members of one longest non-decreasing subsequence (patience sorting, O(n log n)).
std::vector<bool> longest_run(const std::vector<RunReading>& readings) {
    std::vector<std::size_t> tails;
    std::vector<std::size_t> before(readings.size(), none);
    for (std::size_t i = 0; i < readings.size(); ++i) {
        const auto place =
            std::upper_bound(tails.begin(), tails.end(), readings[i].odometer,
                             [&](Distance value, std::size_t at) { return value < readings[at].odometer; });
        if (place != tails.begin()) before[i] = *std::prev(place);
        if (place == tails.end())
            tails.push_back(i);
        else
            *place = i;
    }
    std::vector<bool> in_run(readings.size(), false);
    for (std::size_t at = tails.empty() ? none : tails.back(); at != none; at = before[at])
        in_run[at] = true;
    return in_run;
}

/// The run without what falls out of it, and what fell out.
class Run {
public:
    explicit Run(const std::vector<RunReading>& readings)
        : readings_(readings)
        , in_run_(longest_run(readings)) {}

    std::vector<RunFinding> faults() {
        for (std::size_t at = 0; at < readings_.size();) {
            std::size_t end = at;
            while (end < readings_.size() && !in_run_[end])
                ++end;
            if (end == at)
                ++at;
            else {
                add_group(at, end);
                at = end;
            }
        }
        add_ends();
        std::ranges::sort(found_, {}, &RunFinding::index);
        return std::move(found_);
    }

private:
    /// Neighbours in the run, `but` left out of account.
    [[nodiscard]] std::size_t run_before(std::size_t at, std::size_t but) const {
        while (at-- > 0)
            if (in_run_[at] && at != but) return at;
        return none;
    }
    [[nodiscard]] std::size_t run_after(std::size_t at, std::size_t but) const {
        for (++at; at < readings_.size(); ++at)
            if (in_run_[at] && at != but) return at;
        return none;
    }

    [[nodiscard]] RunFinding finding(std::size_t at, RunFault fault, std::size_t but) const {
        RunFinding found{.index = at, .fault = fault, .low = {}, .high = {}};
        if (const auto low = run_before(at, but); low != none) found.low = readings_[low].odometer;
        if (const auto high = run_after(at, but); high != none) found.high = readings_[high].odometer;
        return found;
    }

    void add_group(std::size_t first, std::size_t end) {
        if (end - first > most_typing_faults_in_a_row) {
            found_.push_back(finding(first, RunFault::falls_and_stays, none));
            return;
        }
        if (end - first == 1) return add_likelier(first);
        for (std::size_t at = first; at < end; ++at)
            found_.push_back(finding(at, RunFault::out_of_run, none));
    }

    /// The reading itself, or a neighbour without which it would fit: the one without which the readings rise
    /// more evenly by far, else the one that a slip explains. Both where neither tells them apart, since the
    /// wrong one must not stay unnamed.
    void add_likelier(std::size_t at) {
        const RunFinding own = finding(at, RunFault::out_of_run, none);
        bool own_stands = true;
        for (const std::size_t other : {run_before(at, none), run_after(at, none)}) {
            if (other == none || !fits_without(at, other)) continue;
            const RunFinding instead = without(other, at);
            const int preferred = preference(own, instead);
            if (preferred <= 0) found_.push_back(instead);
            own_stands = own_stands && preferred >= 0;
        }
        if (own_stands) found_.push_back(own);
    }

    /// Above 0: the first of two readings that contradict each other is the wrong one; below 0: the second.
    [[nodiscard]] int preference(const RunFinding& first, const RunFinding& second) const {
        constexpr double by_far = 2;
        const double without_first = steepest_rise(second.index, first.index);
        const double without_second = steepest_rise(first.index, second.index);
        if (without_second > by_far * without_first) return 1;
        if (without_first > by_far * without_second) return -1;
        return int{slip_explains(first)} - int{slip_explains(second)};
    }

    /// The steeper of the two rises to and from `kept` if `dropped` beside it is left out: kilometres for
    /// each reading.
    [[nodiscard]] double steepest_rise(std::size_t kept, std::size_t dropped) const {
        const auto rise = [&](std::size_t from, std::size_t to) {
            if (from == none || to == none) return 1.0;
            const double km = (readings_[to].odometer - readings_[from].odometer).km();
            return std::max(1.0, km / static_cast<double>(to - from));
        };
        return std::max(rise(run_before(kept, dropped), kept), rise(kept, run_after(kept, dropped)));
    }

    /// The finding about `other` if the reading at `at` is the right one.
    RunFinding without(std::size_t other, std::size_t at) {
        in_run_[at] = true;
        const RunFinding found = finding(other, RunFault::out_of_run, other);
        in_run_[at] = false;
        return found;
    }

    [[nodiscard]] bool fits_without(std::size_t at, std::size_t other) const {
        const auto low = run_before(at, other);
        const auto high = run_after(at, other);
        return (low == none || readings_[low].odometer <= readings_[at].odometer) &&
               (high == none || readings_[at].odometer <= readings_[high].odometer);
    }

    /// Bounds in the numbers of the dial: the digits are those typed, whatever the unit. An open end is
    /// closed by the widest step of the rest of the run.
    [[nodiscard]] bool slip_explains(const RunFinding& finding) const {
        const auto& reading = readings_[finding.index];
        const double scale = dial_scale(reading);
        if (scale <= 0 || (!finding.low && !finding.high)) return false;
        const double step = finding.low && finding.high ? 0 : widest_step(finding.index);
        const double low = finding.low ? finding.low->km() : std::max(0.0, finding.high->km() - 2 * step);
        const double high = finding.high ? finding.high->km() : finding.low->km() + 2 * step;
        return is_one_slip_from(reading.digits, low / scale, high / scale);
    }

    /// Kilometres in one step of the typed whole number.
    static double dial_scale(const RunReading& reading) {
        const double number = number_of(reading.digits);
        return number > 0 ? reading.odometer.km() / number : 0;
    }

    [[nodiscard]] double widest_step(std::size_t without) const {
        double widest = 0;
        std::size_t last = none;
        for (std::size_t at = 0; at < readings_.size(); ++at) {
            if (!in_run_[at] || at == without) continue;
            if (last != none)
                widest = std::max(widest, (readings_[at].odometer - readings_[last].odometer).km());
            last = at;
        }
        return widest;
    }

    void add_ends() {
        const std::size_t first = run_after_start();
        const std::size_t last = run_before(readings_.size(), none);
        if (first == none || run_after(first, none) == none) return;
        add_end(first, run_after(first, none));
        if (last != first && in_run_[last]) add_end(last, run_before(last, none));
    }

    [[nodiscard]] std::size_t run_after_start() const {
        const auto found = std::ranges::find(in_run_, true);
        return found == in_run_.end() ? none : static_cast<std::size_t>(found - in_run_.begin());
    }

    void add_end(std::size_t end, std::size_t neighbour) {
        const double step = std::abs((readings_[end].odometer - readings_[neighbour].odometer).km());
        const double widest = widest_step(end);
        if (widest <= 0 || step <= far_off * widest) return;
        const RunFinding found = finding(end, RunFault::out_of_run, end);
        if (!slip_explains(found)) return;
        in_run_[end] = false;
        found_.push_back(found);
    }

    const std::vector<RunReading>& readings_;
    std::vector<bool> in_run_;
    std::vector<RunFinding> found_;
};

} // namespace

bool is_one_slip_from(const std::string& digits, double low, double high) {
    const double typed = number_of(digits);
    const auto fits = [&](const std::string& changed) {
        const double number = number_of(changed);
        return !changed.empty() && number != typed && number >= low && number <= high;
    };
    constexpr std::size_t longest_dial = 12;
    if (digits.empty() || digits.size() > longest_dial) return false;
    for (std::size_t i = 0; i < digits.size(); ++i) {
        std::string changed = digits;
        if (i + 1 < digits.size()) {
            std::swap(changed[i], changed[i + 1]);
            if (changed != digits && fits(changed)) return true;
        }
        changed = digits;
        changed.erase(i, 1);
        if (fits(changed)) return true;
    }
    for (char digit = '0'; digit <= '9'; ++digit)
        for (std::size_t i = 0; i <= digits.size(); ++i) {
            std::string changed = digits;
            if (i < digits.size()) {
                changed[i] = digit;
                if (changed != digits && fits(changed)) return true;
            }
            changed = digits;
            changed.insert(i, 1, digit);
            if (fits(changed)) return true;
        }
    return false;
}

std::vector<RunFinding> find_run_faults(const std::vector<RunReading>& readings) {
    return Run(readings).faults();
}

} // namespace sumpbook::import
