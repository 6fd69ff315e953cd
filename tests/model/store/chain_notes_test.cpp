// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/chain_notes.h"

#include "model/store/posix_file_layer.h"
#include "tests/catch.h"
#include "tests/model/store/example_records.h"
#include "tests/model/store/memory_disk.h"
#include "tests/model/store/temp_folder.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

ChainId chain_of(std::uint8_t number) {
    ChainId chain;
    chain.bytes.fill(number);
    return chain;
}

ChainEnd end_of(std::uint32_t sequence, std::uint8_t hash) {
    ChainEnd end{.sequence = sequence, .hash = {}};
    end.hash.fill(hash);
    return end;
}

ChainNote note(std::optional<ChainEnd> written, std::optional<ChainEnd> about = {}) {
    return {.chain = chain_of(1), .subject = subject_of(5), .written = written, .about_to_write = about};
}

/// Chain 1 about subject 5 with frames of hash 1, 2, ... `count`.
ChainIndex index_of(std::uint8_t count) {
    ChainIndex index;
    for (std::uint8_t i = 0; i < count; ++i) {
        FrameHeader header;
        IndexedFrame frame;
        header.subject = subject_of(5);
        header.chain = chain_of(1);
        header.sequence = i;
        header.entry_count = 1;
        header.previous.fill(i);
        frame.hash.fill(static_cast<std::uint8_t>(i + 1));
        REQUIRE(index.add(header, frame) == nullptr);
    }
    return index;
}

} // namespace

TEST_CASE("Notes read back from their text", "[notes]") {
    const std::vector<ChainNote> notes{note(end_of(4, 9)), note({}, end_of(0, 8)),
                                       note(end_of(4, 9), end_of(7, 1))};
    CHECK(read_chain_notes(text_of(notes)) == notes);
    const auto one = text_of(std::vector{note(end_of(4, 9))});
    CHECK(one.starts_with("chain " + std::string("01010101010101010101010101010101") +
                          " subject 05050505050505050505050505050505 written          4 " +
                          hex_text(end_of(4, 9).hash) + " about          - "));
    CHECK(text_of(notes).size() == 3 * one.size()); // so that writing in place moves no other line
}

TEST_CASE("Lines that are no notes are passed over", "[notes]") {
    const auto good = text_of(std::vector{note(end_of(4, 9))});
    for (const auto& bad :
         {std::string("chain 01"), std::string("nonsense"), good.substr(0, 90), std::string("\xFF\0\n", 3)}) {
        CHECK(read_chain_notes(bad + "\n" + good).size() == 1);
        CHECK(read_chain_notes(bad).empty());
    }
    CHECK(read_chain_notes("").empty());
}

TEST_CASE("A line that was written over in part only is passed over", "[notes]") {
    const auto before = text_of(std::vector{note(end_of(4, 9), end_of(5, 8))});
    const auto after = text_of(std::vector{note(end_of(5, 8))});
    for (std::size_t length = 1; length < before.size(); ++length) {
        const auto mixed = after.substr(0, length) + before.substr(length);
        if (mixed != before && mixed != after) CHECK(read_chain_notes(mixed).empty());
    }
}

TEST_CASE("Notes are kept in a file of the state folder", "[notes]") {
    const TempFolder folder;
    PosixFileLayer files;
    const auto path = chain_notes_path(folder.file("state"), subject_of(0xAB));
    CHECK(path == folder.file("state") + "/abababababababababababababababab.chains");
    CHECK(load_chain_notes(files, path).value().empty());
    REQUIRE(files.make_folders(folder.file("state")));
    const auto file = open_file(files, path, OpenMode::read_write_or_create);
    REQUIRE(file);
    CHECK(load_chain_notes(*file).value().empty());
    REQUIRE(save_chain_notes(*file, {note(end_of(1, 1)), note(end_of(2, 2))}));
    REQUIRE(save_chain_notes(*file, {note(end_of(4, 9))}));
    CHECK(load_chain_notes(*file).value() == std::vector{note(end_of(4, 9))});
    CHECK(load_chain_notes(files, path).value() == std::vector{note(end_of(4, 9))});
}

