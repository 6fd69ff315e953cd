// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/integrity.h"

#include "model/review/file_findings.h"
#include "reports/write/json.h"
#include "reports/write/text.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"
#include "tests/model/store/forge.h"

using namespace sumpbook;

namespace {

/// Three saves about a bike, and no fingerprint.
store::Bytes unprinted() {
    store::Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    for (int number = 1; number <= 3; ++number)
        REQUIRE(garage->append({{store::subject_of(1), store::fuel_record(number)}}));
    return bench.bytes();
}

/// What is said about a file, on a computer that never wrote to it.
compose::CheckedFile checked(const store::Bytes& bytes) {
    store::Bench bench;
    store::write_file(bench.path(), bytes);
    const auto file = bench.open(store::ScanDepth::everything);
    REQUIRE(file);
    compose::CheckedFile result;
    result.path = "my.sumpbook";
    result.frames = file->index().frames().size();
    result.records = file->records().size();
    result.torn_bytes = file->torn_bytes();
    result.findings =
        review::file_findings(*file, fold(file->subject(), file->records()), {2'000'000'000}, {});
    return result;
}

std::string words(const document::Document& document) { return write::text(document, {.width = 1000}); }

const std::string looks_like_this =
    "A history that was rewritten throughout, or cut off cleanly at its end, looks "
    "like this too: only a fingerprint kept outside the file shows that";

void passes_and_we_say_so(const store::Bytes& bytes, const std::string& records) {
    const auto file = checked(bytes);
    CHECK(file.findings.empty());
    const auto said = words(compose::check_text(file));
    CHECK(said.starts_with("The file verifies: " + records + ", every one as it was written."));
    CHECK(said.find(looks_like_this) != std::string::npos);
}

store::FingerprintCheck not_found(bool searched) {
    store::FingerprintCheck check;
    check.answer = store::FingerprintAnswer::not_found;
    check.searched = searched;
    return check;
}

} // namespace

TEST_CASE("A history that was rewritten before any fingerprint passes the check, and we say so") {
    store::Forge forge(unprinted());
    for (const auto place : forge.longest_chain())
        forge.edit(place);
    forge.relink();
    REQUIRE(forge.file() != unprinted());
    passes_and_we_say_so(forge.file(), "4 records");
}

TEST_CASE("A history that was cut off between two saves passes the check, and we say so") {
    store::Forge forge(unprinted());
    forge.frames.pop_back();
    passes_and_we_say_so(forge.file(), "3 records");
}

TEST_CASE("A file that ends in the middle of a save does not read as if all was well") {
    auto bytes = unprinted();
    bytes.resize(bytes.size() - 20);
    const auto file = checked(bytes);
    REQUIRE(file.torn_bytes > 0);
    const auto said = words(compose::check_text(file));
    CHECK(said.starts_with("What is whole verifies: 3 records. But the file ends in the middle of a save"));
    CHECK(said.find("if this is a copy, compare it with the original") != std::string::npos);
    CHECK(said.find("The file verifies") == std::string::npos);
    CHECK(said.find("torn-tail") != std::string::npos);
    CHECK(write::json(compose::check_json(file)).find("\"torn_bytes\": " + std::to_string(file.torn_bytes)) !=
          std::string::npos);
}

TEST_CASE("What was not searched is not said to be not there") {
    const auto all = words(compose::verify_text(not_found(true), {}));
    CHECK(all.find("No state of this file matches this fingerprint") != std::string::npos);
    const auto some = words(compose::verify_text(not_found(false), {}));
    CHECK(some.find("No state of this file") == std::string::npos);
    CHECK(some.find("It cannot be told whether an earlier state of this file matches") != std::string::npos);
    CHECK(write::json(compose::verify_json(not_found(true), {})).find("\"searched_all\": true") !=
          std::string::npos);
    CHECK(write::json(compose::verify_json(not_found(false), {})).find("\"searched_all\": false") !=
          std::string::npos);
}
