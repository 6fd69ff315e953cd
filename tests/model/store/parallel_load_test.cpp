// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/parallel_load.h"

#include "model/store/action.h"
#include "model/store/bodies.h"
#include "model/store/posix_file_layer.h"
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

#include <iostream>
#include <random>
#include <sstream>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

/// Makes actions of every kind, in order of their chains.
class Maker {
public:
    explicit Maker(std::uint64_t seed)
        : random_(seed) {}

    Bytes file(std::size_t actions) {
        Bytes bytes = encode_file_header(subject_of(1));
        for (std::size_t i = 0; i < actions; ++i)
            put_bytes(bytes, action());
        return bytes;
    }

    Bytes action() {
        if (random_() % 20 == 0) return fingerprint();
        std::vector<Bytes> frames;
        for (auto left = 1 + random_() % 3; left > 0; --left)
            frames.push_back(random_() % 10 == 0 ? attachment() : records());
        return encode_action(frames);
    }

    /// Sealed, and still nothing that a loader takes.
    Bytes odd_action() {
        Frame frame = next_frame();
        Bytes body(20, 0xEE);
        if (random_() % 3 == 0) frame.header.format = body_format + 1;
        if (random_() % 3 == 0) frame.header.sequence = 0;
        if (frame.header.sequence == 0) frame.header.previous = {};
        frame.header.entry_count = random_() % 3 == 0 ? 3 : 1;
        frame.header.parts_exist = 1;
        if (random_() % 3 == 0) body = encode_records({fuel_record(1)}).value().front().parts[0];
        frame.parts[0] = shown_part(0, {}, body);
        return encode_action({records(), encode_frame(frame)});
    }

private:
    struct End {
        std::uint32_t sequence = 0;
        Hash256 hash{};
    };

    Frame next_frame() {
        const auto chain = static_cast<std::uint8_t>(random_() % 5);
        Frame frame;
        frame.header.subject = subject_of(static_cast<std::uint8_t>(1 + chain % 2));
        frame.header.chain.bytes[0] = chain;
        frame.header.sequence = ends_[chain].sequence;
        frame.header.previous = ends_[chain].hash;
        return frame;
    }
    Bytes sealed(const Frame& frame) {
        ends_[frame.header.chain.bytes[0]] = {frame.header.sequence + 1, frame_hash(frame)};
        return encode_frame(frame);
    }

    Bytes records() {
        Frame frame = next_frame();
        std::vector<Record> records;
        for (auto left = 1 + random_() % 4; left > 0; --left)
            records.push_back(fuel_record(static_cast<int>(random_() % 1000)));
        const auto batch = encode_records(records).value().front();
        frame.header.entry_count = batch.count;
        for (std::size_t slot = 0; slot < batch.parts.size(); ++slot) {
            if (batch.parts[slot].empty()) continue;
            frame.header.parts_exist |= bit_of(slot);
            frame.parts[slot] = shown_part(slot, {}, batch.parts[slot]);
            if (random_() % 10 == 0) frame.parts[slot] = withheld_part(frame.parts[slot].hash);
        }
        return sealed(frame);
    }

    Bytes attachment() {
        Frame frame = next_frame();
        const Bytes content(random_() % 4 == 0 ? 5'000 : random_() % 300, 7);
        frame.header.kind = FrameKind::attachment;
        frame.header.parts_exist = bit_of(attachment_slot);
        frame.parts[attachment_slot] = shown_part(attachment_slot, {}, content);
        if (random_() % 5 == 0)
            frame.parts[attachment_slot] = withheld_part(frame.parts[attachment_slot].hash);
        return sealed(frame);
    }

    Bytes fingerprint() {
        FingerprintRecord record;
        record.printed = {static_cast<std::int64_t>(random_() % 1'000'000)};
        record.leaves = {{Hash256{static_cast<std::uint8_t>(random_() % 256)}, {}, {}}};
        return encode_fingerprint_action(encode_fingerprint_record(record));
    }

    std::mt19937_64 random_;
    std::array<End, 256> ends_;
};

/// Everything a load says and keeps, as text.
std::string account_of(const Scan& scan, const Loader& loader) {
    std::ostringstream out;
    const auto tell = [&out](const Damage& damage) {
        out << "damage " << damage.at << '-' << damage.until << " frame " << damage.frame_number << ' '
            << damage.what;
        if (damage.header) out << ' ' << damage.header->sequence << hex_text(damage.header->chain.bytes);
        out << '\n';
    };
    out << scan.good_end << ' ' << static_cast<int>(scan.tail) << ' ' << scan.frames << '\n';
    for (const auto& damage : scan.damages)
        tell(damage);
    if (scan.tail_damage) tell(*scan.tail_damage);
    if (const auto& fault = loader.fault()) {
        out << "fault " << static_cast<int>(fault->kind) << ' ' << fault->at << ' ' << fault->frame_number
            << ' ' << fault->what << '\n';
    }
    const auto& index = loader.index();
    for (const auto& frame : index.frames()) {
        out << frame.at << hex_text(frame.hash) << ' ' << frame.entries_before << ' ' << frame.first_record
            << ' ' << frame.record_count << ' ' << frame.branch << hex_text(index.chain_of(frame).bytes)
            << '\n';
    }
    if (loader.fault()) return out.str();
    out << loader.entries() << ' ' << loader.record_count() << ' ' << loader.withheld(Part::open)
        << loader.withheld(Part::money) << loader.withheld(Part::personal) << '\n';
    for (const auto& spot : loader.attachments())
        out << spot.at << ' ' << spot.length << ' ' << spot.shown << '\n';
    for (const auto& print : loader.fingerprints())
        out << print.printed.seconds_since_1970 << '\n';
    for (const auto& record : loader.records()) {
        out << record.id << hex_text(record.name.frame_hash) << record.name.index << ' '
            << hex_text(record.subject.bytes) << hex_text(encode_records({record.record})->front().parts[0])
            << '\n';
    }
    return out.str();
}

struct Loads {
    PosixFileLayer files;
    TempFolder folder;
    OpenFile file = *open_file(files, folder.file("file"), OpenMode::create_new);