TEST_CASE("Of notes that were read only the lines that differ are written", "[notes]") {
    const auto a = note(end_of(1, 1)), b = note(end_of(2, 2)), c = note({}, end_of(3, 3));
    MemoryDisk disk;
    REQUIRE(disk.make_folders("/state"));
    const auto file = open_file(disk, "/state/notes", OpenMode::read_write_or_create);
    REQUIRE(file);
    REQUIRE(save_changed_notes(*file, {}, {a, b}));
    CHECK(disk.bytes("/state/notes").size() == text_of(std::vector{a, b}).size());
    REQUIRE(save_changed_notes(*file, {a, b}, {a, c, b}));
    CHECK(load_chain_notes(*file).value() == std::vector{a, c, b});
    // What `before` says of the first line is believed: it is not written.
    REQUIRE(save_changed_notes(*file, {b, c, b}, {b, c, a}));
    CHECK(load_chain_notes(*file).value() == std::vector{a, c, a});
    // A file of another length has lines that could not be read.
    REQUIRE(save_changed_notes(*file, {b, c}, {b, c}));
    CHECK(load_chain_notes(*file).value() == std::vector{b, c});
}

TEST_CASE("The chain is continued where it ends as noted", "[notes]") {
    const auto index = index_of(3);
    for (const auto& as_noted : {note(end_of(2, 3)), note(end_of(1, 2), end_of(2, 3)),
                                 note(end_of(2, 3), end_of(4, 7)), note({}, end_of(2, 3))}) {
        const auto place = choose_chain({as_noted}, index, subject_of(5));
        CHECK_FALSE(place.is_new);
        CHECK(place.chain == chain_of(1));
        CHECK(place.sequence == 3);
        CHECK(place.previous == end_of(2, 3).hash);
        CHECK(place.reason.empty());
    }
}

TEST_CASE("Otherwise a new chain is begun, and the reason told", "[notes]") {
    const auto reason = [](const ChainNote& noted, const ChainIndex& index) {
        const auto place = choose_chain({noted}, index, subject_of(5));
        CHECK(place.is_new);
        CHECK(place.sequence == 0);
        return place.reason;
    };
    CHECK(reason(note(end_of(4, 5)), index_of(3)) ==
          "this file is an older copy, without the last entries written here");
    CHECK(reason(note(end_of(4, 5)), index_of(0)) ==
          "this file is an older copy, without entries that were written here");
    CHECK(reason(note(end_of(1, 2)), index_of(3)) ==
          "this file holds entries in this installation's name that it did not write");
    CHECK(reason(note(end_of(2, 9)), index_of(3)) ==
          "the last entry in this installation's name is not the one it wrote");
    auto forked = index_of(3);
    FrameHeader twin;
    twin.subject = subject_of(5);
    twin.chain = chain_of(1);
    twin.sequence = 2;
    twin.entry_count = 1;
    twin.previous.fill(2);
    IndexedFrame place;
    place.hash.fill(0x77);
    REQUIRE(forked.add(twin, place) == nullptr);
    CHECK(reason(note(end_of(2, 3)), forked) ==
          "copies of this installation continued the same entries in different ways");
}

TEST_CASE("Without a chain of its own an installation begins one and need not explain", "[notes]") {
    const auto place = choose_chain({}, index_of(3), subject_of(5));
    CHECK(place.is_new);
    CHECK(place.reason.empty());
    CHECK(choose_chain({note(end_of(2, 3))}, index_of(3), subject_of(6)).reason.empty());
    CHECK(choose_chain({note({}, end_of(0, 1))}, index_of(0), subject_of(5)).reason.empty()); // never begun
}

TEST_CASE("Two copies that are used in turn keep a chain each", "[notes]") {
    auto other = note(end_of(9, 9));
    other.chain = chain_of(2);
    CHECK(choose_chain({other, note(end_of(2, 3))}, index_of(3), subject_of(5)).reason.empty());
    CHECK_FALSE(choose_chain({note(end_of(2, 3)), other}, index_of(3), subject_of(5)).is_new);
}

TEST_CASE("Frames in this installation's name that it did not write are a finding", "[notes]") {
    const auto index = index_of(3);
    CHECK(chain_note_findings({note(end_of(2, 3))}, index).empty());
    CHECK(chain_note_findings({note(end_of(1, 2), end_of(2, 3))}, index).empty());
    CHECK(chain_note_findings({note(end_of(4, 5))}, index).empty());
    CHECK(chain_note_findings({note(end_of(2, 9))}, index).size() == 1); // another one in its place
    const auto findings = chain_note_findings({note(end_of(1, 2))}, index);
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].id == "not-written-here");
}
