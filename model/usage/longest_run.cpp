// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/longest_run.h"

#include <algorithm>
#include <limits>
#include <optional>

namespace sumpbook::usage {
namespace {

constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

/// The best run that begins at a position: how many leaps it holds and where it goes on.
struct Tail {
    std::size_t leaps = 0;
    std::size_t next = none;
};

/// Positions by the length of the longest run that begins there: layers[0] holds length 1. Built from the
/// end, so a layer lists its positions latest first; inside a layer an earlier position has the larger value.
std::vector<std::vector<std::size_t>> layers_of(const std::vector<DatedValue>& values) {
    std::vector<std::vector<std::size_t>> layers;
    for (std::size_t left = values.size(); left > 0; --left) {
        const std::size_t at = left - 1;
        // The last position put into each layer has that layer's largest value; these fall from layer to
        // layer.
        const auto follows = [&](const std::vector<std::size_t>& layer) {
            return values[layer.back()].value >= values[at].value;
        };
        const auto layer = std::ranges::partition_point(layers, follows);
        if (layer == layers.end())
            layers.push_back({at});
        else
            layer->push_back(at);
    }
    return layers;
}

/// Among the positions of the next layer that may follow `at`: fewest leaps, then the earliest.
Tail best_tail(const std::vector<DatedValue>& values, std::size_t at, const std::vector<std::size_t>& layer,
               const std::vector<Tail>& tails, std::int64_t most_a_day) {
    std::optional<Tail> best;
    // From the end of the layer: the earliest positions first, their values falling towards later ones.
    for (auto next = layer.rbegin(); next != layer.rend(); ++next) {
        if (*next <= at) continue;
        if (values[*next].value < values[at].value) break;
        const std::size_t leaps =
            tails[*next].leaps + (is_leap(values[at], values[*next], most_a_day) ? 1U : 0U);
        if (!best || leaps < best->leaps) best = Tail{leaps, *next};
    }
    return *best;
}

} // namespace

bool is_leap(const DatedValue& from, const DatedValue& to, std::int64_t most_a_day) {
    return to.value - from.value > most_a_day * std::max<std::int64_t>(1, to.day - from.day);
}

std::vector<std::size_t> longest_run(const std::vector<DatedValue>& values, std::int64_t most_a_day) {
    if (values.empty()) return {};
    const auto layers = layers_of(values);
    std::vector<Tail> tails(values.size());
    for (std::size_t i = 1; i < layers.size(); ++i) {
        for (const std::size_t at : layers[i])
            tails[at] = best_tail(values, at, layers[i - 1], tails, most_a_day);
    }
    std::size_t start = layers.back().back();
    for (auto at = layers.back().rbegin(); at != layers.back().rend(); ++at) {
        if (tails[*at].leaps < tails[start].leaps) start = *at;
    }
    std::vector<std::size_t> run;
    for (std::size_t at = start; at != none; at = tails[at].next)
        run.push_back(at);
    return run;
}

} // namespace sumpbook::usage
