// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/fills.h"
#include "model/oil/profiles.h"
#include "model/quantity/units.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::oil {

/// Share of the confidence with which a sample to come lies inside the bounds round a line (numbers.md 6.3).
inline constexpr double life_confidence = 0.80;

/// What ends the life of an oil.
enum class LifeMarkKind {
    half_base_number, ///< The base number is down to half of the new oil's.
    base_meets_acid,  ///< The base number has fallen to the risen acid number.
    set_limit,        ///< The first level of the set that says act.
    viscosity,        ///< What the grade rule calls act.
    leaves_grade,     ///< The viscosity falls out of its SAE grade: listed, does not decide by itself.
};
/// "half-base-number", "base-meets-acid", "set-limit", "viscosity", "leaves-grade".
[[nodiscard]] std::string_view slug(LifeMarkKind kind);

/// What the range round the line rests on.
enum class LifeRange {
    none,            ///< Two points and no published precision of the method: no range.
    reproducibility, ///< Two points, each moved by the reproducibility of the method.
    bounds,          ///< Three points or more: 80 % prediction bounds.
};

/// One value on the way to a mark.
struct LifePoint {
    std::string sample;   ///< Label; of the new oil its own sample's.
    double on_oil_km = 0; ///< 0 for the new oil.
    double value = 0;
    bool in_use = false; ///< Of the fill that is in the engine now.
};

/// One quantity on its way to a level, over every fill of the oil in this engine.
struct LifeMark {
    LifeMarkKind kind = LifeMarkKind::set_limit;
    std::string quantity; ///< Slug; "tbn" where base meets acid.
    std::string unit;
    std::string method; ///< Of the base number; empty where it does not matter.
    double level = 0;   ///< What ends the life; 0 where base meets acid: of their difference.
    bool falling = true;
    bool decides = true;
    std::string set;    ///< Id of the set that gave the level; empty: the rule is Sumpbook's.
    std::string source; ///< Of the level.
    std::vector<LifePoint> points;
    LifeRange range = LifeRange::none;
    std::optional<double> earliest_km;  ///< Absent: never, or no range.
    std::optional<double> middle_km;    ///< Absent: not on this line.
    std::optional<double> latest_km;    ///< Absent: never, or no range.
    bool passed = false;                ///< The latest sample of the fill in use is there already.
    std::optional<std::string> unknown; ///< Why nothing can be said: a full sentence. Absent: something can.
    std::vector<std::string> notes;     ///< What was left out: full sentences.
};

/// How the planned interval stands beside the evidence.
enum class IntervalWord {
    no_plan,     ///< No distance is planned for engine oil.
    no_evidence, ///< No mark that decides comes into sight.
    inside,      ///< Even the earliest end lies past the interval.
    doubtful,    ///< The interval lies within the range.
    too_long,    ///< The interval lies past the middle.
};
/// "no-plan", "no-evidence", "inside", "doubtful", "too-long".
[[nodiscard]] std::string_view slug(IntervalWord word);

/// How long one oil lasts in one engine, on the evidence of its samples (numbers.md 6.7).
struct OilLife {
    std::string bike;
    std::string oil;
    DistanceUnit dial_unit = DistanceUnit::km;
    bool in_use = false;                 ///< The oil in the engine now.
    std::optional<double> run_so_far_km; ///< Of the fill in use, to the last reading of the odometer.
    std::size_t samples = 0;             ///< Of used oil, of all its fills.
    double longest_run_km = 0;           ///< Farthest sampled; past it all is carried on from the line.
    std::vector<LifeMark> marks;
    const LifeMark* first() const;     ///< The mark that decides and comes first; null: none in sight.
    std::optional<double> earliest_km; ///< Of the marks that decide, whichever comes first.
    std::optional<double> middle_km;
    std::optional<double> latest_km;
    bool passed = false;               ///< A mark that decides is passed in the fill in use.
    std::optional<double> interval_km; ///< As planned for engine oil.
    IntervalWord interval = IntervalWord::no_plan;
    std::vector<std::string> cautions; ///< Always some: full sentences.
};

/// The engine's oil in use, or the one last sampled where the oil in use never was; absent: no sample at all.
[[nodiscard]] std::optional<std::string> oil_to_judge(const OilRecord& record);
/// The life of an oil in the engine: every sample of its fills whose distance on the oil is known, the new
/// oil as a point at 0. Levels by the profile.
[[nodiscard]] OilLife oil_life(const OilRecord& record, std::string_view oil, const Profile& profile);

} // namespace sumpbook::oil
