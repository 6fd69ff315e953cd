// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/garage.h"
#include "model/store/bodies.h"
#include "model/store/parallel_load.h"
#include "model/store/recover.h"
#include "tests/fuzz/targets.h"
#include "tests/model/store/memory_disk.h"

#include <algorithm>
#include <set>

namespace sumpbook::fuzz {

using namespace store;

namespace {

const std::string path = "/g/bytes.sumpbook";

Result<GarageFile> open(MemoryDisk& disk, RandomSource& random) {
    return GarageFile::open({disk, random, "/state", Patience{0}}, path, ScanDepth::everything);
}

void must_have_sentence(const Problem& problem) {
    must(!problem.sentence.empty(), "a refusal has a sentence");
}

/// Encodes what was read again and compares it with the bytes.
class SameBytes final : public ScanHandler {
public:
    explicit SameBytes(ByteView file)
        : file_(file) {}

    void frame(const VerifiedFrame& verified, std::uint64_t at) override {
        if (verified.frame.header.kind == FrameKind::attachment) return;
        const auto again = encode_frame(verified.frame);
        must(std::ranges::equal(again, file_.subspan(static_cast<std::size_t>(at), again.size())),
             "a frame has one encoding");
        ++frames;
        if (verified.frame.parts[slot_of(Part::open)].shown) same_bodies(verified.frame);
    }
    void fingerprint_record(ByteView body) override {
        const auto record = read_fingerprint_record(body);
        must(record.has_value(), "a file that opens has readable fingerprint records");
        must(std::ranges::equal(encode_fingerprint_record(*record), body),
             "a fingerprint record has one encoding");
    }
    void action_done(bool /*good*/) override {}

    std::size_t frames = 0;

private:
    static void same_bodies(const Frame& frame) {
        const auto records = decode_records(frame);
        must(records.has_value(), "a file that opens has readable records");
        const auto batches = encode_records(*records);
        must(batches.has_value(), "what was read can be written");
        must(batches->size() == 1 && batches->front().count == frame.header.entry_count,
             "records of one frame fit into one frame");
        for (std::size_t slot = 0; slot < 3; ++slot) {
            const auto& part = frame.parts[slot];
            if (frame.exists(slot) && !part.shown) continue;
            must(std::ranges::equal(batches->front().parts[slot], part.body), "records have one encoding");
        }
    }

