// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/riding_days.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;
using usage::RidingDays;

namespace {

Layup layup(std::string_view until, bool planned = false) {
    return {until.empty() ? std::nullopt : std::optional(day(until)), planned};
}

} // namespace

TEST_CASE("A recorded day counts, a day laid up does not") {
    BikeLog log;
    log.add("2024-02-01", layup("2024-02-10"));
    const RidingDays riding(log.bike, day("2024-01-01"), day("2024-03-31"));
    CHECK(riding.counts(day("2024-01-31")) == 1);
    CHECK(riding.counts(day("2024-02-01")) == 0);
    CHECK(riding.counts(day("2024-02-10")) == 0);
    CHECK(riding.counts(day("2024-02-11")) == 1);
    const auto sums = riding.by_month(day("2024-01-01"), day("2024-03-01"));
    CHECK(sums[0] == 30); // the day after the first, to its end
    CHECK(sums[1] == 19); // of 29
    CHECK(sums[2] == 1);
}

TEST_CASE("A day to come counts less by the share of its month that was laid up") {
    BikeLog log;
    log.add("2023-11-16", layup("2023-12-31"));
    const RidingDays riding(log.bike, day("2023-01-01"), day("2023-12-31"));
    CHECK(riding.counts(day("2024-11-05")) == Approx(0.5)); // 15 of 30 days
    CHECK(riding.counts(day("2024-12-05")) == 0);
    CHECK(riding.counts(day("2024-07-05")) == 1);
    CHECK(riding.laid_up_share()[10] == Approx(0.5));
}

TEST_CASE("A month without a day in the record has no share") {
    BikeLog log;
    log.add("2024-01-01", layup("2024-01-31"));
    const RidingDays riding(log.bike, day("2024-01-01"), day("2024-02-10"));
    CHECK(riding.counts(day("2024-06-01")) == 1);
    CHECK(riding.counts(day("2025-01-01")) == 0);
}

TEST_CASE("A lay-up still open counts up to today, then by the share") {
    BikeLog log;
    log.add("2024-03-16", layup(""));
    const RidingDays riding(log.bike, day("2024-03-01"), day("2024-03-30"));
    CHECK(riding.counts(day("2024-03-30")) == 0);
    CHECK(riding.counts(day("2024-03-31")) == Approx(0.5)); // 15 of 30 days laid up
    CHECK(riding.counts(day("2024-04-01")) == 1);
    std::get<Layup>(log.bike.log[0].value.body).planned = true; // and how long nobody knows
    const RidingDays planned(log.bike, day("2024-03-01"), day("2024-03-30"));
    CHECK(planned.counts(day("2024-03-30")) == 0);
    CHECK(planned.counts(day("2024-04-01")) == 1);
}

TEST_CASE("A lay-up to come counts only where it is planned") {
    BikeLog log;
    log.add("2024-11-01", layup("2024-11-30"));
    log.add("2024-12-01", layup("2025-01-31", true));
    log.add("2024-06-01", layup("2024-07-15", true)); // begun, and goes on
    const RidingDays riding(log.bike, day("2024-05-01"), day("2024-06-20"));
    CHECK(riding.counts(day("2024-11-15")) == 1);
    CHECK(riding.counts(day("2024-12-01")) == 0);
    CHECK(riding.counts(day("2025-01-31")) == 0);
    CHECK(riding.counts(day("2025-02-01")) == 1);
    CHECK(riding.counts(day("2024-06-10")) == 0);
    CHECK(riding.counts(day("2024-07-15")) == 0);
    CHECK(riding.counts(day("2024-07-16")) == 1);
}

TEST_CASE("A lay-up begun with an end to come counts until that end, planned or not") {
    BikeLog log;
    log.add("2025-11-01", layup("2026-04-30"));
    const RidingDays riding(log.bike, day("2025-01-01"), day("2025-11-25"));
    CHECK(riding.counts(day("2025-11-26")) == 0);
    CHECK(riding.counts(day("2026-04-30")) == 0);
    CHECK(riding.counts(day("2026-05-01")) == 1);
}
