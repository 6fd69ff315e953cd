// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_file.h"

#include "model/store/action.h"
#include "model/store/archive.h"
#include "model/store/garage_copy.h"
#include "tests/catch.h"
#include "tests/model/store/disk_bench.h"
#include "tests/model/store/example_garage.h"
#include "tests/model/store/meddling_files.h"

#include <set>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

std::vector<std::string> ids_of(const GarageFile& garage) {
    std::vector<std::string> ids;
    for (const auto& record : garage.records())
        ids.push_back(record.id);
    return ids;
}

std::set<std::string> finding_ids(const GarageFile& garage) {
    std::set<std::string> ids;
    for (const auto& finding : garage.findings())
        ids.insert(finding.id);
    return ids;
}

/// Without the last `bytes` bytes.
void cut(Bench& bench, std::size_t bytes) {
    auto all = bench.bytes();
    all.resize(all.size() - bytes);
    write_file(bench.path(), all);
}

/// The example, opened on files that fail.
GarageFile example_on(Bench& bench, FailingFiles& failing) {
    make_example(bench);
    auto garage = GarageFile::open(bench.around(failing), bench.path());
    REQUIRE(garage);
    return *std::move(garage);
}

} // namespace

TEST_CASE("A new garage holds its settings", "[garage-file]") {
    Bench bench;
    const auto made = bench.create();
    REQUIRE(made);
    REQUIRE(made->records().size() == 1);
    CHECK(std::get<GarageSettings>(made->records()[0].record.content) == full_settings());
    CHECK(made->records()[0].subject == made->subject());
    const auto opened = bench.open();
    REQUIRE(opened);
    CHECK(opened->subject() == made->subject());
    CHECK(ids_of(*opened) == ids_of(*made));
    CHECK(opened->bytes() == bench.bytes().size());
    CHECK(opened->findings().empty());
    CHECK(opened->notices().empty());
}

TEST_CASE("A new garage never takes the place of a file", "[garage-file]") {
    Bench bench;
    write_file(bench.path(), Bytes{1});
    const auto made = bench.create();
    REQUIRE_FALSE(made);
    CHECK(made.error().kind == ProblemKind::refused);
    CHECK(bench.bytes() == Bytes{1});
}

TEST_CASE("What is appended is there on opening, in the order given, with ids for people", "[garage-file]") {
    Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    const auto ids = garage->append(
        {{subject_of(1), fuel_record(1)}, {subject_of(2), fuel_record(2)}, {subject_of(1), fuel_record(3)}});
    REQUIRE(ids);
    REQUIRE(ids->size() == 3);
    CHECK((*ids)[0].ends_with("-1"));
    CHECK((*ids)[1].ends_with("-1"));
    CHECK((*ids)[2].ends_with("-2"));
    const auto more = garage->append({{subject_of(1), fuel_record(4)}});
    REQUIRE(more);
    CHECK((*more)[0].ends_with("-3"));
    const auto opened = bench.open();
    REQUIRE(opened);
    CHECK(ids_of(*opened) == ids_of(*garage));
    std::map<std::string, Record> by_id;
    for (const auto& record : opened->records())
        by_id[record.id] = record.record;
    CHECK(by_id.at((*ids)[0]) == fuel_record(1));
    CHECK(by_id.at((*ids)[1]) == fuel_record(2));
    CHECK(by_id.at((*ids)[2]) == fuel_record(3));
    CHECK(by_id.at((*more)[0]) == fuel_record(4));
}

TEST_CASE("Two programs that have the file open see each other's entries", "[garage-file]") {
    Bench bench;
    auto one = bench.create();
    REQUIRE(one);
    auto two = bench.open();
    REQUIRE(two);
    REQUIRE(one->append({{subject_of(1), fuel_record(1)}}));
    CHECK(two->refresh().value());
    CHECK_FALSE(two->refresh().value());
    CHECK(two->records().size() == 2);
    REQUIRE(two->append({{subject_of(1), fuel_record(2)}}));
    REQUIRE(one->append({{subject_of(1), fuel_record(3)}}));
    CHECK(one->records().size() == 4);
    CHECK(bench.open()->index().chains().size() == 2); // of the garage and of the bike: one installation
    CHECK(bench.open()->findings().empty());
}

