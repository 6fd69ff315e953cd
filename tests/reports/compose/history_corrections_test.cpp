// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/history_corrections.h"

#include "tests/catch.h"
#include "tests/model/bike_log.h"

using namespace sumpbook;
using namespace sumpbook::testing;

namespace {

/// Records of one bike, one after the other, one second apart.
class Records {
public:
    RecordName add(RecordContent content, std::vector<RecordName> replaces = {}) {
        NamedRecord named;
        named.name = name(records.size() + 1);
        named.id = "k7-" + std::to_string(records.size() + 1);
        named.subject = bike.id;
        named.record.recorded = {static_cast<std::int64_t>(records.size())};
        named.record.replaces = std::move(replaces);
        named.record.content = std::move(content);
        records.push_back(named);
        return named.name;
    }
    [[nodiscard]] std::vector<compose::Correction> corrections(std::string_view until = "2026-01-01") const {
        return compose::corrections_of(bike, records, day(until));
    }

    Bike bike;
    std::vector<NamedRecord> records;

private:
    static RecordName name(std::size_t number) {
        RecordName made;
        made.frame_hash[0] = static_cast<std::uint8_t>(number);
        return made;
    }
};

Entry work(std::string text) {
    Entry entry;
    entry.date = day("2025-03-01");
    entry.odometer = km("1000");
    Work body;
    body.text = std::move(text);
    entry.body = body;
    return entry;
}

} // namespace

TEST_CASE("A correction says what the entry said and what changed", "[compose][report]") {
    Records log;
    const auto first = log.add(work("front pads"));
    log.add(work("front pads and disc"), {first});
    const auto found = log.corrections();
    REQUIRE(found.size() == 1);
    CHECK(found[0].id == "k7-2");
    CHECK(found[0].of == day("2025-03-01"));
    CHECK_FALSE(found[0].withdrawn);
    CHECK(found[0].earlier == "work, front pads");
    REQUIRE(found[0].changes.size() == 1);
    CHECK(found[0].changes[0].find("front pads and disc, before front pads") != std::string::npos);
}

TEST_CASE("A withdrawal keeps what was said; why it was taken back is private", "[compose][report]") {
    Records log;
    const auto first = log.add(work("front pads"));
    const auto second = log.add(work("rear pads"), {first});
    log.add(Withdrawal{"wrong bike"}, {second});
    const auto found = log.corrections();
    REQUIRE(found.size() == 2);
    CHECK(found[1].withdrawn);
    CHECK(found[1].earlier == "work, rear pads");
    CHECK(found[1].changes.empty());
}

TEST_CASE("Money and private fields are not shown, only that something of them changed",
          "[compose][report]") {
    Records log;
    auto entry = work("front pads");
    const auto first = log.add(entry);
    entry.paid = money("99");
    entry.who = "somebody";
    entry.note = "secret";
    log.add(entry, {first});
    const auto found = log.corrections();
    REQUIRE(found.size() == 1);
    CHECK(found[0].changes.empty());
}

TEST_CASE("What was never changed, or is of a later day or another bike, is no correction",
          "[compose][report]") {
    Records log;
    const auto first = log.add(work("front pads"));
    CHECK(log.corrections().empty());
    log.add(work("rear pads"), {first});
    CHECK(log.corrections("2025-02-28").empty());
    log.bike.id.bytes[0] = 1;
    CHECK(log.corrections().empty());
}
