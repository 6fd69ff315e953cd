// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/store/disk_bench.h"
#include "tests/model/store/example_garage.h"
#include "tests/model/store/fault_loop.h"
#include "tests/model/store/meddling_files.h"

#include "model/garage/garage.h"
#include "model/garage/versions.h"
#include "model/store/merge.h"

#include <sys/stat.h>

#include <iostream>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

constexpr RecordedTime now{1'800'000'000};

Record noted(const std::string& text, std::vector<RecordName> replaces = {}) {
    Record record = fuel_record(5);
    std::get<Entry>(record.content).note = text;
    record.replaces = std::move(replaces);
    return record;
}

bool holds(const Bytes& bytes, std::string_view text) {
    return !std::ranges::search(bytes, as_bytes(text)).empty();
}

RecordName name_of(const GarageFile& garage, const std::string& id) {
    return std::ranges::find(garage.records(), id, &NamedRecord::id)->name;
}

/// The example, and one save of an entry that names somebody, its neighbour, and a file only it refers to;
/// then its correction.
struct Secret {
    explicit Secret(Bench& bench)
        : Secret(make_example(bench), bench.random) {}
    Secret(GarageFile example, RandomSource& random)
        : garage(std::move(example)) {
        const auto paper = new_attachment(subject_of(1), Bytes{'l', 'e', 't', 't', 'e', 'r'}, random);
        REQUIRE(paper);
        file = paper->hash;
        Record first = noted("Mr Nobody sold it");
        std::get<Entry>(first.content).attachments = {{"letter.txt", "text/plain", 6, file}};
        const auto ids =
            garage.append({{subject_of(1), first}, {subject_of(1), noted("neighbour")}}, {*paper});
        REQUIRE(ids);
        entry = ids->at(0);
        neighbour = ids->at(1);
        const auto corrected = garage.append(
            {{subject_of(1), noted("Mr Nobody sold it to us", {name_of(garage, entry)})}});
        REQUIRE(corrected);
        correction = corrected->at(0);
    }
    GarageFile garage;
    Hash256 file{};
    std::string entry, neighbour, correction;
};

std::vector<std::string> notes_of(const GarageFile& garage) {
    const Garage folded = fold(garage.subject(), garage.records());
    std::vector<std::string> notes;
    for (const auto& bike : folded.bikes) {
        for (const auto& entry : bike.log)
            notes.push_back(entry.value.note.value_or(""));
    }
    std::ranges::sort(notes);
    return notes;
}

} // namespace