TEST_CASE("A torn end is left out when reading and set aside when writing", "[garage-file]") {
    Bench bench;
    make_example(bench);
    const auto whole = bench.bytes();
    cut(bench, 10);
    const auto torn = bench.bytes();
    auto garage = bench.open();
    REQUIRE(garage);
    CHECK(garage->records().size() == 5);
    REQUIRE(garage->notices().size() == 1);
    CHECK(garage->notices()[0].find("cut short") != std::string::npos);
    CHECK(bench.bytes() == torn); // readers only report
    const auto end = garage->bytes();
    REQUIRE(garage->append({{subject_of(2), fuel_record(9)}}));
    CHECK(bytes_of_file(bench.path() + ".cut-1") ==
          Bytes(torn.begin() + static_cast<std::ptrdiff_t>(end), torn.end()));
    CHECK(std::ranges::any_of(garage->notices(),
                              [](const auto& notice) { return notice.find(".cut-1") != std::string::npos; }));
    const auto opened = bench.open();
    REQUIRE(opened);
    CHECK(opened->records().size() == 6);
    CHECK(opened->notices().empty());
}

TEST_CASE("A damaged file is refused with frame, byte and entry, and stays as it is", "[garage-file]") {
    Bench bench;
    const auto garage = make_example(bench);
    const auto& frame = garage.index().frames()[1];
    auto bytes = bench.bytes();
    bytes[frame.at + 150] ^= 1;
    write_file(bench.path(), bytes);
    auto opened = bench.open();
    REQUIRE_FALSE(opened);
    CHECK(opened.error().kind == ProblemKind::damaged);
    const auto& sentence = opened.error().sentence;
    const auto name = garage.index().name_of(garage.index().chain_of(garage.index().frames()[0]));
    CHECK(sentence.find("frame 2, behind the entry " + name + "-1, at byte " + std::to_string(frame.at) + ",") !=
          std::string::npos);
    CHECK(sentence.find("does not match its seal") != std::string::npos);
    CHECK(sentence.find("by its heading the entries") != std::string::npos);
    CHECK(bench.bytes() == bytes);
}

TEST_CASE("Damage that appears while the file is open refuses the next entry", "[garage-file]") {
    Bench bench;
    auto garage = make_example(bench);
    auto bytes = bench.bytes();
    put_bytes(bytes, Bytes(40, 0x55));
    write_file(bench.path(), bytes);
    const auto appended = garage.append({{subject_of(1), fuel_record(5)}});
    REQUIRE_FALSE(appended);
    CHECK(appended.error().kind == ProblemKind::damaged);
    CHECK(bench.bytes() == bytes);
}

TEST_CASE("A later format is refused and left untouched", "[garage-file]") {
    Bench bench;
    auto garage = make_example(bench);
    auto bytes = bench.bytes();
    bytes[8] = 2;
    const auto check = sha256({ByteView(bytes).first(32)});
    std::copy_n(check.begin(), 8, bytes.begin() + 32);
    write_file(bench.path(), bytes);
    const auto opened = bench.open();
    REQUIRE_FALSE(opened);
    CHECK(opened.error().kind == ProblemKind::newer_format);
    CHECK(bench.bytes() == bytes);
}

TEST_CASE("A file that another program holds is told so", "[garage-file]") {
    Bench bench;
    auto garage = make_example(bench);
    const auto before = bench.bytes();
    const auto lock = FileLock::take(bench.files, bench.path(), LockKind::exclusive, {0});
    REQUIRE(lock);
    CHECK(bench.open().error().kind == ProblemKind::locked);
    CHECK(garage.append({{subject_of(1), fuel_record(5)}}).error().kind == ProblemKind::locked);
    CHECK(garage.append({{subject_of(1), fuel_record(5)}}).error().sentence.find("process") !=
          std::string::npos);
    CHECK(garage.refresh().error().kind == ProblemKind::locked);
    CHECK(bench.bytes() == before);
}

TEST_CASE("A file that was replaced meanwhile is read anew", "[garage-file]") {
    Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    const auto start = bench.bytes();
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
    write_file(bench.folder.file("older"), start);
    REQUIRE(bench.files.rename(bench.folder.file("older"), bench.path()));
    const auto ids = garage->append({{subject_of(1), fuel_record(2)}});
    REQUIRE(ids);
    CHECK(garage->records().size() == 2);
    CHECK(bench.open()->records().size() == 2);
    REQUIRE_FALSE(garage->notices().empty());
    CHECK(garage->notices().back().find("older copy") != std::string::npos);
}

