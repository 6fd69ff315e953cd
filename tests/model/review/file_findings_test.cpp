// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/file_findings.h"

#include "model/store/action.h"
#include "model/store/scan.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

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
