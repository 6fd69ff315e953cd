// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/attachment_findings.h"

#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::review;
using namespace sumpbook::store;

namespace {

std::vector<review::Finding> findings_of(const GarageFile& file) {
    const auto damaged = file.damaged_attachments();
    REQUIRE(damaged);
    return attachment_findings(file, fold(file.subject(), file.records()), *damaged);
}

/// Changes the first byte of this text in the file.
void change(const Bench& bench, std::string_view text) {
    auto bytes = bench.bytes();
    const auto found = std::ranges::search(bytes, as_bytes(text));
    REQUIRE_FALSE(found.empty());
    *found.begin() ^= 1;
    write_file(bench.path(), bytes);
}

} // namespace

TEST_CASE("Attachments that are whole and named by an entry are no finding") {
    Bench bench;
    const auto garage = make_example(bench);
    CHECK(findings_of(garage).empty());
}

TEST_CASE("A damaged attachment is named with the entry that holds it, and the entries are all there") {
    Bench bench;
    const auto before = make_example(bench).records().size();
    change(bench, "paper"); // the content stands in front of its name
    const auto garage = bench.open();
    REQUIRE(garage);
    CHECK(garage->records().size() == before);
    const auto findings = findings_of(*garage);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "attachment-damaged");
    CHECK(findings[0].severity == Severity::serious);
    CHECK(findings[0].entry_ids == std::vector<std::string>{garage->records()[4].id});
    CHECK(findings[0].sentence.find("\"paper.txt\" (5 bytes, from byte ") != std::string::npos);
}

TEST_CASE("A damaged attachment that no entry names is a finding too") {
    Bench bench;
    auto garage = make_example(bench);
    const auto stray = new_attachment(subject_of(1), Bytes{'s', 't', 'r', 'a', 'y'}, bench.random);
    REQUIRE(garage.append({{subject_of(1), fuel_record(4)}}, {*stray}));
    REQUIRE(garage.append({{subject_of(1), fuel_record(5)}}));
    auto findings = findings_of(garage);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "attachment-unreferenced");
    CHECK(findings[0].entry_ids.empty());
    change(bench, "stray");
    const auto opened = bench.open();
    REQUIRE(opened);
    findings = findings_of(*opened);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "attachment-damaged");
}

TEST_CASE("A file that an entry names and that is not here is said to be missing") {
    Bench bench;
    auto garage = make_example(bench);
    Entry entry = full_entry(Note{});
    entry.attachments = {{"photo.jpg", "image/jpeg", 1, Hash256{7}}};
    const auto ids = garage.append({{subject_of(2), Record{{1'700'000'300}, {}, entry}}});
    REQUIRE(ids);
    const auto findings = findings_of(garage);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "attachment-missing");
    CHECK(findings[0].entry_ids == *ids);
    CHECK(findings[0].sentence.find("\"photo.jpg\" (1 byte)") != std::string::npos);
}