TEST_CASE("A copied installation begins a new chain instead of forking", "[garage-file]") {
    Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
    const auto copy = bench.folder.file("copy.sumpbook");
    write_file(copy, bench.bytes());
    REQUIRE(garage->append({{subject_of(1), fuel_record(2)}}));
    auto other = GarageFile::open(bench.around(), copy);
    REQUIRE(other);
    REQUIRE(other->append({{subject_of(1), fuel_record(3)}}));
    CHECK(other->notices().size() == 1);
    REQUIRE(other->append({{subject_of(1), fuel_record(4)}}));
    CHECK(other->notices().size() == 1); // once only
    CHECK(other->index().chains().size() == 3);
    REQUIRE(garage->append({{subject_of(1), fuel_record(5)}}));
    CHECK(garage->index().chains().size() == 2); // goes on in its own
    CHECK(garage->notices().empty());
}

TEST_CASE("Entries in this installation's name that another copy wrote are a finding", "[garage-file]") {
    Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
    const auto state = bench.folder.file("state") + "/" + hex_text(garage->subject().bytes) + ".chains";
    const auto noted = bytes_of_file(state);
    REQUIRE(garage->append({{subject_of(1), fuel_record(2)}}));
    write_file(state, noted);
    CHECK(finding_ids(*garage) == std::set<std::string>{"not-written-here"});
}

TEST_CASE("Without a state folder entries are saved all the same", "[garage-file]") {
    Bench bench;
    write_file(bench.folder.file("state"), Bytes{1}); // a file where the folder should be
    auto garage = bench.create();
    REQUIRE(garage);
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
    REQUIRE_FALSE(garage->notices().empty());
    CHECK(garage->notices().back().find("Your entries are not affected") != std::string::npos);
    CHECK(bench.open()->records().size() == 2);
}

TEST_CASE("A failed sync is never trusted again", "[garage-file]") {
    Bench bench;
    FailingFiles failing({.fail_at = 1, .only = "sync"});
    auto garage = example_on(bench, failing);
    const auto lost = garage.append({{subject_of(1), fuel_record(7)}});
    REQUIRE_FALSE(lost);
    CHECK(lost.error().kind == ProblemKind::io);
    CHECK(lost.error().sentence.find("NOT saved") != std::string::npos);
    CHECK_FALSE(garage.append({{subject_of(1), fuel_record(7)}})); // a second try might be believed
    auto another = bench.open();
    REQUIRE(another);
    const auto refused = another->append({{subject_of(1), fuel_record(8)}});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().kind == ProblemKind::io);

    SECTION("until the machine was restarted") {
        bench.files.boot = "next-start";
        CHECK(another->append({{subject_of(1), fuel_record(8)}}));
        bench.files.boot = "this-start";
        CHECK(another->append({{subject_of(1), fuel_record(9)}}));
    }
    SECTION("or the file was replaced by a copy") {
        write_file(bench.folder.file("copy"), bench.bytes());
        REQUIRE(bench.files.rename(bench.folder.file("copy"), bench.path()));
        CHECK(another->append({{subject_of(1), fuel_record(8)}}));
    }
    SECTION("not while nobody knows whether it was restarted") {
        bench.files.boot.clear();
        CHECK_FALSE(another->append({{subject_of(1), fuel_record(8)}}));
    }
}

TEST_CASE("What could not be saved is kept in memory, and can be saved in another place", "[garage-file]") {
    Bench bench;
    FailingFiles failing({.fail_at = 1, .only = "sync"});
    auto garage = example_on(bench, failing);
    CHECK_FALSE(garage.has_unsaved());
    CHECK(garage.save_elsewhere(bench.folder.file("early")).error().kind == ProblemKind::refused);
    const auto before = bench.open()->records().size();
    REQUIRE_FALSE(garage.append({{subject_of(1), fuel_record(7)}}));
    REQUIRE(garage.has_unsaved());
    const auto old_state = bench.bytes();

    const auto other = bench.folder.file("other.sumpbook");
    REQUIRE(garage.save_elsewhere(other));
    CHECK(bench.bytes() == old_state);
    const auto saved = GarageFile::open(bench.around(bench.files), other, ScanDepth::everything);
    REQUIRE(saved);
    REQUIRE(saved->records().size() == before + 1);
    CHECK(saved->records().back().record == fuel_record(7));
    CHECK(saved->attachments().size() == 1);
    CHECK(garage.save_elsewhere(other).error().kind == ProblemKind::refused); // it stands there already
    CHECK_FALSE(garage.save_elsewhere(bench.folder.file("nowhere/other")));
}

