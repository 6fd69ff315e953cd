// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_file.h"

#include "model/store/action.h"
#include "model/store/tail.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

Place at(const std::string& path) { return {.file = path, .line = {}, .column = {}, .text = {}}; }

Problem damage_problem(const std::string& path, const Damage& damage, const ChainIndex& index) {
    std::string sentence = fmt::format("The garage file is damaged: frame {} (byte {}) {}",
                                       damage.frame_number, damage.at, damage.what);
    if (damage.header) {
        sentence += fmt::format(", by its heading the entries {}-...", index.name_of(damage.header->chain));
    }
    sentence +=
        ". Nothing was changed. Go back to a copy of the file, or save what verifies with: sumpbook recover";
    return {ProblemKind::damaged, std::move(sentence), at(path)};
}

Problem fault_problem(const std::string& path, const Loader::Fault& fault) {
    return {fault.kind,
            fmt::format("Frame {} of the garage file {}. The file was left untouched.", fault.frame_number,
                        fault.what),
            at(path)};
}

} // namespace

Result<void> GarageFile::scan(const OpenFile& file, std::uint64_t size, ScanDepth depth) {
    try {
        Window window(file, size);
        if (end_ == 0) {
            const auto head =
                window.view(0, static_cast<std::size_t>(std::min<std::uint64_t>(size, file_header_bytes)));
            const auto subject = read_file_header(head, path_);
            if (!subject) return pass_on(subject.error());
            subject_ = *subject;
            end_ = file_header_bytes;
        }
        const Scan result = scan_actions(window, end_, loader_.index().frames().size(), depth, loader_);
        if (!result.damages.empty())
            return pass_on(damage_problem(path_, result.damages.front(), loader_.index()));
        if (loader_.fault()) return pass_on(fault_problem(path_, *loader_.fault()));
        if (result.tail == Tail::damaged)
            return pass_on(damage_problem(path_, *result.tail_damage, loader_.index()));
        end_ = result.good_end;
        tail_ = result.tail;
        size_ = size;
        loader_.name_records();
        return {};
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

Result<void> GarageFile::catch_up(const OpenFile& file) {
    const auto identity = around_.files.identity(file.handle());
    const auto size = around_.files.size(file.handle());
    if (!identity) return pass_on(io_problem(path_, "read", identity.error()));
    if (!size) return pass_on(io_problem(path_, "read", size.error()));
    if (*identity != identity_ || *size < end_)
        return load(file, ScanDepth::usual); // replaced by another file
    return scan(file, *size, ScanDepth::usual);
}

Result<void> GarageFile::settle_tail(const OpenFile& file) {
    if (tail_ == Tail::whole) return {};
    const auto kept = set_tail_aside(file, path_, end_, size_);
    if (!kept) return pass_on(kept.error());
    notices_.push_back(fmt::format("The last save had been cut short; its {} bytes were set aside in {}.",
                                   size_ - end_, *kept));
    size_ = end_;
    tail_ = Tail::whole;
    return {};
}

/// A sync failed on this file since the machine was started: what reads back may not be on the disk.
Result<void> GarageFile::refuse_while_suspect(FileLock& lock, const OpenFile& file) const {
    if (!lock.suspicion()) return {};
    const auto identity = around_.files.identity(file.handle());
    const std::string boot = around_.files.boot_id();
    const bool same_start = boot.empty() || lock.suspicion()->boot_id == boot;
    if (identity && *identity == lock.suspicion()->file && same_start) {
        return fail(ProblemKind::io,
                    "The disk failed to keep an earlier save of this garage file, so nothing more is written "
                    "to it. Copy the "
                    "file to another disk and go on there, or restart the machine and try again.",
                    at(path_));
    }
    lock.clear_suspicion(); // the file was replaced, or is read from the disk again and verified below
    return {};
}

Problem GarageFile::failed_sync(const OpenFile& file, FileLock& lock, const IoError& error) {
    // Never tried again: after a failed sync a second one may say yes to bytes that are lost.
    static_cast<void>(around_.files.truncate(file.handle(), end_));
    lock.note_suspicion({.from = end_, .boot_id = around_.files.boot_id(), .file = identity_});
    unsafe_ = true;
    return {ProblemKind::io,
            fmt::format("The disk could not keep what was just written ({}): it is NOT saved. Nothing more "
                        "is written to this "
                        "file. Copy it to another disk, enter this again there, and check the disk.",
                        reason_of(error)),
            at(path_)};
}

Result<void> GarageFile::write(const OpenFile& file, FileLock& lock, ByteView action) {
    if (const auto written = write_fully(file, end_, action); !written) {
        static_cast<void>(around_.files.truncate(file.handle(), end_));
        return pass_on(io_problem(path_, "saved; nothing was changed", written.error()));
    }
    if (const auto synced = around_.files.sync(file.handle()); !synced) {
        return pass_on(failed_sync(file, lock, synced.error()));
    }
    return scan(file, end_ + action.size(), ScanDepth::usual);
}

template <class Make>
Result<void> GarageFile::append_under_lock(Make make) {
    if (unsafe_)
        return fail(ProblemKind::io, "An earlier save to this file failed; nothing more is written to it.",
                    at(path_));
    auto lock = FileLock::take(around_.files, path_, LockKind::exclusive, around_.patience);
    if (!lock) return pass_on(lock.error());
    const auto file = open_file(around_.files, path_, OpenMode::read_write);
    if (!file) return pass_on(io_problem(path_, "opened for writing", file.error()));
    if (const auto trusted = refuse_while_suspect(*lock, *file); !trusted) return trusted;
    if (const auto caught_up = catch_up(*file); !caught_up) return caught_up;
    if (const auto settled = settle_tail(*file); !settled) return settled;
    const Result<Bytes> action = make();
    if (!action) return pass_on(action.error());
    if (action->empty()) return {};
    return write(*file, *lock, *action);
}

void GarageFile::save_notes(const std::vector<ChainNote>& notes) {
    static_cast<void>(around_.files.make_folders(around_.state_folder));
    const auto saved =
        save_chain_notes(around_.files, chain_notes_path(around_.state_folder, subject_), notes);
    if (saved) return;
    const std::string notice =
        fmt::format("The notes about this installation could not be kept in {} ({}). Your entries are not "
                    "affected.",
                    around_.state_folder, reason_of(saved.error()));
    if (notices_.empty() || notices_.back() != notice) notices_.push_back(notice);
}

Result<std::vector<std::string>> GarageFile::append(const std::vector<NewRecord>& records) {
    NewAction action;
    std::size_t first = 0;
    const auto appended = append_under_lock([&]() -> Result<Bytes> {
        const auto notes = load_chain_notes(around_.files, chain_notes_path(around_.state_folder, subject_));
        auto made =
            make_action(records, notes.value_or(std::vector<ChainNote>{}), loader_.index(), around_.random);
        if (!made) return pass_on(made.error());
        action = std::move(*made);
        first = loader_.records().size();
        save_notes(action.notes);
        return action.bytes;
    });
    if (!appended) return pass_on(appended.error());
    save_notes(as_written(action.notes));
    notices_.insert(notices_.end(), action.notices.begin(), action.notices.end());
    std::vector<std::string> ids(records.size());
    for (std::size_t i = 0; i < action.order.size(); ++i)
        ids[action.order[i]] = loader_.records()[first + i].id;
    return ids;
}

Result<FingerprintRecord> GarageFile::take_fingerprint(RecordedTime now) {
    FingerprintRecord record;
    const auto appended = append_under_lock([&]() -> Result<Bytes> {
        record = {.printed = now, .entries = loader_.records().size(), .leaves = leaves_of(loader_.index())};
        for (const auto& saved : loader_.fingerprints()) {
            if (saved.fingerprint() != record.fingerprint()) continue;
            record = saved; // printed before, and nothing has changed since
            return Bytes{};
        }
        return encode_fingerprint_action(encode_fingerprint_record(record));
    });
    if (!appended) return pass_on(appended.error());
    return record;
}

FingerprintCheck GarageFile::check(const TypedFingerprint& typed) const {
    std::vector<RecordedTime> recorded;
    recorded.reserve(records().size());
    for (const auto& record : records())
        recorded.push_back(record.record.recorded);
    return check_fingerprint(typed, loader_.index(), loader_.fingerprints(), recorded);
}

std::vector<Finding> GarageFile::findings() const {
    auto findings = loader_.index().findings();
    const auto notes = load_chain_notes(around_.files, chain_notes_path(around_.state_folder, subject_));
    if (notes) {
        for (auto& finding : chain_note_findings(*notes, loader_.index()))
            findings.push_back(std::move(finding));
    }
    return findings;
}

Result<GarageFile> GarageFile::create(Surroundings around, const std::string& path,
                                      const GarageSettings& settings, RecordedTime recorded) {
    FileLayer& files = around.files;
    if (files.identity(path)) {
        return refuse("There is already a file of this name. Choose another, or remove it yourself first.",
                      at(path));
    }
    const SubjectId subject{around.random.sixteen()};
    const auto action = make_action({{subject, {recorded, {}, settings}}}, {}, ChainIndex{}, around.random);
    if (!action) return pass_on(action.error());
    Bytes bytes = encode_file_header(subject);
    put_bytes(bytes, action->bytes);
    if (const auto made = make_file(files, path, bytes); !made) return pass_on(made.error());
    GarageFile garage(around, path);
    garage.subject_ = subject;
    garage.save_notes(as_written(action->notes));
    return open(std::move(around), path);
}

} // namespace sumpbook::store
