// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/recording_findings.h"

#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::review;
using namespace sumpbook::store;

namespace {

constexpr std::int64_t start = 1'700'000'000; // when Bench makes its garage
constexpr std::int64_t day_s = 86'400;

std::string add(GarageFile& garage, std::int64_t recorded, std::vector<RecordName> replaces = {}) {
    auto record = fuel_record(1);
    record.recorded = {recorded};
    record.replaces = std::move(replaces);
    const auto ids = garage.append({{subject_of(1), record}});
    REQUIRE(ids);
    return ids->front();
}

std::vector<review::Finding> findings_of(const GarageFile& file, std::int64_t now) {
    return recording_findings(file, fold(file.subject(), file.records()), {now});
}

} // namespace

TEST_CASE("A clock that goes back by up to a day is no finding, by more it is, with the first entry") {
    Bench bench;
    auto garage = bench.create().value();
    add(garage, start + 10 * day_s);
    add(garage, start + 9 * day_s); // a day exactly
    CHECK(findings_of(garage, start + 20 * day_s).empty());
    const auto back = add(garage, start + 8 * day_s - 1);
    auto findings = findings_of(garage, start + 20 * day_s);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "recorded-out-of-order");
    CHECK(findings[0].entry_ids == std::vector<std::string>{back});
    add(garage, start + 11 * day_s);
    add(garage, start);
    findings = findings_of(garage, start + 20 * day_s);
    REQUIRE(findings.size() == 1); // one a run of entries, and how often
    CHECK(findings[0].entry_ids == std::vector<std::string>{back});
    CHECK(findings[0].sentence.find("2 places") != std::string::npos);
}

TEST_CASE("What was recorded again because something saved with it was erased keeps its time, and is no clock") {
    Bench bench;
    auto garage = bench.create().value();
    auto one = fuel_record(1), two = fuel_record(2);
    one.recorded = two.recorded = {start + day_s};
    REQUIRE(garage.append({{subject_of(1), one}, {subject_of(1), two}}));
    const auto erased = garage.records().back().name;
    add(garage, start + 10 * day_s);
    REQUIRE(garage.erase(erased, {}, {start + 12 * day_s}));
    REQUIRE(garage.records().back().record.recorded == RecordedTime{start + day_s}); // the copy of the other
    CHECK(findings_of(garage, start + 20 * day_s).empty());
    const auto back = add(garage, start + 10 * day_s); // behind the erasing, whose time stands
    const auto findings = findings_of(garage, start + 20 * day_s);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].entry_ids == std::vector<std::string>{back});
}

TEST_CASE("Another run of entries is no order to be kept") {
    Bench bench;
    auto garage = bench.create().value();
    add(garage, start + 10 * day_s);
    auto other = fuel_record(2);
    other.recorded = {start + day_s};
    REQUIRE(garage.append({{subject_of(2), other}}));
    CHECK(findings_of(garage, start + 20 * day_s).empty());
}

TEST_CASE("What was recorded later than a day from now is a doubt") {
    Bench bench;
    auto garage = bench.create().value();
    const auto ahead = add(garage, start + 10 * day_s);
    CHECK(findings_of(garage, start + 9 * day_s).empty()); // a day exactly
    const auto findings = findings_of(garage, start + 9 * day_s - 1);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "recorded-in-future");
    CHECK(findings[0].severity == Severity::doubt);
    CHECK(findings[0].entry_ids == std::vector<std::string>{ahead});
}

TEST_CASE("A version that is not held is named by the entry that stands for it") {
    Bench bench;
    auto garage = bench.create().value();
    add(garage, start + day_s);
    const auto held = garage.records().back().name;
    add(garage, start + 2 * day_s, {held});
    CHECK(findings_of(garage, start + 3 * day_s).empty());
    const auto id = add(garage, start + 3 * day_s, {{Hash256{9}, 0}});
    const auto findings = findings_of(garage, start + 3 * day_s);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "replaces-unknown");
    CHECK(findings[0].severity == Severity::info);
    CHECK(findings[0].entry_ids == std::vector<std::string>{id});
}
