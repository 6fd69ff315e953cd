// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/disk_bench.h"

#include "model/store/bodies.h"
#include "model/store/hash.h"
#include "tests/model/store/example_garage.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace sumpbook::store {
namespace {

std::string short_hash(ByteView bytes) {
    return bytes.empty() ? "none" : hex_text(sha256({bytes})).substr(0, 16);
}

/// Every field of a record but the names of those it replaces: they hold hashes of frames, which differ with
/// their salts and chains.
std::string content_of(Record record) {
    record.replaces.clear();
    const auto batches = encode_records({std::move(record)});
    if (!batches) return batches.error().sentence;
    const auto& parts = batches->at(0).parts;
    return fmt::format("open {} money {} private {}", short_hash(parts[0]), short_hash(parts[1]),
                       short_hash(parts[2]));
}

std::string text_of(const SubjectId& subject, const Record& record, const std::string& replaced = {}) {
    return fmt::format("record of {} about {}: {}{}\n", record.recorded.seconds_since_1970,
                       hex_text(subject.bytes), content_of(record), replaced);
}

/// What a record replaces by its content, or by its name where it is not here.
std::string replaced_by(const Record& record, const std::vector<NamedRecord>& all) {
    std::string text;
    for (const auto& name : record.replaces) {
        const auto found = std::ranges::find(all, name, &NamedRecord::name);
        text += "; replaces " + (found != all.end()
                                     ? content_of(found->record)
                                     : fmt::format("{}/{}", hex_text(name.frame_hash), name.index));
    }
    return text;
}

std::string frame_text(const SubjectId& subject, FrameKind kind, std::uint32_t entries, unsigned left_out) {
    return fmt::format("frame about {}: {}, {} entries, parts left out {:03b}\n", hex_text(subject.bytes),
                       kind == FrameKind::records ? "records" : "attachment", entries, left_out);
}

std::string attachment_text(const GarageFile& garage, const AttachmentSpot& spot) {
    std::string content = "left out";
    if (spot.shown) {
        const auto bytes = garage.attachment(spot.hash);
        content =
            bytes ? fmt::format("{} bytes {}", bytes->size(), short_hash(*bytes)) : bytes.error().sentence;
    }
    return fmt::format("attachment {}: {}\n", hex_text(spot.hash), content);
}

std::string sorted(std::vector<std::string> lines) {
    std::ranges::sort(lines);
    return fmt::format("{}", fmt::join(lines, ""));
}

} // namespace

std::string state_text(const GarageFile& garage) {
    std::vector<std::string> lines{"garage " + hex_text(garage.subject().bytes) + "\n"};
    for (const auto& [name, id, subject, record] : garage.records())
        lines.push_back(text_of(subject, record, replaced_by(record, garage.records())));
    for (const auto& frame : garage.index().frames())
        lines.push_back(
            frame_text(garage.index().subject_of(frame), frame.kind, frame.entry_count, frame.left_out));
    for (const auto& spot : garage.attachments())
        lines.push_back(attachment_text(garage, spot));
    for (const auto& record : garage.fingerprints())
        lines.push_back(fmt::format("fingerprint of {}: {}\n", record.printed.seconds_since_1970,
                                    short_hash(encode_fingerprint_record(record))));
    for (const auto& finding : garage.index().findings())
        lines.push_back("finding " + finding.id + "\n");
    return sorted(std::move(lines));
}

std::string with_record(const std::string& state, const SubjectId& subject, const Record& record) {
    std::vector<std::string> lines{text_of(subject, record), frame_text(subject, FrameKind::records, 1, 0)};
    std::istringstream in(state);
    for (std::string line; std::getline(in, line);)
        lines.push_back(line + "\n");
    return sorted(std::move(lines));
}

std::string state_text(MemoryDisk& disk, const std::string& path) {
    if (!disk.identity(path)) return "no file";
    SeededRandom random("state");
    const auto garage = GarageFile::open(surroundings(disk, random), path, ScanDepth::everything);
    return garage ? state_text(*garage) : garage.error().sentence;
}

std::vector<std::string> changed_beside(const MemoryDisk& before, const MemoryDisk& now,
                                        const std::string& written) {
    const auto names = now.names();
    std::vector<std::string> changed;
    for (const auto& name : before.names()) {
        if (name == written || name.ends_with(".lock") || name.starts_with("/state/")) continue;
        if (std::ranges::count(names, name) == 0 || now.bytes(name) != before.bytes(name))
            changed.push_back(name);
    }
    return changed;
}

MemoryDisk empty_disk() {
    MemoryDisk disk;
    static_cast<void>(disk.make_folders(folder_of(garage_path)));
    return disk;
}

MemoryDisk example_disk() {
    MemoryDisk disk = empty_disk();
    SeededRandom random("example");
    make_example(surroundings(disk, random), garage_path);
    return disk.after_power_cut(1);
}

} // namespace sumpbook::store