TEST_CASE("Promise 10: erasing drops what an entry says and keeps its hash, so the file still verifies",
          "[erase]") {
    Bench bench;
    Secret secret(bench);
    const auto print = secret.garage.take_fingerprint({1'750'000'000});
    REQUIRE(print);
    const auto frames = secret.garage.index().frames();
    const auto before = notes_of(secret.garage);
    CHECK(holds(bench.bytes(), "Mr Nobody"));
    CHECK(holds(bench.bytes(), "letter"));
    CHECK(::chmod(bench.path().c_str(), 0600) == 0);

    const auto erased = secret.garage.erase(name_of(secret.garage, secret.correction), "names somebody", now);
    REQUIRE(erased);
    CHECK(erased->versions == 2);
    CHECK(erased->copies == 1);
    CHECK(erased->attachments == 1);

    const auto bytes = bench.bytes();
    CHECK_FALSE(holds(bytes, "Mr Nobody"));
    CHECK_FALSE(holds(bytes, "letter"));
    CHECK(bench.folder.files() == 3); // the garage, its lock, the state folder: no temporary file
    struct stat info {};
    CHECK(::stat(bench.path().c_str(), &info) == 0);
    CHECK((info.st_mode & 07777U) == 0600U);

    const auto opened = bench.open(ScanDepth::everything);
    REQUIRE(opened);
    for (std::size_t i = 0; i < frames.size(); ++i)
        CHECK(opened->index().frames()[i].hash == frames[i].hash);
    CHECK(opened->findings().empty()); // the chain goes on, and it is this installation's own
    auto expected = before;
    std::erase(expected, "Mr Nobody sold it to us");
    CHECK(notes_of(*opened) == expected);
    CHECK(opened->attachment(secret.file).error().kind == ProblemKind::refused);

    const auto typed = TypedFingerprint::read(fingerprint_text(print->fingerprint()));
    REQUIRE(typed);
    const auto check = opened->check(*typed);
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.covered_entries == print->entries);

    const auto gone = erased_records(opened->index(), opened->records());
    REQUIRE(gone.size() == 3);
    for (const auto& one : gone) {
        CHECK(one.for_itself == (one.id != secret.neighbour));
        REQUIRE(one.by != nullptr);
        if (one.for_itself) CHECK(one.by->id == erased->id);
        if (one.for_itself) CHECK(std::get<Withdrawal>(one.by->record.content).reason == "names somebody");
        if (!one.for_itself) CHECK(std::get<Entry>(one.by->record.content).note == "neighbour");
    }
    CHECK((*opened).records().size() == secret.garage.records().size());
}

TEST_CASE("After erasing the log goes on in the same run of entries, in both programs", "[erase]") {
    Bench bench;
    Secret secret(bench);
    auto other = bench.open();
    REQUIRE(other);
    REQUIRE(secret.garage.erase(name_of(secret.garage, secret.entry), "x", now));
    REQUIRE(secret.garage.append({{subject_of(1), noted("later")}}));
    CHECK(other->refresh().value()); // another file has taken the place
    REQUIRE(other->append({{subject_of(1), noted("later still")}}));
    const auto opened = bench.open();
    REQUIRE(opened);
    CHECK(opened->index().chains().size() == 3);
    CHECK(opened->findings().empty());
    CHECK(opened->notices().empty());
    CHECK(secret.garage.erase(name_of(*opened, opened->records().back().id), "y", now));
    CHECK_FALSE(holds(bench.bytes(), "later still"));
    CHECK(holds(bench.bytes(), "later"));
}

TEST_CASE("What else stands in the save keeps its corrections, and can be erased later", "[erase]") {
    Bench bench;
    Secret secret(bench);
    REQUIRE(secret.garage.append(
        {{subject_of(1), noted("neighbour, put right", {name_of(secret.garage, secret.neighbour)})}}));
    const auto erased = secret.garage.erase(name_of(secret.garage, secret.entry), "x", now);
    REQUIRE(erased);
    CHECK(erased->copies == 2); // the first version, and the one that stands for it
    CHECK(conflicts(secret.garage.records()).empty());
    auto notes = notes_of(secret.garage);
    CHECK(std::ranges::count(notes, "neighbour, put right") == 1);
    CHECK(std::ranges::count(notes, "neighbour") == 0);
    const auto& last = secret.garage.records().back();
    CHECK(recorded_again_on(last, secret.garage.records()) == now);
    REQUIRE(secret.garage.erase(last.name, "y", now));
    CHECK_FALSE(holds(bench.bytes(), "neighbour"));
    notes = notes_of(secret.garage);
    CHECK(std::ranges::count(notes, "neighbour, put right") == 0);
    std::size_t for_themselves = 0;
    for (const auto& one : erased_records(secret.garage.index(), secret.garage.records()))
        for_themselves += one.for_itself ? 1 : 0;
    CHECK(for_themselves >= 4); // the entry, its correction, the neighbour, its correction
}

TEST_CASE("A save of which a part was left out is not copied with a hole in it", "[erase]") {
    Bench bench;
    Secret secret(bench);
    // As a hand-over without money: the money part of the save is taken out.
    const auto name = name_of(secret.garage, secret.entry);
    struct WithoutMoney final : ScanHandler {
        RecordName entry;
        Bytes frame_bytes;
        std::uint64_t place = 0, length = 0;
        void frame(const VerifiedFrame& verified, std::uint64_t at) override {
            if (verified.hash != entry.frame_hash) return;
            Frame frame = verified.frame;
            length = encode_frame(frame).size();
            frame.parts[1] = withheld_part(frame.parts[1].hash);
            frame_bytes = encode_frame(frame);
            place = at;
        }
        void fingerprint_record(ByteView) override {}
        void action_done(bool) override {}
    } without;
    without.entry = name;
    auto bytes = bench.bytes();
    Window window(ByteView(bytes), 0);
    static_cast<void>(scan_actions(window, 40, 0, ScanDepth::usual, without));
    REQUIRE(without.place != 0);
    // The frame of the attachment stands in the same action, in front of it.
    const std::uint64_t attachment = 84 + 32 + 20 + 6 + 16;
    const auto start = without.place - attachment - 12;
    Bytes length;
    put_number(length, static_cast<std::uint32_t>(12 + attachment + without.frame_bytes.size()));
    std::copy(length.begin(), length.end(), bytes.begin() + static_cast<std::ptrdiff_t>(start + 4));
    const auto from = bytes.begin() + static_cast<std::ptrdiff_t>(without.place);
    bytes.erase(from, from + static_cast<std::ptrdiff_t>(without.length));
    bytes.insert(bytes.begin() + static_cast<std::ptrdiff_t>(without.place), without.frame_bytes.begin(),
                 without.frame_bytes.end());
    write_file(bench.path(), bytes);
    auto opened = bench.open();
    REQUIRE(opened);
    CHECK(opened->withheld(Part::money) == 1);
    const auto refused = opened->erase(name, "x", now);
    REQUIRE_FALSE(refused);
    CHECK(refused.error().kind == ProblemKind::refused);
    CHECK(bench.bytes() == bytes);
}

TEST_CASE("Promise 8: what was erased in one copy stays erased in every merge with another", "[erase]") {
    Bench bench;
    Secret secret(bench);
    const auto old = bench.folder.file("old.sumpbook");
    write_file(old, bench.bytes());
    const auto typed = TypedFingerprint::read(
        fingerprint_text(secret.garage.take_fingerprint({1'750'000'000})->fingerprint()));
    REQUIRE(secret.garage.erase(name_of(secret.garage, secret.entry), "x", now));
    const auto merged = [&](const std::vector<std::string>& paths, const std::string& name) {
        const auto plan = plan_merge(bench.files, paths, Patience{0});
        REQUIRE(plan);
        const auto out = bench.folder.file(name);
        REQUIRE(write_out(bench.files, plan->set, out, plan->mode));
        return std::pair(out, plan->notices);
    };
    const auto [one, said] = merged({bench.path(), old}, "one.sumpbook");
    const auto [other, said_too] = merged({old, bench.path()}, "other.sumpbook");
    CHECK(said.size() == 1);
    CHECK(said == said_too);
    CHECK(bytes_of_file(one) == bytes_of_file(other));
    CHECK_FALSE(holds(bytes_of_file(one), "Mr Nobody"));
    CHECK_FALSE(holds(bytes_of_file(one), "letter"));
    const auto again = merged({one, old}, "again.sumpbook").first;
    CHECK(bytes_of_file(again) == bytes_of_file(one));
    const auto opened = GarageFile::open(bench.around(), one, ScanDepth::everything);
    REQUIRE(opened);
    CHECK(notes_of(*opened) == notes_of(secret.garage));
    CHECK(conflicts(opened->records()).empty());
    REQUIRE(typed);
    CHECK(opened->check(*typed).answer == FingerprintAnswer::unchanged);
}

namespace {

StoreOperation erase_operation() {
    MemoryDisk disk = empty_disk();
    SeededRandom random("secret");
    RecordName name;
    {
        const Secret secret(make_example(surroundings(disk, random), garage_path), random);
        name = name_of(secret.garage, secret.entry);
    }
    return {.name = "erase",
            .before = disk.after_power_cut(1),
            .run = [name](FileLayer& files) -> Result<void> {
                SeededRandom again("operation");
                auto garage = GarageFile::open(surroundings(files, again), garage_path);
                if (!garage) return pass_on(garage.error());
                const auto erased = garage->erase(name, "x", now);
                if (!erased) return pass_on(erased.error());
                return {};
            },
            .unconfirmed = "did not confirm",
            .erases = {"Mr Nobody", "letter"}};
}

} // namespace

TEST_CASE("Promise 1: erasing is done or not at all, whatever operation fails", "[erase][faults]") {
    const auto operation = erase_operation();
    const auto before = operation.before.bytes(garage_path);
    for (const auto& text : operation.erases)
        REQUIRE(holds(before, text));
    FaultLoop loop;
    loop.run(operation);
    INFO((loop.wrong.empty() ? "" : loop.wrong.front()));
    CHECK(loop.wrong == std::vector<std::string>{});
    CHECK(loop.points > 1000);
    CHECK(loop.unconfirmed > 10);
    std::cout << loop.text(operation) << '\n';
}

namespace {

/// A garage on a disk with one entry that says this.
struct OneEntry {
    explicit OneEntry(const std::string& note)
        : disk(empty_disk()) {
        auto made =
            GarageFile::create(surroundings(disk, random), garage_path, full_settings(), {1'700'000'000});
        REQUIRE(made);
        REQUIRE(made->append({{subject_of(1), noted(note)}}));
        name = made->records().back().name;
    }
    SeededRandom random{"one entry"};
    MemoryDisk disk;
    RecordName name;
};

bool has_side_file(const MemoryDisk& disk) {
    return std::ranges::any_of(disk.names(), [](const auto& name) { return name.find(".new-") != name.npos; });
}

} // namespace

TEST_CASE("Erasing is refused where the entry is not in the file that is copied", "[erase]") {
    OneEntry one("Mr Nobody"), other("Ms Nobody");
    const auto bytes = other.disk.bytes(garage_path);
    REQUIRE(bytes.size() == one.disk.bytes(garage_path).size());
    int opened = 0; // to be read, to be written, and to be copied
    MeddlingFiles files(
        one.disk,
        [&](const auto& operation) {
            return operation.name == "open" && operation.path == garage_path && ++opened == 3;
        },
        [&] { write_in_place(one.disk, garage_path, bytes); });
    auto garage = GarageFile::open(surroundings(files, one.random), garage_path);
    REQUIRE(garage);
    const auto erased = garage->erase(one.name, "x", now);
    CHECK(files.done());
    REQUIRE_FALSE(erased);
    CHECK(erased.error().kind == ProblemKind::io);
    CHECK(erased.error().sentence.find("changed while it was read") != std::string::npos);
    CHECK(one.disk.bytes(garage_path) == bytes);
    CHECK_FALSE(has_side_file(one.disk));
}

TEST_CASE("Erasing is refused where the new file still shows what was to go", "[erase]") {
    OneEntry one("Mr Nobody");
    const auto before = one.disk.bytes(garage_path);
    MeddlingFiles files(
        one.disk,
        [](const auto& operation) {
            return operation.name == "sync" && operation.path == garage_path + ".new-1";
        },
        [&] { write_in_place(one.disk, garage_path + ".new-1", before); });
    auto garage = GarageFile::open(surroundings(files, one.random), garage_path);
    REQUIRE(garage);
    const auto erased = garage->erase(one.name, "x", now);
    CHECK(files.done());
    REQUIRE_FALSE(erased);
    CHECK(erased.error().sentence.find("does not read back") != std::string::npos);
    CHECK(one.disk.bytes(garage_path) == before);
    CHECK_FALSE(has_side_file(one.disk));
}
