// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_file.h"

#include "model/store/action.h"
#include "model/store/damage_text.h"
#include "model/store/parallel_load.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace sumpbook::store {
namespace {

Result<Bytes> read_attachment(const OpenFile& file, const AttachmentSpot& spot, const std::string& path) {
    Bytes bytes(spot.length);
    const auto got = read_fully(file, spot.at, bytes);
    if (!got) return pass_on(io_problem(path, "read", got.error()));
    if (*got == bytes.size() && part_hash(attachment_slot, spot.salt, bytes) == spot.hash) return bytes;
    return fail(ProblemKind::damaged,
                "The bytes of this attachment do not match their hash: the garage file is damaged there.",
                file_place(path));
}

} // namespace

/// `window` shows the file at least from the last action of the scan on.
Result<void> GarageFile::take_in(const Scan& found, Window& window) {
    if (!found.damages.empty() || found.tail == Tail::damaged) {
        return pass_on(damage_problem(path_, found, loader_.index()));
    }
    if (loader_.fault()) return pass_on(fault_problem(path_, *loader_.fault()));
    end_ = found.good_end;
    tail_ = found.tail;
    std::ranges::copy(window.view(end_ - seal_bytes, seal_bytes), last_seal_.begin());
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
        const auto found = load_actions(file, size, end_, depth, {.threads = around_.threads}, loader_);
        Window last(file, size, seal_bytes);
        return take_in(found, last);
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
    const auto itself = around.files.real_path(path);
    if (!itself) return pass_on(io_problem(path, "read", itself.error()));
    GarageFile garage(std::move(around), *itself);
    const auto opened = open_locked(garage.around_.files, garage.path_, garage.around_.patience);
    if (!opened) return pass_on(opened.error());
    if (const auto loaded = garage.load(opened->file, depth); !loaded) return pass_on(loaded.error());
    if (garage.tail_ == Tail::torn) {
        garage.notices_.push_back(
            fmt::format("The last save was cut short and is left out ({} bytes at the end of the file). "
                        "Everything before it verifies. The next save sets these bytes aside.",
                        garage.size_ - garage.end_));
    }
    return garage;
}

/// Whether it is the file that was read, as far as its end tells: a number of a file that was removed is given
/// to another one later.
Result<bool> GarageFile::is_known(const OpenFile& file) const {
    const auto identity = around_.files.identity(file.handle());
    if (!identity) return pass_on(io_problem(path_, "read", identity.error()));
    if (*identity != identity_) return false;
    std::array<std::uint8_t, seal_bytes> seal{};
    const auto got = read_fully(file, end_ - seal_bytes, seal);
    if (!got) return pass_on(io_problem(path_, "read", got.error()));
    return *got == seal_bytes && seal == last_seal_;
}

/// Reads what stands behind the last known action, or everything if another file has taken the place.
Result<void> GarageFile::catch_up(const OpenFile& file) {
    const auto known = is_known(file);
    if (!known) return pass_on(known.error());
    if (!*known) return load(file, ScanDepth::usual);
    const auto size = around_.files.size(file.handle());
    if (!size) return pass_on(io_problem(path_, "read", size.error()));
    if (*size == end_) {
        size_ = end_;
        tail_ = Tail::whole;
        return {};
    }
    return scan(file, *size, ScanDepth::usual);
}

bool GarageFile::is_as_seen() const {
    const auto file = open_file(around_.files, path_, OpenMode::read);
    if (!file) return false;
    const auto identity = around_.files.identity(file->handle());
    const auto size = around_.files.size(file->handle());
    return identity && size && *identity == identity_ && *size == size_;
}

Result<bool> GarageFile::refresh() {
    const auto opened = open_locked(around_.files, path_, around_.patience);
    if (!opened) return pass_on(opened.error());
    const auto seen = [&] { return std::tuple(identity_, end_, last_seal_); };
    const auto before = seen();
    if (const auto caught_up = catch_up(opened->file); !caught_up) return pass_on(caught_up.error());
    return before != seen();
}

/// The file as it was read: what is remembered of its places holds as long as the lock is held.
Result<LockedFile> GarageFile::open_known() const {
    auto opened = open_locked(around_.files, path_, around_.patience);
    if (!opened) return opened;
    const auto known = is_known(opened->file);
    if (!known) return pass_on(known.error());
    if (*known) return opened;
    return fail(ProblemKind::io,
                "Another file took the place of this garage file after it was read. Try again.", file_place(path_));
}

Result<Bytes> GarageFile::attachment(const Hash256& part_hash) const {
    const auto& spots = loader_.attachments();
    const auto spot = std::ranges::find(spots, part_hash, &AttachmentSpot::hash);
    if (spot == spots.end()) return refuse("There is no such attachment in this file.", file_place(path_));
    if (!spot->shown)
        return refuse("The bytes of this attachment are not in this file: they were left out.", file_place(path_));
    const auto opened = open_known();
    if (!opened) return pass_on(opened.error());
    return read_attachment(opened->file, *spot, path_);
}

Result<std::vector<Hash256>> GarageFile::damaged_attachments() const {
    const auto opened = open_known();
    if (!opened) return pass_on(opened.error());
    std::vector<Hash256> damaged;
    for (const auto& spot : loader_.attachments()) {
        if (!spot.shown) continue;
        const auto bytes = read_attachment(opened->file, spot, path_);
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
