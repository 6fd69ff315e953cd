// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/plot/labels.h"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <utility>

namespace sumpbook::plot {

namespace {

/// Labels that touch each other and move as one.
struct Cluster {
    std::vector<std::size_t> members;
    double length = 0;
    double sum_of_starts = 0; ///< Where each member wants the cluster to start, added up.
    [[nodiscard]] double start(double from, double to) const {
        const double wanted = sum_of_starts / static_cast<double>(members.size());
        return std::clamp(wanted, from, std::max(from, to - length));
    }
};

void absorb(Cluster& cluster, const Cluster& next) {
    cluster.sum_of_starts += next.sum_of_starts - cluster.length * static_cast<double>(next.members.size());
    cluster.members.insert(cluster.members.end(), next.members.begin(), next.members.end());
    cluster.length += next.length;
}

std::vector<std::size_t> by_wish(const std::vector<Wish>& wishes) {
    std::vector<std::size_t> order(wishes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t i) { return wishes[i].wanted; });
    return order;
}

/// The order in which flags are hoisted: those to the right of their poles from the right on, so that each
/// flies above the poles in its way; then those to the left of theirs from the left on.
std::vector<std::size_t> lowest_first(const std::vector<Flag>& flags) {
    std::vector<std::size_t> order(flags.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t i) {
        const bool to_the_left = flags[i].left < flags[i].pole;
        return std::pair(to_the_left, to_the_left ? flags[i].pole : -flags[i].pole);
    });
    return order;
}

bool in_the_way(const Flag& a, int row_a, const Flag& b, int row_b) {
    const auto goes_through = [](const Flag& pole, const Flag& label) {
        return pole.pole >= label.left && pole.pole <= label.right;
    };
    if (row_a == row_b && a.left < b.right && b.left < a.right) return true;
    if (row_b >= row_a && goes_through(b, a)) return true;
    return row_a >= row_b && goes_through(a, b);
}

} // namespace

std::optional<std::vector<double>> pushed_apart(const std::vector<Wish>& wishes, double from, double to) {
    double total = 0;
    for (const Wish& wish : wishes)
        total += wish.length;
    if (total > to - from + 1e-9) return std::nullopt;

    std::vector<Cluster> clusters;
    for (const std::size_t i : by_wish(wishes)) {
        clusters.push_back({{i}, wishes[i].length, wishes[i].wanted - wishes[i].length / 2});
        while (clusters.size() > 1) {
            Cluster& before = clusters[clusters.size() - 2];
            if (before.start(from, to) + before.length <= clusters.back().start(from, to)) break;
            absorb(before, clusters.back());
            clusters.pop_back();
        }
    }
    std::vector<double> middles(wishes.size());
    for (const Cluster& cluster : clusters) {
        double at = cluster.start(from, to);
        for (const std::size_t i : cluster.members) {
            middles[i] = at + wishes[i].length / 2;
            at += wishes[i].length;
        }
    }
    return middles;
}

std::vector<std::optional<int>> rows_of(const std::vector<Flag>& flags, int rows) {
    std::vector<std::optional<int>> result(flags.size());
    for (const std::size_t i : lowest_first(flags)) {
        const auto fits = [&](int row) {
            for (std::size_t other = 0; other < flags.size(); ++other)
                if (result[other] && in_the_way(flags[i], row, flags[other], *result[other])) return false;
            return true;
        };
        for (int row = 0; row < rows && !result[i]; ++row)
            if (fits(row)) result[i] = row;
    }
    return result;
}

} // namespace sumpbook::plot
