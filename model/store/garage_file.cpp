// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_file.h"

#include "model/store/action.h"
#include "model/store/damage_text.h"
#include "model/store/parallel_load.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

Place at(const std::string& path) { return {.file = path, .line = {}, .column = {}, .text = {}}; }

} // namespace

Result<void> GarageFile::take_in(const Scan& found) {
    if (!found.damages.empty() || found.tail == Tail::damaged) {
        return pass_on(damage_problem(path_, found, loader_.index()));
    }
    if (loader_.fault()) return pass_on(fault_problem(path_, *loader_.fault()));
    end_ = found.good_end;
    tail_ = found.tail;
    return {};
}

Result<void> GarageFile::scan(const OpenFile& file, std::uint64_t size, ScanDepth depth) {
    try {
        size_ = size;
        if (end_ == 0) {
            Window window(file, size, file_header_bytes);
            const auto head =
                window.view(0, static_cast<std::size_t>(std::min<std::uint64_t>(size, file_header_bytes)));
            const auto subject = read_file_header(head, path_);
            if (!subject) return pass_on(subject.error());
            subject_ = *subject;
            end_ = file_header_bytes;
        }
        loader_.expect(size, &around_.files);
        return take_in(load_actions(file, size, end_, depth, {.threads = around_.threads}, loader_));
    } catch (const IoFailure& failure) {
        return pass_on(io_problem(path_, "read", failure.error));
    }
}

Result<void> GarageFile::load(const OpenFile& file, ScanDepth depth) {
    const auto identity = around_.files.identity(file.handle());
    if (!identity) return pass_on(io_problem(path_, "read", identity.error()));
    const auto size = around_.files.size(file.handle());
    if (!size) return pass_on(io_problem(path_, "read", size.error()));
    identity_ = *identity;
    loader_ = Loader();
    end_ = 0;
    return scan(file, *size, depth);
}

Result<GarageFile> GarageFile::open(Surroundings around, const std::string& path, ScanDepth depth) {
    GarageFile garage(std::move(around), path);
    const auto file = open_file(garage.around_.files, path, OpenMode::read);
    if (!file) return pass_on(io_problem(path, "read", file.error()));
    const auto lock = FileLock::take(garage.around_.files, path, LockKind::shared, garage.around_.patience);
    if (!lock) return pass_on(lock.error());
    if (const auto loaded = garage.load(*file, depth); !loaded) return pass_on(loaded.error());
    if (garage.tail_ == Tail::torn) {
        garage.notices_.push_back(
            fmt::format("The last save was cut short and is left out ({} bytes at the end of the file). "
                        "Everything before it verifies. The next save sets these bytes aside.",
                        garage.size_ - garage.end_));
    }
    return garage;
}

/// Reads what stands behind the last known action, or everything if another file has taken the place.
Result<void> GarageFile::catch_up(const OpenFile& file) {
    const auto identity = around_.files.identity(file.handle());
    const auto size = around_.files.size(file.handle());
    if (!identity) return pass_on(io_problem(path_, "read", identity.error()));
    if (!size) return pass_on(io_problem(path_, "read", size.error()));
    if (*identity != identity_ || *size < end_) return load(file, ScanDepth::usual);
    return scan(file, *size, ScanDepth::usual);
}

Result<bool> GarageFile::refresh() {
    const auto file = open_file(around_.files, path_, OpenMode::read);
    if (!file) return pass_on(io_problem(path_, "read", file.error()));
    const auto lock = FileLock::take(around_.files, path_, LockKind::shared, around_.patience);
    if (!lock) return pass_on(lock.error());
    const auto before = std::pair(identity_, end_);
    if (const auto caught_up = catch_up(*file); !caught_up) return pass_on(caught_up.error());
    return before != std::pair(identity_, end_);
}

Result<Bytes> GarageFile::attachment(const Hash256& part_hash) const {
    const auto problem = [&](const IoError& error) { return pass_on(io_problem(path_, "read", error)); };
    for (const auto& spot : loader_.attachments()) {
        if (spot.hash != part_hash) continue;
        if (!spot.shown)
            return refuse("The bytes of this attachment are not in this file: they were left out.",
                          at(path_));
        const auto file = open_file(around_.files, path_, OpenMode::read);
        if (!file) return problem(file.error());
        Bytes bytes(spot.length);
        const auto got = read_fully(*file, spot.at, bytes);
        if (!got) return problem(got.error());
        if (*got == bytes.size() && store::part_hash(attachment_slot, spot.salt, bytes) == part_hash)
            return bytes;
        return fail(ProblemKind::damaged,
                    "The bytes of this attachment do not match their hash: the garage file is damaged there.",
                    at(path_));
    }
    return refuse("There is no such attachment in this file.", at(path_));
}

Result<std::vector<Hash256>> GarageFile::damaged_attachments() const {
    std::vector<Hash256> damaged;
    for (const auto& spot : loader_.attachments()) {
        if (!spot.shown) continue;
        const auto bytes = attachment(spot.hash);
        if (bytes) continue;
        if (bytes.error().kind != ProblemKind::damaged) return pass_on(bytes.error());
        damaged.push_back(spot.hash);
    }
    return damaged;
}

FingerprintCheck GarageFile::check(const TypedFingerprint& typed,
                                   const std::optional<SubjectId>& only) const {
    std::vector<RecordedTime> recorded;
    recorded.reserve(records().size());
    for (const auto& record : records())
        recorded.push_back(record.record.recorded);
    return check_fingerprint(typed, loader_.index(), loader_.fingerprints(), recorded, only);
}

std::string GarageFile::notes_path() const { return chain_notes_path(around_.state_folder, subject_); }

std::vector<Finding> GarageFile::findings() const {
    auto findings = loader_.index().findings();
    const auto kept = load_chain_notes(around_.files, notes_path());
    if (kept) {
        for (auto& finding : chain_note_findings(*kept, loader_.index()))
            findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace sumpbook::store