TEST_CASE("Whether the file is as it was seen is known without reading it", "[garage-file]") {
    Bench bench;
    make_example(bench);
    auto reader = bench.open();
    REQUIRE(reader);
    CHECK(reader->is_as_seen());
    REQUIRE(bench.open()->append({{subject_of(1), fuel_record(7)}}));
    CHECK_FALSE(reader->is_as_seen());
    CHECK(reader->refresh().value());
    CHECK(reader->is_as_seen());
    write_file(bench.folder.file("copy"), bench.bytes());
    REQUIRE(bench.files.rename(bench.folder.file("copy"), bench.path())); // another file, of the same length
    CHECK_FALSE(reader->is_as_seen());
    REQUIRE(bench.files.remove(bench.path()));
    CHECK_FALSE(reader->is_as_seen());
}

TEST_CASE("An attachment comes back as it was, and only if it is", "[garage-file]") {
    Bench bench;
    const auto garage = make_example(bench);
    const auto& entry = std::get<Entry>(garage.records()[4].record.content);
    REQUIRE(entry.attachments.size() == 1);
    const auto hash = entry.attachments[0].part_hash;
    CHECK(garage.attachment(hash).value() == Bytes{'p', 'a', 'p', 'e', 'r'});
    CHECK(garage.attachment(Hash256{}).error().kind == ProblemKind::refused);
    auto bytes = bench.bytes();
    const std::string_view text = "paper";
    const auto content =
        std::ranges::search(bytes, as_bytes(text)); // the content stands in front of its name
    REQUIRE_FALSE(content.empty());
    *content.begin() ^= 1;
    write_file(bench.path(), bytes);
    const auto opened = bench.open();
    REQUIRE(opened); // not in the last action, so not read on opening
    CHECK(opened->attachment(hash).error().kind == ProblemKind::damaged);
    CHECK(bench.open(ScanDepth::everything).error().kind == ProblemKind::damaged);
}

