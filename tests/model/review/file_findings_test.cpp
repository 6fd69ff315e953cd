// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/file_findings.h"

#include "model/store/action.h"
#include "model/store/merge.h"
#include "model/store/scan.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

#include <filesystem>

using namespace sumpbook;
using namespace sumpbook::review;
using namespace sumpbook::store;

namespace {

constexpr RecordedTime now{1'700'100'000};

std::vector<std::string> ids_of(const GarageFile& file) {
    std::vector<std::string> ids;
    for (const auto& finding : file_findings(file, fold(file.subject(), file.records()), now, {}))
        ids.push_back(finding.id);
    return ids;
}

/// Settings, two entries, a fingerprint and an entry behind it, each recorded after the one before.
GarageFile make_sound(Bench& bench) {
    auto garage = bench.create().value();
    for (int number = 1; number <= 3; ++number) {
        auto record = fuel_record(number);
        record.recorded = {1'700'000'000 + 100 * number};
        REQUIRE(garage.append({{subject_of(1), record}}));
        if (number == 2) REQUIRE(garage.take_fingerprint({1'700'000'250}));
    }
    return garage;
}

/// Writes every frame again, one an action, without this part.
class LeavingOut final : public ScanHandler {
public:
    LeavingOut(std::size_t slot, Bytes& into)
        : slot_(slot)
        , into_(into) {}
    void frame(const VerifiedFrame& verified, std::uint64_t /*at*/) override {
        if (verified.frame.header.kind == FrameKind::attachment) return;
        Frame frame = verified.frame;
        if (frame.exists(slot_)) frame.parts[slot_] = withheld_part(frame.parts[slot_].hash);
        put_bytes(into_, encode_action({encode_frame(frame)}));
    }
    void fingerprint_record(ByteView /*body*/) override {}
    void action_done(bool /*good*/) override {}

private:
    std::size_t slot_;
    Bytes& into_;
};

Bytes without_part(const Bytes& file, std::size_t slot) {
    Bytes result(file.begin(), file.begin() + file_header_bytes);
    LeavingOut handler(slot, result);
    Window window(file, 0);
    static_cast<void>(scan_actions(window, file_header_bytes, 0, ScanDepth::usual, handler));
    return result;
}

using Ids = std::vector<std::string>;

Record made_at(int number, std::int64_t seconds) {
    auto record = fuel_record(number);
    record.recorded = {seconds};
    return record;
}

/// The whole computer copied, its notes about what it wrote too, and written on there: the file.
std::string written_on_clone(Bench& bench) {
    std::filesystem::copy(bench.folder.file("state"), bench.folder.file("cloned"),
                          std::filesystem::copy_options::recursive);
    const auto path = bench.folder.file("clone.sumpbook");
    write_file(path, bench.bytes());
    auto clone =
        GarageFile::open({bench.files, bench.random, bench.folder.file("cloned"), Patience{0}}, path);
    REQUIRE(clone);
    REQUIRE(clone->append({{subject_of(1), made_at(5, 1'700'000'500)}}));
    CHECK(clone->notices().empty()); // it takes itself for the one that wrote the run
    return path;
}

} // namespace

TEST_CASE("A sound file has no findings about itself") {
    Bench bench;
    const auto garage = make_sound(bench);
    CHECK(ids_of(garage) == Ids{});
}

TEST_CASE("A save that was cut short is said with its bytes") {
    Bench bench;
    static_cast<void>(make_sound(bench));
    auto bytes = bench.bytes();
    bytes.resize(bytes.size() - 20);
    write_file(bench.path(), bytes);
    const auto garage = bench.open();
    REQUIRE(garage);
    CHECK(garage->torn_bytes() > 0);
    const auto findings = file_findings(*garage, fold(garage->subject(), garage->records()), now, {});
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "torn-tail");
    CHECK(findings[0].sentence.find(std::to_string(garage->torn_bytes()) + " bytes") != std::string::npos);
}

TEST_CASE("A run that was continued on two copies of one computer has forked") {
    Bench bench;
    auto garage = make_sound(bench);
    const auto clone = written_on_clone(bench);
    REQUIRE(garage.append({{subject_of(1), made_at(4, 1'700'000'400)}}));
    const auto plan = plan_merge(bench.files, {bench.path(), clone}, Patience{0});
    REQUIRE(plan);
    const auto both = bench.folder.file("both.sumpbook");
    REQUIRE(write_out(bench.files, plan->set, both));
    const auto merged =
        GarageFile::open({bench.files, bench.random, bench.folder.file("another"), Patience{0}}, both);
    REQUIRE(merged);
    const auto findings = file_findings(*merged, fold(merged->subject(), merged->records()), now, {});
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "chain-forked");
    CHECK(findings[0].severity == Severity::doubt);
    CHECK(findings[0].sentence.find("continued in 2 different ways") != std::string::npos);
}

TEST_CASE("What a clone wrote in this installation's name was not written here") {
    Bench bench;
    static_cast<void>(make_sound(bench));
    write_file(bench.path(), bytes_of_file(written_on_clone(bench)));
    const auto garage = bench.open();
    REQUIRE(garage);
    const auto findings = file_findings(*garage, fold(garage->subject(), garage->records()), now, {});
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "not-written-here");
    CHECK(findings[0].severity == Severity::doubt);
    CHECK_FALSE(findings[0].sentence.empty());
}

TEST_CASE("Parts that were left out are told apart, and inform only") {
    Bench bench;
    static_cast<void>(make_example(bench));
    const auto whole = bench.bytes();
    for (const auto& [part, words] :
         {std::pair(Part::money, "the money"), std::pair(Part::personal, "the notes")}) {
        write_file(bench.path(), without_part(whole, slot_of(part)));
        const auto garage = bench.open();
        REQUIRE(garage);
        const auto findings = file_findings(*garage, fold(garage->subject(), garage->records()), now, {});
        const auto found = std::ranges::find(findings, "parts-withheld", &review::Finding::id);
        REQUIRE(found != findings.end());
        CHECK(found->severity == Severity::info);
        CHECK(found->sentence.find(words) != std::string::npos);
    }
}