    void write(const Bytes& bytes) const {
        if (!file.layer().truncate(file.handle(), 0) || !write_fully(file, 0, bytes))
            throw std::runtime_error("could not write");
    }
    [[nodiscard]] std::string load(std::uint64_t size, ScanDepth depth, Readers readers) const {
        Loader loader;
        loader.expect(size);
        const Scan scan = load_actions(file, size, file_header_bytes, depth, readers, loader);
        return account_of(scan, loader);
    }
    /// How many of several ways to read it together differ from reading it alone.
    [[nodiscard]] std::size_t different(const Bytes& bytes) const {
        write(bytes);
        std::size_t different = 0;
        for (const auto depth : {ScanDepth::usual, ScanDepth::everything}) {
            Loader alone;
            Window window(file, bytes.size());
            const Scan scan = scan_actions(window, file_header_bytes, 0, depth, alone);
            const auto expected = account_of(scan, alone);
            for (const Readers readers :
                 {Readers{1, 2'000}, Readers{2, 700}, Readers{2, 4'000}, Readers{4, 2'000}})
                different += load(bytes.size(), depth, readers) == expected ? 0U : 1U;
        }
        return different;
    }
};

} // namespace

TEST_CASE("Threads together find what one finds in a sound file", "[parallel_load]") {
    const Loads loads;
    for (std::uint64_t seed = 0; seed < 10; ++seed)
        CHECK(loads.different(Maker(seed).file(seed * 20)) == 0);
}

TEST_CASE("Threads together find what one finds in a damaged file, in the same words", "[parallel_load]") {
    const Loads loads;
    std::mt19937_64 random(11);
    std::size_t different = 0;
    constexpr int rounds = 150;
    for (int round = 0; round < rounds; ++round) {
        auto bytes = Maker(random()).file(60);
        for (auto flips = 1 + random() % 3; flips > 0; --flips) {
            auto& byte = bytes[file_header_bytes + random() % (bytes.size() - file_header_bytes)];
            byte = static_cast<std::uint8_t>(byte ^ (1U << random() % 8));
        }
        if (random() % 3 == 0)
            bytes.resize(file_header_bytes + random() % (bytes.size() - file_header_bytes));
        if (random() % 5 == 0) bytes.resize(bytes.size() + random() % 3'000, 0);
        different += loads.different(bytes);
    }
    std::cout << "damaged files read by 1, 2 and 4 threads: " << rounds << ", 8 ways each\n";
    CHECK(different == 0);
}

TEST_CASE("Threads together refuse what one refuses in a sealed file", "[parallel_load]") {
    const Loads loads;
    std::mt19937_64 random(12);
    std::size_t different = 0;
    for (int round = 0; round < 60; ++round) {
        Maker maker(random());
        auto bytes = maker.file(random() % 30);
        for (int i = 0; i < 30; ++i)
            put_bytes(bytes, random() % 10 == 0 ? maker.odd_action() : maker.action());
        if (random() % 3 == 0) bytes[bytes.size() / 2] ^= 1;
        different += loads.different(bytes);
    }
    CHECK(different == 0);
}

TEST_CASE("Threads together find what one finds in bytes that mean nothing", "[parallel_load]") {
    const Loads loads;
    std::mt19937_64 random(13);
    const auto start = encode_action({Bytes(100, 0)});
    std::size_t different = 0;
    for (int round = 0; round < 40; ++round) {
        Bytes bytes = encode_file_header(subject_of(1));
        while (bytes.size() < 10'000) {
            put_bytes(bytes, ByteView(start).first(random() % 12));
            for (auto left = random() % 400; left > 0; --left)
                bytes.push_back(random() % 2 == 0 ? 0 : static_cast<std::uint8_t>(random()));
        }
        different += loads.different(bytes);
    }
    CHECK(different == 0);
}

TEST_CASE("An open with several threads says the same sentence and reads the same records",
          "[parallel_load]") {
    Bench bench;
    const auto sound = Maker(1).file(6'000); // longer than two windows
    REQUIRE(sound.size() > 2 * Window::usual_bytes);
    const auto said = [&](unsigned threads) {
        auto around = bench.around();
        around.threads = threads;
        const auto opened = GarageFile::open(around, bench.path(), ScanDepth::everything);
        return opened ? std::to_string(opened->records().size()) + opened->records().back().id
                      : opened.error().sentence;
    };
    std::vector<Bytes> variants{sound, sound, sound};
    variants[1][sound.size() / 2] ^= 1;
    variants[2].resize(sound.size() - 5);
    for (const auto& bytes : variants) {
        write_file(bench.path(), bytes);
        const auto expected = said(1);
        CHECK(said(2) == expected);
        CHECK(said(4) == expected);
        CHECK(said(1000) == expected);
    }
}

TEST_CASE("A read that fails in one of several threads is a problem and no crash", "[parallel_load]") {
    Bench bench;
    write_file(bench.path(), Maker(2).file(6'000));
    for (int read = 1; read <= 5; ++read) {
        FailingFiles failing({.fail_at = read, .from_then_on = true, .only = "read"});
        auto around = bench.around(failing);
        around.threads = 3;
        const auto opened = GarageFile::open(around, bench.path());
        REQUIRE_FALSE(opened);
        CHECK(opened.error().kind == ProblemKind::io);
    }
}
