// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/salvage.h"

#include "tests/catch.h"
#include "tests/model/store/set_bench.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

struct Salvaging : SetBench {
    /// What is found in these bytes, as a file.
    Salvage found(const Bytes& bytes, std::uint64_t from = file_header_bytes) {
        disk.put("/broken", bytes);
        const FrameSource source{"/broken", open_file(disk, "/broken", OpenMode::read).value(), {}};
        Window window(ByteView(bytes), 0);
        return salvage(window, from, source);
    }
    /// Places of the frames in the file.
    std::vector<std::size_t> frames(const std::string& path) {
        std::vector<std::size_t> places;
        const auto garage = open(path);
        for (const auto& frame : garage.index().frames())
            places.push_back(static_cast<std::size_t>(frame.at));
        return places;
    }
};

void zero(Bytes& bytes, std::size_t from, std::size_t until) {
    for (std::size_t i = from; i < until; ++i)
        bytes[i] = 0;
}

Bytes with_attached_garage(Salvaging& bench) {
    bench.example("/old");
    bench.create("/g");
    bench.add("/g", subject_of(1), 1);
    bench.attach("/g", subject_of(1), bench.disk.bytes("/old"));
    bench.add("/g", subject_of(1), 2);
    return bench.disk.bytes("/g");
}

} // namespace

TEST_CASE("A whole file is taken whole", "[salvage]") {
    Salvaging bench;
    bench.example("/g");
    const auto found = bench.found(bench.disk.bytes("/g"));
    CHECK(found.frames.size() == bench.frames("/g").size());
    CHECK(found.records.size() == 1);
    CHECK(found.broken.empty());
    CHECK(found.left_out.empty());
    CHECK(found.names.of(subject_of(2)) == "Blue");
    CHECK(found.with_settings == std::set<SubjectId>{bench.open("/g").subject()});
}

TEST_CASE("Bytes put in or taken out anywhere cost no frame but the one they hit", "[salvage]") {
    Salvaging bench;
    bench.example("/g");
    const auto good = bench.disk.bytes("/g");
    const auto whole = bench.frames("/g").size();
    std::size_t lost_more = 0;
    for (std::size_t at = file_header_bytes; at < good.size(); at += 3) {
        Bytes more(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(at));
        more.insert(more.end(), {1, 2, 3, 4, 5});
        put_bytes(more, ByteView(good).subspan(at));
        Bytes less(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(at));
        put_bytes(less, ByteView(good).subspan(std::min(good.size(), at + 5)));
        for (const auto& bad : {more, less}) {
            const auto found = bench.found(bad);
            if (found.frames.size() + 2 < whole || found.frames.size() > whole) ++lost_more;
            if (bad == more && found.frames.size() + 1 < whole) ++lost_more;
        }
    }
    CHECK(lost_more == 0);
}

TEST_CASE("The frames of an attached old garage are listed and never taken in", "[salvage]") {
    Salvaging bench;
    const auto good = with_attached_garage(bench);
    const auto places = bench.frames("/g");
    REQUIRE(places.size() == 5); // settings, entry, attachment, its entry, entry
    const auto inside = bench.frames("/old").size();
    const auto attachment = places[2];
    const auto body = attachment + 84 + 32 + 20;
    struct Hit {
        const char* what;
        std::size_t from, until;
        std::size_t frames; // taken
    };
    // Where the body's hash can be tested its frame is kept without the body.
    const std::vector<Hit> hits{{"a byte of the body", body + 3, body + 4, 5},
                                {"the old header in the body", body, body + 40, 5},
                                {"the frame's own length", attachment, attachment + 4, 4},
                                {"its salt", attachment + 84 + 36, attachment + 84 + 52, 5},
                                {"its chain", attachment + 32, attachment + 48, 4},
                                {"all of its head", attachment, body, 4},
                                {"the heading of the action and the head", attachment - 12, body, 4}};
    for (const auto& hit : hits) {
        INFO(hit.what);
        auto bad = good;
        for (std::size_t i = hit.from; i < hit.until; ++i)
            bad[i] ^= 0x55;
        const auto found = bench.found(bad);
        CHECK(found.frames.size() == hit.frames);
        for (const auto& frame : found.frames)
            CHECK(std::ranges::count(places, frame.copies.front().at) == 1);
        CHECK(found.left_out.size() == inside);
        CHECK(found.records.empty());
        CHECK_FALSE(found.broken.empty());
    }
}

TEST_CASE("A torn save of an attached old garage gives nothing of it", "[salvage]") {
    Salvaging bench;
    const auto good = with_attached_garage(bench);
    const auto places = bench.frames("/g");
    const auto body = places[2] + 84 + 32 + 20;
    std::size_t wrong = 0;
    for (std::size_t length = body; length < places[3]; length += 11) {
        const auto found = bench.found(Bytes(good.begin(), good.begin() + static_cast<std::ptrdiff_t>(length)));
        if (found.frames.size() != 2 || found.broken.empty()) ++wrong;
    }
    CHECK(wrong == 0);
}

TEST_CASE("Large holes cost only what was in them", "[salvage]") {
    Salvaging bench;
    bench.example("/g");
    const auto good = bench.disk.bytes("/g");
    auto places = bench.frames("/g");
    std::size_t wrong = 0;
    for (std::size_t from = file_header_bytes; from < good.size(); from += 37) {
        const auto until = std::min(good.size(), from + 512);
        auto bad = good;
        zero(bad, from, until);
        std::size_t expected = 0;
        for (std::size_t i = 0; i < places.size(); ++i) {
            const auto length = get_number<std::uint32_t>(good, places[i]);
            if (places[i] + length <= from || places[i] >= until) ++expected;
        }
        const auto found = bench.found(bad);
        if (found.frames.size() - found.attachments_dropped > expected || found.frames.size() < expected) ++wrong;
    }
    CHECK(wrong == 0);
}

TEST_CASE("A file made to be slow to search is given up on, and says where", "[salvage]") {
    Salvaging bench;
    bench.example("/g");
    auto bytes = bench.disk.bytes("/g");
    const auto frame = bench.frames("/g")[0];
    // The start of a frame of the longest kind, again and again: each would have to be hashed.
    Bytes start(bytes.begin() + static_cast<std::ptrdiff_t>(frame),
                bytes.begin() + static_cast<std::ptrdiff_t>(frame + 84));
    start[4] = start[10] = 1;
    const std::uint32_t length = 1024 * 1024;
    for (std::size_t i = 0; i < 4; ++i)
        start[i] = static_cast<std::uint8_t>(length >> (8 * i));
    Bytes size;
    put_number(size, std::uint32_t{length - 84 - 20 - 16});
    put_bytes(start, size);
    while (bytes.size() < 3 * std::size_t{length})
        put_bytes(bytes, start);
    const auto found = bench.found(bytes);
    CHECK(found.frames.size() == bench.frames("/g").size());
    REQUIRE(found.stopped);
    CHECK(*found.stopped > frame);
    REQUIRE_FALSE(found.broken.empty());
    CHECK(found.broken.back().until == bytes.size());
}

TEST_CASE("Where an action starts can be told", "[salvage]") {
    Salvaging bench;
    bench.example("/g");
    const auto bytes = bench.disk.bytes("/g");
    Window window(ByteView(bytes), 0);
    CHECK(action_starts_at(window, file_header_bytes));
    CHECK_FALSE(action_starts_at(window, file_header_bytes + 1));
    CHECK_FALSE(action_starts_at(window, bytes.size()));
}
