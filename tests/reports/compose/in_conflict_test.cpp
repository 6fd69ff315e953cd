// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/in_conflict.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::compose;

namespace {

std::vector<RecordName> two_heads() {
    RecordName other;
    other.index = 1;
    return {RecordName{}, other};
}

} // namespace

TEST_CASE("Whatever stands in two versions is named with its bike") {
    testing::BikeLog log;
    log.reading("2026-04-01", "100");
    log.reading("2026-04-02", "200").heads = two_heads();
    log.plan("engine-oil");
    log.bike.plan.front().heads = two_heads();
    Garage garage;
    garage.bikes = {log.bike};
    garage.settings.emplace();
    auto found = in_conflict(garage);
    REQUIRE(found.size() == 2);
    CHECK(found[0].what == "the plan item engine-oil of Tourer");
    CHECK(found[1].what == "the entry k7-2 of Tourer");
    CHECK(found[1].id == "k7-2");
    garage.settings->heads = two_heads();
    found = in_conflict(garage);
    REQUIRE(found.size() == 3);
    CHECK(found[0].bike.empty());
    CHECK(found[0].what == "the settings");
}
