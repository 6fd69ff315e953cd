// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/action.h"
#include "model/store/archive.h"
#include "model/store/bodies.h"
#include "model/store/merge.h"
#include "model/store/recover.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

#include <malloc.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <iostream>
#include <random>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

constexpr std::size_t mebibyte = 1024 * 1024;

Bytes file_of(const std::vector<Bytes>& actions) {
    Bytes bytes = encode_file_header(subject_of(1));
    for (const auto& action : actions)
        put_bytes(bytes, action);
    return bytes;
}

Bytes frame_of(const std::array<Bytes, 3>& parts, std::uint32_t count, std::uint32_t chain) {
    Frame frame;
    frame.header.entry_count = count;
    frame.header.subject = subject_of(1);
    std::copy_n(reinterpret_cast<const std::uint8_t*>(&chain), 4, frame.header.chain.bytes.begin()); // NOLINT
    for (std::size_t slot = 0; slot < 3; ++slot) {
        if (slot > 0 && parts[slot].empty()) continue;
        frame.header.parts_exist |= bit_of(slot);
        frame.parts[slot] = shown_part(slot, {}, parts[slot]);
    }
    return encode_frame(frame);
}

/// As many records as fit into one frame.
Bytes full_frame(const Record& record, std::uint32_t chain) {
    const auto one = encode_records({record}).value().front();
    std::array<Bytes, 3> parts;
    std::uint32_t count = 0;
    while (parts[0].size() + one.parts[0].size() <= max_part_bytes) {
        for (std::size_t slot = 0; slot < 3; ++slot)
            put_bytes(parts[slot], one.parts[slot]);
        ++count;
    }
    return frame_of(parts, count, chain);
}

/// Peak memory in bytes of a process of its own that does `work`, which says whether it went well.
template <class Work>
std::size_t peak_memory(Work work) {
    malloc_trim(0); // memory that was given back here must not hide what the child takes
    const pid_t child = fork();
    if (child == 0) _exit(work() ? 0 : 1);
    int status = 0;
    rusage usage{};
    if (wait4(child, &status, 0, &usage) != child || !WIFEXITED(status) || WEXITSTATUS(status) != 0) return 0;
    return static_cast<std::size_t>(usage.ru_maxrss) * 1024;
}

/// Opens the file, makes all its records and judges what it said.
template <class Judge>
std::size_t memory_of_opening(const std::string& path, unsigned threads, Judge judge) {
    return peak_memory([&] {
        PosixFileLayer files;
        SeededRandom random("child");
        const auto opened =
            GarageFile::open({files, random, "/nowhere", Patience{0}, threads}, path, ScanDepth::everything);
        return judge(opened) && (!opened || opened->records().size() == opened->entries());
    });
}

/// What is said is a plan or a sentence.
template <class Plan>
bool answered(const Result<Plan>& plan) {
    return plan || !plan.error().sentence.empty();
}

std::size_t memory_of_recovering(const std::string& path) {
    return peak_memory([&] {
        PosixFileLayer files;
        SeededRandom random("child");
        return answered(plan_recovery(files, random, path, Patience{0}));
    });
}

/// With itself: two files to read, of which one brings nothing.
std::size_t memory_of_merging(const std::string& path) {
    return peak_memory([&] {
        PosixFileLayer files;
        return answered(plan_merge(files, {path, path}, Patience{0}));
    });
}

/// `took`: 0 where it crashed or said something else than it may.
void check_bound(const std::string& what, std::size_t file, std::size_t took, std::size_t nothing) {
    const std::size_t allowed = 64 * file + 64 * mebibyte;
    INFO(what);
    CHECK(took > nothing);
    std::cout << "hostile file of " << file << " bytes, " << what << ": " << (took - nothing) / 1024
              << " KiB of " << allowed / 1024 << " allowed\n";
#ifndef __SANITIZE_ADDRESS__ // which takes memory of its own
    CHECK(took - nothing <= allowed);
#endif
}

template <class Judge>
void check_memory(const TempFolder& folder, const Bytes& bytes, Judge judge) {
    const auto path = folder.file("hostile");
    write_file(path, bytes);
    const auto nothing = peak_memory([] { return true; }); // what a child has from this process
    REQUIRE(nothing > 0);
    for (const unsigned threads : {1U, 4U})
        check_bound("opened with " + std::to_string(threads) + " thread(s)", bytes.size(),
                    memory_of_opening(path, threads, judge), nothing);
    check_bound("recovered", bytes.size(), memory_of_recovering(path), nothing);
    check_bound("merged", bytes.size(), memory_of_merging(path), nothing);
}

void check_memory(const TempFolder& folder, const Bytes& bytes) {
    check_memory(folder, bytes, [](const Result<GarageFile>& opened) {
        return opened || opened.error().kind == ProblemKind::refused;
    });
}

} // namespace

