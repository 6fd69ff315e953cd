// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_copy.h"
#include "model/store/write_out.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

std::string golden_path(const std::string& name = "format-1") {
    return std::string(SUMPBOOK_SOURCE_DIR) + "/tests/model/store/golden/" + name + ".sumpbook";
}

/// Everything format 1 can hold: every kind of record with all fields, bare records, an attachment, a
/// fingerprint record.
void make_golden(Bench& bench) {
    auto garage = make_example(bench);
    std::vector<NewRecord> full, bare;
    for (const auto& record : full_records())
        full.push_back({subject_of(3), record});
    for (const auto& record : bare_records())
        bare.push_back({subject_of(4), record});
    REQUIRE(garage.append(full));
    REQUIRE(garage.append(bare));
    REQUIRE(garage.take_fingerprint({1'700'000'300}));
}

/// The same, without the entry of the attachment and without one that was saved with other records.
void make_erased(Bench& bench) {
    make_golden(bench);
    auto garage = bench.open();
    REQUIRE(garage);
    const auto paper = garage->records()[4].name;
    const auto fuel = garage->records()[2].name;
    REQUIRE(garage->erase(paper, "not ours", {1'700'000'400}));
    REQUIRE(garage->erase(fuel, "private", {1'700'000'500}));
}

} // namespace

TEST_CASE("Promise 5: format 1 is written to the byte as it was when it was settled", "[golden]") {
    Bench bench;
    make_golden(bench);
    // A format that owners' files have is never changed; this is for the day the first one is settled.
    if (std::getenv("SUMPBOOK_ACCEPT_FORMAT") != nullptr) write_file(golden_path(), bench.bytes());
    CHECK(bench.bytes() == bytes_of_file(golden_path()));
}

TEST_CASE("Promise 5: the file of format 1 opens with every record it was given", "[golden]") {
    Bench bench;
    write_file(bench.path(), bytes_of_file(golden_path()));
    const auto garage = bench.open(ScanDepth::everything);
    REQUIRE(garage);
    const auto& records = garage->records();
    const auto full = full_records();
    const auto bare = bare_records();
    REQUIRE(records.size() == 6 + full.size() + bare.size());
    for (std::size_t i = 0; i < full.size(); ++i)
        CHECK(records[6 + i].record == full[i]);
    for (std::size_t i = 0; i < bare.size(); ++i)
        CHECK(records[6 + full.size() + i].record == bare[i]);
    CHECK(garage->fingerprints().size() == 2);
    CHECK(garage->bytes() == bench.bytes().size());
    const auto& saved = garage->fingerprints().front();
    CHECK(garage->check(TypedFingerprint::read(fingerprint_text(saved.fingerprint())).value()).answer ==
          FingerprintAnswer::unchanged);
}

TEST_CASE("Promise 5: writing again what was read of format 1 gives the same frames", "[golden]") {
    Bench bench;
    write_file(bench.path(), bytes_of_file(golden_path()));
    const auto all = bench.bytes();
    struct Again final : ScanHandler {
        const Bytes* all = nullptr;
        std::size_t same = 0, other = 0;
        void frame(const VerifiedFrame& verified, std::uint64_t at) override {
            if (verified.frame.header.kind == FrameKind::attachment) return;
            const auto bytes = encode_frame(verified.frame);
            const bool equal =
                std::equal(bytes.begin(), bytes.end(), all->begin() + static_cast<std::ptrdiff_t>(at));
            ++(equal ? same : other);
        }
        void fingerprint_record(ByteView body) override {
            const auto record = read_fingerprint_record(body);
            const bool equal = record && std::ranges::equal(encode_fingerprint_record(*record), body);
            ++(equal ? same : other);
        }
        void action_done(bool /*good*/) override {}
    } again;
    again.all = &all;
    Window window(ByteView(all), 0);
    static_cast<void>(scan_actions(window, 40, 0, ScanDepth::everything, again));
    CHECK(again.other == 0);
    CHECK(again.same > 6);
}

TEST_CASE("Promise 5: a file with erased entries is written and opens as it did when erasing came", "[golden]") {
    Bench bench;
    make_erased(bench);
    if (std::getenv("SUMPBOOK_ACCEPT_FORMAT") != nullptr) write_file(golden_path("erased"), bench.bytes());
    CHECK(bench.bytes() == bytes_of_file(golden_path("erased")));
    write_file(bench.path(), bytes_of_file(golden_path("erased")));
    const auto garage = bench.open(ScanDepth::everything);
    REQUIRE(garage);
    const auto& records = garage->records();
    const auto before = full_records().size() + bare_records().size() + 6;
    // The details that were saved with the fuel stop are recorded again; two withdrawals say what is gone.
    REQUIRE(records.size() == before - 3 + 3);
    CHECK(erased_frames(records).size() == 3); // the paper, its entry, the fuel stop's save
    const auto gone = erased_records(garage->index(), records);
    REQUIRE(gone.size() == 3);
    CHECK(gone[0].by == &records.back()); // the details, copied last
    CHECK_FALSE(gone[0].for_itself);
    CHECK(gone[1].for_itself);
    CHECK(gone[2].for_itself);
    CHECK(std::get<Withdrawal>(gone[2].by->record.content).reason == "not ours");
    const auto& saved = garage->fingerprints().front();
    CHECK(garage->check(TypedFingerprint::read(fingerprint_text(saved.fingerprint())).value()).answer ==
          FingerprintAnswer::unchanged);
}

TEST_CASE("Promise 6: the file of format 1 written out is the same bytes as when its order was settled",
          "[golden]") {
    Bench bench;
    write_file(bench.path(), bytes_of_file(golden_path()));
    const auto copy = read_copy(bench.files, bench.path(), Patience{0});
    REQUIRE(copy);
    const auto out = bench.folder.file("out.sumpbook");
    REQUIRE(write_out(bench.files, copy->set, out));
    const auto written = bytes_of_file(out);
    CHECK(written != bench.bytes()); // another order, and one frame an action
    if (std::getenv("SUMPBOOK_ACCEPT_FORMAT") != nullptr) write_file(golden_path("written-out"), written);
    CHECK(written == bytes_of_file(golden_path("written-out")));
}

TEST_CASE("Promise 5: a file of a newer format is refused by opening and by appending, and left as it is",
          "[golden]") {
    Bench bench;
    write_file(bench.path(), bytes_of_file(golden_path()));
    auto open_before = bench.open(); // a program that has the file open when a newer one takes its place
    REQUIRE(open_before);
    auto newer = bench.bytes();
    ++newer[8]; // the format: two bytes behind the magic
    const auto check = sha256({ByteView(newer).first(32)});
    std::copy_n(check.begin(), 8, newer.begin() + 32);
    write_file(bench.folder.file("newer"), newer);
    std::filesystem::rename(bench.folder.file("newer"), bench.path());
    const auto opened = bench.open();
    REQUIRE_FALSE(opened);
    CHECK(opened.error().kind == ProblemKind::newer_format);
    CHECK(opened.error().sentence.find("later version") != std::string::npos);
    CHECK(bench.bytes() == newer);
    const auto appended = open_before->append({{subject_of(1), fuel_record(1)}});
    REQUIRE_FALSE(appended);
    CHECK(bench.bytes() == newer);
    CHECK(bench.folder.files() == 2); // nothing beside it but the lock
}
