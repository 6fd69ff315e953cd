// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/report_history.h"

#include "model/review/history_findings.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

std::string text_of(const BikeLog& log, std::vector<compose::Correction> corrections = {},
                    bool colour = false) {
    const compose::ReportFront front{.bikes = {"Tourer"},
                                     .as_of = day("2026-05-03"),
                                     .garage_file = "my.sumpbook",
                                     .fingerprint = "7k2mf",
                                     .records = 4};
    const auto report = compose::report_history(front, {{.bike = &log.bike,
                                                         .findings = review::history_findings(log.bike),
                                                         .gaps = review::record_gaps(log.bike),
                                                         .corrections = std::move(corrections),
                                                         .pictures = {}}});
    return write::text(report, {.width = 200, .colour = colour});
}

bool holds(const std::string& text, std::string_view part) { return text.find(part) != std::string::npos; }

/// A job with an invoice, one told of, fuel, and everything that is nobody's business.
BikeLog ridden() {
    BikeLog log;
    log.bike.details.value.maker = "Aldenfeld";
    log.bike.details.value.plate = "AB 123";
    log.bike.details.value.note = "secret of the bike";
    auto& first = log.work("2025-01-10", "1000", {}).value;
    first.evidence = Evidence::invoice;
    first.paid = money("99.99");
    first.who = "a person";
    first.place = "a village";
    first.note = "secret of the job";
    std::get<Work>(first.body).text = "front pads";
    log.add("2025-02-10", Fuel{}, "1500");
    auto& second = log.work("2025-03-10", "2000", {}).value;
    second.evidence = Evidence::told;
    return log;
}

} // namespace

TEST_CASE("Everything done stands in order with its evidence; fuel is counted", "[compose][report]") {
    const auto text = text_of(ridden());
    CHECK(holds(text, "2 jobs recorded. Evidence: invoice 1, told 1, not stated 0."));
    CHECK(holds(text, "2025-01-10  1 000 km  work: front pads"));
    CHECK(text.find("2025-01-10") < text.find("2025-03-10"));
    CHECK_FALSE(holds(text, "2025-02-10"));
    CHECK(holds(text, "Not listed: 1 stop for fuel and 0 entries"));
}

TEST_CASE("Money, notes, places, people and the plate are not in it", "[compose][report]") {
    const auto text = text_of(ridden());
    CHECK(holds(text, "Aldenfeld"));
    for (const auto* hidden : {"99.99", "a person", "a village", "secret", "AB 123"}) {
        INFO(hidden);
        CHECK_FALSE(holds(text, hidden));
    }
}

TEST_CASE("Doubts about money and private fields are counted, not shown", "[compose][report]") {
    auto log = ridden();
    log.bike.log[0].value.doubts = {{"work.csv", 3, "total", "12,3,4", "an amount", Part::money},
                                    {"work.csv", 3, "odometer", "10O0", "a distance", Part::open}};
    const auto text = text_of(log);
    CHECK_FALSE(holds(text, "12,3,4"));
    CHECK(holds(text, "10O0"));
    CHECK(holds(text, "Left out, because it is about money or private fields: 1 thing."));
}

TEST_CASE("Gaps and corrections are told, and what is clean is called so", "[compose][report]") {
    auto log = ridden();
    CHECK(
        holds(text_of(log), "There is no half year without an entry between the first entry and the last."));
    CHECK(holds(text_of(log), "No entry was corrected or withdrawn since it was first recorded."));
    log.reading("2026-01-10", "5000");
    const compose::Correction correction{.id = "k7-9",
                                         .recorded = {},
                                         .of = day("2025-01-10"),
                                         .withdrawn = false,
                                         .earlier = "work, rear pads",
                                         .changes = {"Text front pads, before rear pads"}};
    const auto text = text_of(log, {correction});
    CHECK(holds(text,
                "Nothing from 10 Mar 2025 to 10 Jan 2026, 306 days; in that time the bike went 3 000 km."));
    CHECK(holds(text, "Text front pads, before rear pads"));
    CHECK(holds(text, "1 gap of half a year or more"));
}

TEST_CASE("Corrections alone are no reason for caution, an odd thing is", "[compose][report]") {
    const std::string caution = "\x1B[33m";
    const compose::Correction correction{.id = "k7-9",
                                         .recorded = {},
                                         .of = day("2025-01-10"),
                                         .withdrawn = false,
                                         .earlier = "work, rear pads",
                                         .changes = {"Text front pads, before rear pads"}};
    auto log = ridden();
    const auto corrected = text_of(log, {correction}, true);
    CHECK(holds(corrected, "0 gaps of half a year or more; 0 things that look odd; 1 correction"));
    CHECK_FALSE(holds(corrected, caution + "0 gaps"));
    log.reading("2025-03-11", "10");
    CHECK(holds(text_of(log, {correction}, true),
                caution + "0 gaps of half a year or more; 1 thing that looks odd"));
}

TEST_CASE("A bike with nothing recorded is said to have nothing", "[compose][report]") {
    CHECK(holds(text_of(BikeLog{}), "Nothing is recorded of this bike yet."));
}