    ByteView file_;
};

void same_bytes_again(const GarageFile& garage, ByteView bytes) {
    MemoryDisk disk;
    disk.put(path, bytes);
    const auto file = open_file(disk, path, OpenMode::read);
    Window window(*file, garage.bytes());
    SameBytes same(bytes);
    const auto scan = scan_actions(window, file_header_bytes, 0, ScanDepth::usual, same);
    must(scan.tail == Tail::whole && scan.damages.empty(), "what was kept of a file verifies by itself");
    must(scan.frames == garage.index().frames().size(), "every frame that verifies is known");
}

void answers_for_itself(const GarageFile& garage) {
    const auto findings = garage.findings();
    const bool gaps = std::ranges::any_of(findings, [](const auto& f) { return f.id == "frame-missing"; });
    const auto now = fingerprint_of(leaves_of(garage.index()));
    const auto typed = TypedFingerprint::read(fingerprint_text(now));
    must(typed.has_value(), "a printed fingerprint can be typed");
    const auto answer = garage.check(*typed).answer;
    must(answer == FingerprintAnswer::unchanged || (gaps && answer != FingerprintAnswer::not_found),
         "a file is unchanged since now");
    for (const auto& record : garage.fingerprints())
        static_cast<void>(garage.check(TypedFingerprint::read(hex_text(record.fingerprint())).value()));
}

void look_at_everything(const GarageFile& garage) {
    const auto today = fold(garage.subject(), garage.records());
    std::set<RecordName> names;
    for (const auto& record : garage.records()) {
        must(!record.id.empty(), "a record has an id");
        must(names.insert(record.name).second, "no two records have one name");
        const auto* entry = std::get_if<Entry>(&record.record.content);
        if (entry == nullptr) continue;
        for (const auto& attachment : entry->attachments) {
            const auto bytes = garage.attachment(attachment.part_hash);
            if (!bytes) must_have_sentence(bytes.error());
        }
    }
    for (const auto& bike : today.bikes) {
        for (const auto& entry : bike.log)
            must(find_entry(bike, entry.id) != nullptr, "an entry is found by its id");
    }
}

struct Load {
    Loader loader;
    Scan scan;
    Load(const OpenFile& file, std::uint64_t size, Readers readers) {
        loader.expect(size);
        scan = load_actions(file, size, file_header_bytes, ScanDepth::everything, readers, loader);
    }
};

/// Several threads with small windows find what one finds, in whatever file this is.
void threads_say_what_one_says(MemoryDisk& disk, std::uint64_t size) {
    if (size <= file_header_bytes) return;
    const auto file = open_file(disk, path, OpenMode::read);
    const Load alone(*file, size, {});
    const Load together(*file, size, {.threads = 3, .window_bytes = 700});
    must(alone.loader.fault() == together.loader.fault(), "threads meet the same fault");
    must(alone.scan.good_end == together.scan.good_end && alone.scan.tail == together.scan.tail &&
             alone.scan.frames == together.scan.frames &&
             alone.scan.damages.size() == together.scan.damages.size(),
         "threads find the same damage");
    must(std::ranges::equal(alone.loader.index().frames(), together.loader.index().frames(), {},
                            &IndexedFrame::hash, &IndexedFrame::hash),
         "threads find the same frames");
    if (alone.loader.fault()) return;
    must(std::ranges::equal(
             alone.loader.records(), together.loader.records(),
             [](const auto& a, const auto& b) { return a.id == b.id && a.record == b.record; }),
         "threads find the same records");
}

/// Cut off at a place that depends on the bytes.
void cut_is_older_or_noticed(const GarageFile& whole, ByteView bytes) {
    const auto cut = get_number<std::uint32_t>(sha256({bytes}), 0) % bytes.size();
    MemoryDisk disk;
    disk.put(path, bytes.first(cut));
    SeededRandom random("cut");
    const auto older = open(disk, random);
    if (!older) return must_have_sentence(older.error());
    must(older->bytes() == cut || !older->notices().empty(), "a cut inside an action is noticed");
    must(older->bytes() <= cut && older->records().size() <= whole.records().size(),
         "a cut file holds no more than the whole one");
    for (std::size_t i = 0; i < older->records().size(); ++i) {
        const auto& a = older->records()[i];
        const auto& b = whole.records()[i];
        must(a.name == b.name && a.subject == b.subject && a.record == b.record,
             "a cut file is an older state");
    }
}

/// What is recovered from a file that does not open does open.
void recovers_or_says_why(MemoryDisk& disk) {
    SeededRandom random("recover");
    const auto plan = plan_recovery(disk, random, path, Patience{0});
    if (!plan) return must_have_sentence(plan.error());
    const std::string out = "/g/recovered.sumpbook";
    const auto written = write_out(disk, plan->set, out, plan->mode);
    if (!written) return must_have_sentence(written.error());
    must(written->frames == plan->set.frames().size(), "every frame that was recovered is written");
    const auto again = GarageFile::open({disk, random, "/state", Patience{0}}, out, ScanDepth::everything);
    must(again.has_value(), "what was recovered opens");
    must(again->index().frames().size() == plan->set.frames().size(), "what was recovered is all there");
}

} // namespace

void try_reader(ByteView bytes) {
    MemoryDisk disk;
    disk.put(path, bytes);
    SeededRandom random("reader");
    const auto garage = open(disk, random);
    must(std::ranges::equal(disk.bytes(path), bytes), "reading changes nothing");
    if (bytes.size() % 4 == 0) threads_say_what_one_says(disk, bytes.size());
    if (!garage) {
        must_have_sentence(garage.error());
        return recovers_or_says_why(disk);
    }
    look_at_everything(*garage);
    answers_for_itself(*garage);
    same_bytes_again(*garage, bytes);
    cut_is_older_or_noticed(*garage, bytes);
}

void try_planted(ByteView bytes) {
    MemoryDisk disk;
    disk.put(path, bytes);
    SeededRandom random("planted");
    const auto garage = open(disk, random);
    if (!garage) return;
    for (const auto& record : garage->records()) {
        const auto* entry = std::get_if<Entry>(&record.record.content);
        const auto* sample = entry == nullptr ? nullptr : std::get_if<Sample>(&entry->body);
        if (sample == nullptr) continue;
        for (const auto& value : sample->values) {
            std::vector<char> sixteen(16);
            std::copy_n(value.unit.data(), value.unit.size(), sixteen.data()); // the planted mistake
            must(sixteen.size() == 16, "the copy is used");
        }
    }
}

} // namespace sumpbook::fuzz