TEST_CASE("A fingerprint is saved once for one state and verifies later", "[garage-file]") {
    Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
    const auto first = garage->take_fingerprint({1'800'000'000});
    REQUIRE(first);
    const auto size = bench.bytes().size();
    CHECK(garage->take_fingerprint({1'900'000'000}) == first);
    CHECK(bench.bytes().size() == size);
    CHECK(first->entries == 2);
    REQUIRE(garage->append({{subject_of(1), fuel_record(2)}}));
    const auto opened = bench.open();
    REQUIRE(opened);
    const auto typed = TypedFingerprint::read(fingerprint_text(first->fingerprint()));
    REQUIRE(typed);
    const auto check = opened->check(*typed);
    CHECK(check.answer == FingerprintAnswer::unchanged);
    CHECK(check.covered_entries == 2);
    CHECK(check.recorded_earlier == 1); // by its own clock
    CHECK(garage->take_fingerprint({1'900'000'000})->fingerprint() != first->fingerprint());
}

TEST_CASE("The answer of an authority is kept beside its fingerprint, once", "[garage-file]") {
    Bench bench;
    auto garage = make_example(bench);
    const auto first = garage.fingerprints().front();
    const auto kept = garage.keep_time_stamp(first.fingerprint(), {1, 2, 3});
    REQUIRE(kept);
    CHECK(kept->fingerprint() == first.fingerprint());
    CHECK(kept->printed == first.printed);
    const auto size = bench.bytes().size();
    CHECK(garage.keep_time_stamp(first.fingerprint(), {1, 2, 3}));
    CHECK(bench.bytes().size() == size);
    CHECK(garage.keep_time_stamp(first.fingerprint(), {4}));

    const auto opened = bench.open(ScanDepth::everything);
    REQUIRE(opened);
    REQUIRE(opened->fingerprints().size() == 3);
    CHECK(opened->fingerprints()[0] == first);
    CHECK(opened->fingerprints()[1].time_stamp == Bytes{1, 2, 3});
    CHECK(opened->fingerprints()[2].time_stamp == Bytes{4});
    CHECK(opened->check(TypedFingerprint::of(first.fingerprint())).answer == FingerprintAnswer::unchanged);

    const auto strange = garage.keep_time_stamp(Hash256{}, {1});
    REQUIRE_FALSE(strange);
    CHECK(strange.error().sentence.find("never printed of this garage") != std::string::npos);
    CHECK_FALSE(garage.keep_time_stamp(first.fingerprint(), Bytes(max_list_elements + 1)));
}

TEST_CASE("A fingerprint is not printed of a damaged file", "[garage-file]") {
    Bench bench;
    auto garage = make_example(bench);
    auto bytes = bench.bytes();
    bytes[200] ^= 1; // in front of what an append would read
    write_file(bench.path(), bytes);
    const auto print = garage.take_fingerprint({1'800'000'000});
    REQUIRE_FALSE(print);
    CHECK(print.error().kind == ProblemKind::damaged);
}

TEST_CASE("A file that is not there or is none", "[garage-file]") {
    Bench bench;
    CHECK(bench.open().error().kind == ProblemKind::io);
    CHECK(bench.folder.files() == 0); // not even a lock file
    write_file(bench.path(), {});
    CHECK(bench.open().error().kind == ProblemKind::damaged);
    write_file(bench.path(), Bytes(1000, 'x'));
    CHECK(bench.open().error().sentence.find("not a garage file") != std::string::npos);
}

TEST_CASE("Promise 7: a file has one lock, also under the name of a link to it", "[garage-file]") {
    Bench bench;
    make_example(bench);
    const auto link = bench.folder.file("link.sumpbook");
    std::filesystem::create_symlink("example.sumpbook", link);
    auto by_link = GarageFile::open(bench.around(), link);
    auto by_name = bench.open();
    REQUIRE((by_link && by_name));
    {
        const auto lock = FileLock::take(bench.files, bench.path(), LockKind::exclusive, {0});
        REQUIRE(lock);
        const auto kept_out = [](const auto& result) {
            return !result && result.error().kind == ProblemKind::locked;
        };
        CHECK(kept_out(GarageFile::open(bench.around(), link)));
        CHECK(kept_out(read_copy(bench.files, link, {0})));
        CHECK(kept_out(by_link->refresh()));
        CHECK(kept_out(by_link->append({{subject_of(1), fuel_record(5)}})));
    }
    REQUIRE(by_link->append({{subject_of(1), fuel_record(5)}}));
    REQUIRE(by_name->append({{subject_of(1), fuel_record(6)}}));
    REQUIRE(by_link->erase(by_name->records().back().name, "names somebody", {1'800'000'000}));
    CHECK(std::filesystem::is_symlink(link));
    CHECK_FALSE(std::filesystem::exists(link + ".lock"));
    CHECK(bench.open()->records().size() == by_link->records().size());
    CHECK(by_link->records().size() == 8); // six, an entry, the withdrawal of the other
    std::filesystem::remove(bench.path());
    const auto nowhere = GarageFile::open(bench.around(), link);
    REQUIRE_FALSE(nowhere);
    CHECK(nowhere.error().sentence.find("no such file") != std::string::npos);
}

TEST_CASE("A reader that waits for the lock reads the file that stands there then", "[garage-file]") {
    const MemoryDisk before = example_disk();
    MemoryDisk later(before);
    SeededRandom random("later");
    REQUIRE(GarageFile::open(surroundings(later, random), garage_path)
                ->append({{subject_of(1), fuel_record(9)}}));
    const auto newer = later.bytes(garage_path);
    const auto at_the_lock = [](const FileOperation& operation) {
        return operation.name == "lock" && operation.path == garage_path + ".lock";
    };
    {
        MemoryDisk disk(before);
        MeddlingFiles files(disk, at_the_lock, [&] { disk.put(garage_path, newer); });
        const auto garage = GarageFile::open(surroundings(files, random), garage_path);
        REQUIRE(garage);
        CHECK(files.done());
        CHECK(garage->records().size() == 7);
        CHECK(garage->bytes() == newer.size());
    }
    {
        MemoryDisk disk(before);
        int locks = 0; // the first one is that of opening
        MeddlingFiles files(
            disk, [&](const auto& operation) { return at_the_lock(operation) && ++locks == 2; },
            [&] { disk.put(garage_path, newer); });
        auto garage = GarageFile::open(surroundings(files, random), garage_path);
        REQUIRE(garage);
        CHECK(garage->records().size() == 6);
        CHECK(garage->refresh().value());
        CHECK(garage->records().size() == 7);
    }
    MemoryDisk disk(before);
    MeddlingFiles files(disk, at_the_lock, [&] { disk.put(garage_path, newer); });
    const auto copy = read_copy(files, garage_path, {0});
    REQUIRE(copy);
    CHECK(copy->bytes == newer.size());
}

TEST_CASE("Attachments are not looked for in another file than the one that was read", "[garage-file]") {
    Bench bench;
    auto other = make_example(bench);
    auto garage = bench.open();
    REQUIRE(garage);
    const auto hash = garage->attachments().at(0).hash;
    const auto first = std::ranges::find_if(garage->records(), [](const NamedRecord& record) {
        return std::holds_alternative<Entry>(record.record.content);
    });
    REQUIRE(first - garage->records().begin() < 4); // in front of the attachment
    REQUIRE(other.erase(first->name, "names somebody", {1'800'000'000}));
    const auto moved = garage->attachment(hash);
    REQUIRE_FALSE(moved);
    CHECK(moved.error().kind == ProblemKind::io);
    CHECK(moved.error().sentence.find("took the place") != std::string::npos);
    const auto damaged = garage->damaged_attachments();
    REQUIRE_FALSE(damaged);
    CHECK(damaged.error().kind == ProblemKind::io);
    CHECK(garage->refresh().value());
    CHECK(garage->attachment(hash).value() == Bytes{'p', 'a', 'p', 'e', 'r'});
    CHECK(garage->damaged_attachments().value().empty());
    const auto lock = FileLock::take(bench.files, bench.path(), LockKind::exclusive, {0});
    REQUIRE(lock);
    const auto locked = garage->attachment(hash);
    REQUIRE_FALSE(locked);
    CHECK(locked.error().kind == ProblemKind::locked);
}

TEST_CASE("Another file of the same number is told by its end and read anew", "[garage-file]") {
    Bench bench;
    auto garage = bench.create();
    REQUIRE(garage);
    const auto start = bench.bytes();
    REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
    const auto length = bench.bytes().size();
    const auto identity = bench.files.identity(bench.path()).value();
    // What another installation made of the same beginning: its first save is as long as the one known here.
    write_file(bench.path(), start);
    auto other = GarageFile::open({bench.files, bench.random, bench.folder.file("other"), {0}}, bench.path());
    REQUIRE(other);
    REQUIRE(other->append({{subject_of(1), fuel_record(2)}}));
    REQUIRE(bench.bytes().size() == length);
    REQUIRE(bench.files.identity(bench.path()).value() == identity);
    const auto times = [&] {
        std::vector<RecordedTime> all;
        for (const auto& record : garage->records())
            all.push_back(record.record.recorded);
        return all;
    };
    CHECK(garage->refresh().value());
    CHECK(times().back() == fuel_record(2).recorded);
    REQUIRE(other->append({{subject_of(1), fuel_record(3)}}));
    write_file(bench.path(), start);
    REQUIRE(other->append({{subject_of(1), fuel_record(4)}}));
    REQUIRE(other->append({{subject_of(1), fuel_record(5)}}));
    CHECK(garage->refresh().value());
    REQUIRE(garage->records().size() == 3);
    CHECK(times()[1] == fuel_record(4).recorded);
    CHECK(times()[2] == fuel_record(5).recorded);
}

TEST_CASE("Where folders cannot be synced, everything works all the same", "[garage-file]") {
    Bench bench;
    FailingFiles files({.fail_at = 1,
                        .from_then_on = true,
                        .fault = IoFault::not_supported,
                        .code = 22,
                        .only = "sync folder"});
    REQUIRE(GarageFile::create(bench.around(files), bench.path(), full_settings(), {1'700'000'000}));
    {
        auto garage = GarageFile::open(bench.around(files), bench.path());
        REQUIRE(garage);
        REQUIRE(garage->append({{subject_of(1), fuel_record(1)}}));
        REQUIRE(garage->append({{subject_of(1), fuel_record(2)}}));
    }
    cut(bench, 10);
    auto garage = GarageFile::open(bench.around(files), bench.path());
    REQUIRE(garage);
    REQUIRE(garage->append({{subject_of(1), fuel_record(3)}})); // sets the torn end aside
    REQUIRE(garage->erase(garage->records().back().name, "names somebody", {1'800'000'000}));
    CHECK(files.failures() >= 4);
    CHECK(bench.open(ScanDepth::everything)->records().size() == 3);
}
