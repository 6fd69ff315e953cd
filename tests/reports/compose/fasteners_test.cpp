// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/fasteners.h"

#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

#include <nlohmann/json.hpp>

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

compose::JobFasteners fasteners_of(const BikeLog& log, std::size_t at) {
    return {review::fasteners_of(log.bike, log.bike.log[at]),
            review::marks_seen_in(log.bike, log.bike.log[at])};
}

std::string text_of_job(const BikeLog& log, std::size_t at) {
    return write::text(compose::fasteners_text(fasteners_of(log, at)), {.width = 400});
}

bool says(const std::string& text, const char* words) { return text.find(words) != std::string::npos; }

BikeLog moved() {
    BikeLog log;
    Work job;
    job.torques.push_back({"axle nut", {number("98"), TorqueUnit::nm}, true});
    job.torques.push_back({"M6 cover bolt", {number("100"), TorqueUnit::nm}, std::nullopt});
    log.add("2024-03-01", job);
    Work look;
    look.paint_marks_seen.push_back({"axle nut", false});
    log.add("2024-05-01", look);
    return log;
}

} // namespace

TEST_CASE("each fastener stands with its torque, its mark and what became of it") {
    const auto text = text_of_job(moved(), 0);
    CHECK(says(text, "98 N m"));
    CHECK(says(text, "moved by 1 May 2024 (k7-2)"));
    CHECK(says(text, "not stated"));
    CHECK(says(text, "far above what an M6 bolt takes: read it again"));
}

TEST_CASE("a look at a mark that moved says whether anything was done") {
    auto log = moved();
    CHECK(says(text_of_job(log, 1), "Last tightened before on 1 Mar 2024 (k7-1). Not tightened since"));
    Work again;
    again.torques.push_back({"axle nut", {number("98"), TorqueUnit::nm}, true});
    log.add("2024-05-02", again);
    CHECK(says(text_of_job(log, 1), "Tightened again on 2 May 2024 (k7-3)."));
}

TEST_CASE("an entry without fasteners has nothing to show") {
    BikeLog log;
    log.reading("2024-01-01", "10");
    CHECK(text_of_job(log, 0).empty());
    CHECK(write::json(compose::fasteners_json(fasteners_of(log, 0))).starts_with("null"));
}

TEST_CASE("the tree names states by fixed words") {
    const auto tree = nlohmann::json::parse(write::json(compose::fasteners_json(fasteners_of(moved(), 0))));
    CHECK(tree["tightened"][0]["paint_mark"] == "moved");
    CHECK(tree["tightened"][0]["looked_at"]["entry"] == "k7-2");
    CHECK(tree["tightened"][1]["plausibility"] == "too-high");
    CHECK(tree["tightened"][1]["thread"] == "M6");
}
