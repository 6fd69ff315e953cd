// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/wear_rate.h"
#include "model/stats/two_sample.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// One side of a comparison: an oil, or the fills before a day or from it on.
struct ComparedSide {
    std::string name;      ///< "Marsh 4T", "before 2024-05-01".
    std::size_t fills = 0; ///< Sampled fills that count.
};

enum class ComparedWord {
    cannot_tell, ///< The difference could be chance, or the fills are too few for any answer.
    first_wears_less,
    second_wears_less,
    not_compared, ///< A side has no rate, or a fill below detection.
};
/// "cannot-tell", "first-wears-less", "second-wears-less", "not-compared".
[[nodiscard]] std::string_view slug(ComparedWord word);

/// One metal: corrected wear in 1 000 km of the fills of each side, mg/kg (numbers.md 6.10).
struct ComparedMetal {
    std::string element;
    std::vector<double> first_per_1000km; ///< Of the fills in which it was detected.
    std::vector<double> second_per_1000km;
    std::size_t first_below = 0; ///< Fills in which it was below detection: they cannot enter.
    std::size_t second_below = 0;
    std::optional<stats::ExactTest> test;
    std::optional<double> smallest_p;        ///< The test could not go lower with so few fills.
    std::optional<stats::Shift> shift;       ///< Second less first.
    std::optional<std::size_t> fills_needed; ///< Of each, to find such a difference in four cases of five.
    ComparedWord word = ComparedWord::not_compared;

    [[nodiscard]] std::size_t below() const { return first_below + second_below; }
    [[nodiscard]] std::size_t first_fills() const { return first_per_1000km.size() + first_below; }
    [[nodiscard]] std::size_t second_fills() const { return second_per_1000km.size() + second_below; }
};

/// Two oils, or two times, on one engine.
struct OilComparison {
    std::string bike;
    ComparedSide first;
    ComparedSide second;
    std::vector<ComparedMetal> metals;
    ComparedWord word =
        ComparedWord::not_compared;       ///< `cannot_tell` also where metals contradict each other.
    std::size_t fewest_fills_needed = 0;  ///< Of each side, over the metals; 0: no metal could be compared.
    std::size_t fewest_for_an_answer = 0; ///< Of each side, below which no difference could ever show.
    std::vector<std::string> notes;       ///< What was left out: full sentences.
};

/// The oils of the engine that were sampled, in the order they were first filled in, each name once.
[[nodiscard]] std::vector<std::string> sampled_oils(const OilRecord& record);

/// Which of two oils wears the engine less. The names as `sampled_oils` gives them, whatever the case.
[[nodiscard]] OilComparison compare_oils(const OilRecord& record, std::string_view first,
                                         std::string_view second);
/// The fills filled in before a day against those from it on.
[[nodiscard]] OilComparison compare_before_after(const OilRecord& record, const Date& day);

} // namespace sumpbook::oil
