// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/emptied_frames.h"

#include "model/store/action.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Bytes patched(Bench& bench, const EmptiedFrames& emptied, std::uint64_t size) {
    const auto from = open_file(bench.files, bench.path(), OpenMode::read);
    const auto to = open_file(bench.files, bench.folder.file("copy"), OpenMode::create_new);
    REQUIRE(from);
    REQUIRE(to);
    const auto written = copy_patched(*from, size, emptied.patches, *to);
    REQUIRE(written);
    auto bytes = bytes_of_file(bench.folder.file("copy"));
    CHECK(*written == bytes.size());
    return bytes;
}

EmptiedFrames empty_in(Bench& bench, const std::set<Hash256>& frames, const std::set<Hash256>& attachments) {
    const auto bytes = bench.bytes();
    Window window(ByteView(bytes), 0);
    return empty_frames(window, file_header_bytes, frames, attachments);
}

bool are_emptied_in(Bench& bench, const std::set<Hash256>& frames) {
    const auto bytes = bench.bytes();
    Window window(ByteView(bytes), 0);
    return are_emptied(window, file_header_bytes, frames);
}

} // namespace

TEST_CASE("Every frame of a file can be emptied alone, and every hash stays", "[emptied-frames]") {
    Bench counted;
    const auto frames = make_example(counted).index().frames();
    REQUIRE(frames.size() == 6);
    for (const auto& frame : frames) {
        Bench bench;
        const auto garage = make_example(bench);
        std::set<Hash256> attachments;
        if (frame.kind == FrameKind::attachment)
            attachments.insert(std::get<Entry>(garage.records()[4].record.content).attachments[0].part_hash);
        const auto emptied = empty_in(bench, {frame.hash}, attachments);
        CHECK(emptied.frames == std::set<Hash256>{frame.hash});
        CHECK(emptied.incomplete.empty());
        CHECK(emptied.complete);
        CHECK_FALSE(are_emptied_in(bench, {frame.hash}));
        CHECK(emptied.attachments == attachments.size());
        CHECK(emptied.patches.size() == 2); // the frame, and the length of its action
        const auto bytes = patched(bench, emptied, garage.bytes());
        CHECK(bytes.size() < bench.bytes().size());
        write_file(bench.path(), bytes);
        CHECK(are_emptied_in(bench, {frame.hash}));
        const auto opened = bench.open(ScanDepth::everything);
        REQUIRE(opened);
        REQUIRE(opened->index().frames().size() == frames.size());
        for (std::size_t i = 0; i < frames.size(); ++i)
            CHECK(opened->index().frames()[i].hash == frames[i].hash);
        CHECK(opened->records().size() == garage.records().size() - frame.entry_count);
        // Once more: there is nothing left to take out, and that is known of records.
        const auto again = empty_in(bench, {frame.hash}, attachments);
        CHECK(again.incomplete.size() == (frame.kind == FrameKind::records ? 1 : 0));
        for (const auto& patch : again.patches)
            CHECK(patch.length == patch.bytes.size());
    }
}

TEST_CASE("Nothing to take out leaves a file as it is", "[emptied-frames]") {
    Bench bench;
    const auto garage = make_example(bench);
    const auto emptied = empty_in(bench, {}, {});
    CHECK(emptied.patches.empty());
    CHECK(patched(bench, emptied, garage.bytes()) == bench.bytes());
}

TEST_CASE("A file that becomes shorter while it is copied is noticed", "[emptied-frames]") {
    Bench bench;
    const auto garage = make_example(bench);
    const auto from = open_file(bench.files, bench.path(), OpenMode::read);
    const auto to = open_file(bench.files, bench.folder.file("copy"), OpenMode::create_new);
    REQUIRE(from);
    REQUIRE(to);
    const auto written = copy_patched(*from, garage.bytes() + 1, {}, *to);
    REQUIRE_FALSE(written);
    CHECK(written.error().fault == IoFault::ended);
}

TEST_CASE("Frames that are not there, or not good any more, are not emptied", "[emptied-frames]") {
    Bench bench;
    const auto garage = make_example(bench);
    const auto hash = garage.index().frames()[1].hash;
    CHECK(empty_in(bench, {hash}, {}).complete);
    CHECK_FALSE(empty_in(bench, {hash, Hash256{}}, {}).complete);
    CHECK_FALSE(are_emptied_in(bench, {Hash256{}}));
    CHECK(are_emptied_in(bench, {}));
    auto bytes = bench.bytes();
    bytes[bytes.size() - 1] ^= 1; // of another frame
    write_file(bench.path(), bytes);
    CHECK_FALSE(empty_in(bench, {hash}, {}).complete);
    CHECK_FALSE(are_emptied_in(bench, {}));
}
