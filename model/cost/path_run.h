// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/cost/bike_paths.h"

namespace sumpbook::cost {

/// A bike on its way through the pieces of one path: jobs fall due and start anew, distance costs fuel, oil
/// and repairs (numbers.md 5.1 to 5.5).
class PathRun {
public:
    PathRun(const BikePaths& bike, std::uint32_t path, PathOutcome& outcome);

    /// From the last reading to today: what is overdue, or crossed on the way, is done today.
    void ride_to_today(double distance_km);
    void ride(std::size_t piece, double distance_km);

private:
    /// Where a stretch of riding leads, for finding when a distance is crossed.
    struct Leg {
        std::size_t piece = 0;
        double from_day = 0, to_day = 0;
        double from_km = 0, distance_km = 0;
        [[nodiscard]] double km_at(double day) const {
            return from_km + distance_km * (day - from_day) / (to_day - from_day);
        }
    };
    /// The day in the leg, not before `now`, on which a job falls due; absent: not in it.
    [[nodiscard]] std::optional<double> due_day(std::size_t job, const Leg& leg, double now) const;
    [[nodiscard]] bool due_today(std::size_t job) const;
    void do_job(std::size_t job, std::size_t piece, double km, double day);
    void do_jobs(const Leg& leg);
    void run_costs(std::size_t piece, double distance_km);
    void repair(std::size_t piece, double distance_km);
    void add(std::size_t category, std::size_t piece, double minor);

    const BikePaths& bike_;
    std::uint32_t path_;
    PathOutcome& outcome_;
    std::vector<DuePoint> next_;
    std::vector<std::size_t> times_in_piece_;
    double km_;
    double repairs_per_km_ = 0;
};

} // namespace sumpbook::cost
