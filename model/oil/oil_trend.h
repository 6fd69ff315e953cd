// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/profiles.h"
#include "model/oil/sae_grade.h"
#include "model/oil/wear_rate.h"
#include "model/stats/censored.h"
#include "model/stats/change_point.h"
#include "model/stats/control_limits.h"
#include "model/stats/line_fit.h"
#include "model/stats/mann_kendall.h"
#include "model/stats/theil_sen.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// A rise or fall of this two-sided p or less is called one. DESIGN (the line of numbers.md 6.8).
inline constexpr double trend_p = 0.10;
/// Fills below which nothing is called a trend (numbers.md 6.1).
inline constexpr std::size_t fewest_trend_fills = 4;

/// One quantity in one sample.
struct TrendPoint {
    std::string sample; ///< Its number, else its id.
    std::string entry_id;
    Date date;
    std::size_t fill = 0; ///< Counted from 1 among the fills that were sampled.
    std::optional<std::string> oil_name;
    std::optional<Distance> position;        ///< True distance of the bike.
    std::optional<Distance> distance_on_oil; ///< Absent: not known.
    SampleValue value;
    std::optional<ElementRate> since_last; ///< Since the sample before in the same fill; metals alone.
    /// Of wear metals over the whole fill, in its last sample alone. Where the value is below detection it is
    /// what the detection limit would give: no more than that.
    std::optional<WearRate> wear;
    bool ends_fill = false; ///< The last sample of its fill: the one a trend over fills looks at.
};

/// What is held from fill to fill.
enum class TrendOf {
    value,     ///< The value in the last sample of each fill.
    wear_rate, ///< The corrected wear in 1 000 km of each fill, mg/kg.
};
/// In plain words; `too_few` below 4 fills.
enum class TrendWord { too_few, steady, rising, falling };
/// "too-few", "steady", "rising", "falling".
[[nodiscard]] std::string_view slug(TrendWord word);

/// A quantity over the samples of used oil of one compartment, and where it is going from fill to fill
/// (numbers.md 6.3 and 6.4). Every figure is absent where the fills are too few, and the slopes and limits
/// where one of them is below detection: a limit is never a number in them.
struct QuantityTrend {
    std::string bike;
    std::string compartment;
    std::string quantity;
    std::string unit; ///< Of the values; of wear rates mg/kg in 1 000 km.
    DistanceUnit dial_unit = DistanceUnit::km;
    std::vector<TrendPoint> points;

    TrendOf of = TrendOf::value;
    std::vector<stats::CensoredValue> series; ///< What is held from fill to fill, oldest first.
    std::vector<double> along;                ///< Thousands of km ridden, else years, for each of them.
    bool along_distance = true;
    TrendWord word = TrendWord::too_few;
    std::optional<stats::MannKendall> test;
    std::optional<stats::LineFit> line;             ///< Least squares, from 3 fills.
    std::optional<stats::TheilSen> median_line;     ///< From 4.
    std::optional<stats::SlopeInterval> range;      ///< Of that slope, 95 % or what can be reached.
    std::optional<stats::IndividualsLimits> limits; ///< From 8.
    std::optional<stats::ChangePoint> change;       ///< From 12.
    std::optional<stats::CensoredSummary> summary;  ///< Middle and spread; absent: too few detected.
    std::size_t below = 0;                          ///< Fills below detection.
    std::vector<std::string> notes;                 ///< What was assumed or left out: full sentences.
    std::string set;               ///< Limit set that judges the values; empty: none of the profile does.
    std::vector<LimitRow> levels;  ///< Its upper limits in the unit of the values, lowest first.
    std::optional<double> new_oil; ///< The new oil's value of the latest fill, in that unit.
    std::optional<SaeGrade> grade; ///< The grade that oil is held to.

    /// The latest fill lies beyond the limits of usual scatter.
    [[nodiscard]] bool latest_is_unusual() const;
};

/// Every quantity that was measured in used oil of the bike, by compartment, in the order of quantities.csv.
/// The levels of the values are the profile's.
[[nodiscard]] std::vector<QuantityTrend> oil_trends(const OilRecord& record, const Profile& profile);

} // namespace sumpbook::oil