TEST_CASE("Promise 4: no file takes more memory than 64 times its size and 64 MB", "[hostile]") {
    const TempFolder folder;
    Entry empty;
    empty.date = day(1970, 1, 1);
    empty.body = Note{};
    SECTION("entries as short as they can be") {
        std::vector<Bytes> actions;
        for (std::uint32_t chain = 0; chain < 8; ++chain)
            actions.push_back(encode_action({full_frame({{}, {}, DataCardValue{}}, chain)}));
        check_memory(folder, file_of(actions));
    }
    SECTION("short entries of the largest kind") {
        std::vector<Bytes> actions;
        for (std::uint32_t chain = 0; chain < 8; ++chain)
            actions.push_back(encode_action({full_frame({{}, {}, empty}, chain)}));
        check_memory(folder, file_of(actions));
    }
    SECTION("the shortest entries of a use that a file of their size may hold") {
        empty.odometer = WrittenDistance{Decimal(1), DistanceUnit::km};
        empty.body = Reading{};
        std::vector<Bytes> actions;
        for (std::uint32_t chain = 0; chain < 20; ++chain)
            actions.push_back(encode_action({full_frame({{}, {}, empty}, chain)}));
        check_memory(folder, file_of(actions));
        PosixFileLayer files;
        SeededRandom random("reader");
        const auto opened =
            GarageFile::open({files, random, "/nowhere", Patience{0}}, folder.file("hostile"));
        REQUIRE(opened);
        CHECK(opened->records().size() > 500'000);
    }
    SECTION("lists of empty texts") {
        empty.does = std::vector<std::string>(max_list_elements);
        std::vector<Bytes> actions;
        for (std::uint32_t chain = 0; chain < 8; ++chain)
            actions.push_back(encode_action({full_frame({{}, {}, empty}, chain)}));
        check_memory(folder, file_of(actions));
    }
    SECTION("one frame a chain") {
        std::vector<Bytes> actions;
        const auto one = encode_records({Record{{}, {}, DataCardValue{}}}).value().front();
        for (std::uint32_t chain = 0; chain < 20'000; ++chain)
            actions.push_back(encode_action({frame_of(one.parts, 1, chain)}));
        check_memory(folder, file_of(actions));
    }
    SECTION("leaves of a fingerprint") {
        FingerprintRecord record;
        for (std::uint32_t i = 0; i < 60'000; ++i) {
            Hash256 leaf{};
            for (std::size_t byte = 0; byte < 4; ++byte)
                leaf[byte] = static_cast<std::uint8_t>(i >> (24 - 8 * byte));
            record.leaves.push_back({leaf, {}, {}});
        }
        check_memory(folder, file_of({encode_fingerprint_action(encode_fingerprint_record(record))}));
    }
}

TEST_CASE("A file that claims to be far larger than it is takes no memory for what it claims", "[hostile]") {
    const TempFolder folder;
    // Refused or damaged, or its only action is cut short and left out; never more memory than its bytes
    // earn.
    const auto any_sentence = [](const Result<GarageFile>& opened) {
        return opened || opened.error().kind == ProblemKind::refused ||
               opened.error().kind == ProblemKind::damaged;
    };
    const auto claims = [](std::uint32_t action, std::uint32_t frame, std::uint32_t entries,
                           std::uint32_t body) {
        auto bytes = encode_action({frame_of({Bytes(16, 1), {}, {}}, 1, 0)});
        const auto put = [&](std::size_t at, std::uint32_t number) {
            Bytes four;
            put_number(four, number);
            if (number > 0) std::ranges::copy(four, bytes.begin() + static_cast<std::ptrdiff_t>(at));
        };
        put(4, action);
        put(action_header_bytes, frame);
        put(action_header_bytes + frame_unhashed_bytes + 4, entries);
        put(action_header_bytes + frame_unhashed_bytes + frame_header_bytes, body);
        return bytes;
    };
    constexpr std::uint32_t huge = 1'500'000'000;
    SECTION("51 bytes: 11 bytes of an action of 1.5 billion") {
        auto bytes = file_of({claims(huge, 0, 0, 0)});
        bytes.resize(51);
        check_memory(folder, bytes, any_sentence);
    }
    SECTION("52 bytes: all of its header, and at the longest that an action may be") {
        auto bytes = file_of({claims(max_action_bytes, huge, 0, 0)});
        bytes.resize(52);
        check_memory(folder, bytes, any_sentence);
    }
    SECTION("a frame of 1.5 billion bytes") {
        check_memory(folder, file_of({claims(huge, huge, 0, 0)}), any_sentence);
    }
    SECTION("a count of 20 million entries") {
        check_memory(folder, file_of({claims(0, 0, 20'000'000, 0)}), any_sentence);
    }
    SECTION("a body of 1.5 billion bytes") {
        check_memory(folder, file_of({claims(0, 0, 0, huge)}), any_sentence);
    }
    SECTION("a sealed frame of 131,072 entries in the least bytes that may hold them") {
        const Bytes body(max_part_bytes, 0);
        const auto count = static_cast<std::uint32_t>(max_part_bytes / min_entry_bytes);
        check_memory(folder, file_of({encode_action({frame_of({body, {}, {}}, count, 0)})}), any_sentence);
        check_memory(folder, file_of({encode_action({frame_of({body, {}, {}}, count + 1, 0)})}),
                     any_sentence);
        check_memory(folder, file_of({encode_action({frame_of({body, {}, {}}, 20'000'000, 0)})}),
                     any_sentence);
    }
}

TEST_CASE("Parts of a mebibyte: one under, at, one over", "[hostile]") {
    // A frame with a part that is one over cannot be read, so nothing in it is looked at.
    const auto said = [](std::size_t size) {
        Bench bench;
        write_file(bench.path(), file_of({encode_action({frame_of({Bytes(size, 0), {}, {}}, 1, 0)})}));
        return bench.open().error().sentence;
    };
    CHECK(said(max_part_bytes - 1).find("what no version writes") != std::string::npos);
    CHECK(said(max_part_bytes).find("what no version writes") != std::string::npos);
    CHECK(said(max_part_bytes + 1).find("a length that cannot be") != std::string::npos);
}

TEST_CASE("Counts and lengths larger than the file are refused at once", "[hostile]") {
    Bench bench;
    make_example(bench);
    const auto good = bench.bytes();
    // Every four bytes of the file once as the largest number.
    std::size_t accepted = 0;
    for (std::size_t at = 0; at + 4 <= good.size(); ++at) {
        auto bad = good;
        std::fill_n(bad.begin() + static_cast<std::ptrdiff_t>(at), 4, std::uint8_t{0xFF});
        write_file(bench.path(), bad);
        if (bad != good && bench.open(ScanDepth::everything)) ++accepted;
    }
    CHECK(accepted == 0);
}

TEST_CASE("A sealed frame whose body lies about its counts is refused", "[hostile]") {
    Bench bench;
    const auto one = encode_records({fuel_record(1)}).value().front();
    std::size_t wrong = 0;
    for (std::size_t slot = 0; slot < 3; ++slot) {
        for (std::size_t at = 0; at < one.parts[slot].size(); ++at) {
            auto parts = one.parts;
            parts[slot].resize(at);
            parts[slot].insert(parts[slot].end(), {0xFF, 0xFF, 0xFF, 0x7F});
            write_file(bench.path(), file_of({encode_action({frame_of(parts, 1, 0)})}));
            const auto opened = bench.open();
            if (opened || opened.error().kind != ProblemKind::damaged) ++wrong;
        }
    }
    CHECK(wrong == 0);
}

TEST_CASE("Promise 4: bytes made up of things that look like actions end in a sentence", "[hostile]") {
    Bench bench;
    std::mt19937 random(4711);
    const auto header = encode_action({frame_of({Bytes(16, 1), {}, {}}, 1, 0)});
    Bytes bytes = encode_file_header(subject_of(1));
    // A million bytes of beginnings of actions, each claiming all the rest.
    while (bytes.size() < mebibyte) {
        put_bytes(bytes, ByteView(header).first(4));
        put_number(bytes, static_cast<std::uint32_t>(mebibyte + 500));
        put_bytes(bytes, ByteView(header).subspan(8, 4 + random() % 100));
    }
    write_file(bench.path(), bytes);
    const auto opened = bench.open();
    CHECK((opened || opened.error().kind == ProblemKind::damaged));
    CHECK(bench.bytes() == bytes);
}

TEST_CASE("Frames nested in each other do not make the search run for ever", "[hostile]") {
    // Inside one damaged frame, at every 100 bytes, another that reaches to the same end: hashing all of them
    // would take the square of the size. The search gives up in time and cuts nothing.
    Bench bench;
    Bytes body(max_part_bytes, 0);
    const std::size_t stride = 128;
    for (std::size_t at = 0; at + 2 * stride < body.size(); at += stride) {
        const std::size_t left = body.size() - at;
        Bytes nested{0xA7, 'a', 'c', 't'};
        put_number(nested, static_cast<std::uint32_t>(left));
        put_bytes(nested, Bytes{1, 0, 0, 0});
        put_number(nested, static_cast<std::uint32_t>(left - 12));
        put_bytes(nested, Bytes{1, 0, 0, 0, 1, 1, 1, 0, 1, 0, 0, 0});
        nested.resize(12 + 84, 0);
        put_number(nested, static_cast<std::uint32_t>(left - 12 - 84 - 16 - 20));
        std::copy(nested.begin(), nested.end(), body.begin() + static_cast<std::ptrdiff_t>(at));
    }
    auto action = encode_action({frame_of({body, {}, {}}, 1, 0)});
    action.back() ^= 1;
    write_file(bench.path(), file_of({action}));
    const auto opened = bench.open();
    REQUIRE_FALSE(opened);
    CHECK(opened.error().kind == ProblemKind::damaged);
    check_memory(bench.folder, bench.bytes(), [](const Result<GarageFile>& again) {
        return !again && again.error().kind == ProblemKind::damaged;
    });
}
