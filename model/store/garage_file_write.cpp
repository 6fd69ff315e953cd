// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_file.h"

#include "model/store/action.h"
#include "model/store/tail.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace sumpbook::store {
namespace {

/// Refused when a reader would refuse it, for a limit, behind all that is in the file already.
Result<void> reads_back(ByteView action, std::uint64_t place, const Loader& before) {
    Loader trial = Loader::behind(before);
    Window window(action, place);
    const Scan found = scan_actions(window, place, 0, ScanDepth::everything, trial);
    if (trial.fault() && trial.fault()->kind == ProblemKind::refused) {
        return refuse("This cannot be saved in this garage file: it " + trial.fault()->what + ".");
    }
    if (found.tail != Tail::whole || !found.damages.empty() || trial.fault()) {
        throw std::logic_error("an action was made that would not read back");
    }
    return {};
}

} // namespace

Result<void> GarageFile::settle_tail(const OpenFile& file, FileLock& lock) {
    if (tail_ == Tail::whole) return {};
    const auto kept = set_tail_aside(file, path_, end_, size_);
    if (!kept) return pass_on(kept.error());
    // What is written next must not come to stand in front of a rest of these bytes.
    if (const auto synced = around_.files.sync(file.handle()); !synced)
        return pass_on(failed_sync(file, lock, synced.error()));
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
    const bool another_file = lock.suspicion()->whole && identity && *identity != lock.suspicion()->file;
    const bool restarted = !boot.empty() && lock.suspicion()->boot_id != boot;
    if (!another_file && !restarted) {
        return fail(ProblemKind::io,
                    "The disk failed to keep an earlier save of this garage file, so nothing more is written "
                    "to it. Copy the "
                    "file to another disk and go on there, or restart the machine and try again.",
                    file_place(path_));
    }
    // Of another file no sync failed. After a restart the memory holds nothing of the failed save: what was
    // read since, on opening and by whoever goes on from here, came from the disk. Its frames are verified
    // there; the bytes of attachments only when they are used.
    lock.clear_suspicion();
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
            file_place(path_)};
}

Result<void> GarageFile::write(const OpenFile& file, FileLock& lock, ByteView action) {
    if (const auto readable = reads_back(action, end_, loader_); !readable) return readable;
    if (const auto written = write_fully(file, end_, action); !written) {
        static_cast<void>(around_.files.truncate(file.handle(), end_));
        return pass_on(io_problem(path_, "saved; nothing was changed", written.error()));
    }
    if (const auto synced = around_.files.sync(file.handle()); !synced) {
        unsaved_.assign(action.begin(), action.end());
        return pass_on(failed_sync(file, lock, synced.error()));
    }
    // Taken in from memory: nothing that fails from here on can make a saved action look unsaved.
    Window window(action, end_);
    size_ = window.size();
    const auto found =
        scan_actions(window, end_, loader_.index().frames().size(), ScanDepth::usual, loader_);
    return take_in(found, window);
}

/// Everything in front of `end_` as it stands in the file, and `more` behind it.
Result<void> GarageFile::copy_with(const OpenFile& to, ByteView more) const {
    try {
        const auto from = open_file(around_.files, path_, OpenMode::read);
        if (!from) return pass_on(io_problem(path_, "read", from.error()));
        Window window(*from, end_);
        for (std::uint64_t at = 0; at < end_;) {
            const auto length = std::min<std::uint64_t>(Window::usual_bytes, end_ - at);
            const auto bytes = window.view(at, static_cast<std::size_t>(length));
            if (const auto put = write_fully(to, at, bytes); !put)
                return pass_on(io_problem(path_, "saved in another place", put.error()));
            at += length;
        }
        const auto put = write_fully(to, end_, more);
        if (!put) return pass_on(io_problem(path_, "saved in another place", put.error()));
        return {};
    } catch (const IoFailure& failure) {
        return pass_on(io_problem(path_, "read", failure.error));
    }
}

Result<void> GarageFile::save_elsewhere(const std::string& path) const {
    if (!has_unsaved()) return refuse("There is nothing here that could not be saved.", file_place(path_));
    const auto made = make_file(around_.files, path, [&](const OpenFile& to) { return copy_with(to, unsaved_); });
    if (!made) return made;
    const auto written = open(around_, path, ScanDepth::everything);
    if (written && written->torn_bytes() == 0 && written->bytes() == end_ + unsaved_.size()) return {};
    static_cast<void>(around_.files.remove(path));
    if (!written) return pass_on(written.error());
    return fail(ProblemKind::io, "What was saved in another place does not read back.", file_place(path));
}

/// A program that died while it made the file may have left a name that no power cut would spare.
Io<void> GarageFile::open_to_write() {
    const auto before = file_ ? std::optional(file_->handle()) : std::nullopt;
    if (auto opened = keep_open(around_.files, path_, OpenMode::read_write, file_); !opened) return opened;
    if (file_->handle() == before) return {};
    auto named = sync_folder_of(around_.files, path_);
    if (!named) file_.reset();
    return named;
}

Result<void> GarageFile::append_under_lock(ScanDepth depth, const Make& make,
                                           const std::function<void()>& written) {
    if (unsafe_)
        return fail(ProblemKind::io, "An earlier save to this file failed; nothing more is written to it.",
                    file_place(path_));
    auto lock = FileLock::take(around_.files, path_, LockKind::exclusive, around_.patience, &lock_file_);
    if (!lock) return pass_on(lock.error());
    if (const auto opened = open_to_write(); !opened)
        return pass_on(io_problem(path_, "opened for writing", opened.error()));
    const OpenFile& file = *file_;
    if (const auto trusted = refuse_while_suspect(*lock, file); !trusted) return trusted;
    const auto caught_up = depth == ScanDepth::everything ? load(file, depth) : catch_up(file);
    if (!caught_up) return caught_up;
    if (const auto settled = settle_tail(file, *lock); !settled) return settled;
    const Result<Bytes> action = make();
    if (!action) return pass_on(action.error());
    if (action->empty()) return {};
    const auto appended = write(file, *lock, *action);
    if (appended) written();
    return appended;
}

void GarageFile::miss_notes(const IoError& error) {
    notes_file_.reset();
    const std::string notice = fmt::format(
        "The notes about this installation could not be kept in {} ({}). Your entries are not affected.",
        around_.state_folder, reason_of(error));
    if (notices_.empty() || notices_.back() != notice) notices_.push_back(notice);
}

Result<FileLock> GarageFile::lock_notes() {
    if (!notes_lock_file_) static_cast<void>(around_.files.make_folders(around_.state_folder));
    return FileLock::take(around_.files, notes_path(), LockKind::exclusive, around_.patience,
                          &notes_lock_file_);
}

Io<std::vector<ChainNote>> GarageFile::open_notes() {
    const auto open = keep_open(around_.files, notes_path(), OpenMode::read_write_or_create, notes_file_);
    if (!open) return tl::unexpected<IoError>(open.error());
    return load_chain_notes(*notes_file_);
}

void GarageFile::save_notes(const std::vector<ChainNote>& before, const std::vector<ChainNote>& notes) {
    if (!notes_file_) return; // told when it could not be opened
    if (const auto saved = save_changed_notes(*notes_file_, before, notes); !saved)
        miss_notes(saved.error());
}

Result<std::vector<std::string>> GarageFile::append(const std::vector<NewRecord>& records,
                                                    const std::vector<NewAttachment>& attachments) {
    NewAction action;
    std::size_t first = 0;
    // Held over all of it, inside the lock of the file: two copies of one garage share the notes.
    std::optional<Result<FileLock>> notes_lock;
    const auto make = [&]() -> Result<Bytes> {
        notes_lock.emplace(lock_notes());
        if (!*notes_lock && notes_lock->error().kind == ProblemKind::locked)
            return pass_on(notes_lock->error());
        const auto opened = open_notes();
        if (!opened) miss_notes(opened.error());
        const auto notes = opened.value_or(std::vector<ChainNote>{});
        auto made = make_action(records, attachments, notes, loader_.index(), around_.random);
        if (!made) return pass_on(made.error());
        action = std::move(*made);
        first = loader_.record_count();
        save_notes(notes, action.notes);
        return action.bytes;
    };
    const auto appended = append_under_lock(
        ScanDepth::usual, make, [&] { save_notes(action.notes, as_written(action.notes)); });
    if (!appended) return pass_on(appended.error());
    notices_.insert(notices_.end(), action.notices.begin(), action.notices.end());
    std::vector<std::string> ids(records.size());
    for (std::size_t i = 0; i < action.order.size(); ++i)
        ids[action.order[i]] = loader_.record_id(first + i);
    return ids;
}

Result<FingerprintRecord> GarageFile::take_fingerprint(RecordedTime now) {
    FingerprintRecord record;
    const auto make = [&]() -> Result<Bytes> {
        record = {.printed = now, .entries = loader_.entries(), .leaves = leaves_of(loader_.index())};
        for (const auto& saved : loader_.fingerprints()) {
            if (saved.fingerprint() != record.fingerprint()) continue;
            record = saved; // printed before, and nothing has changed since
            return Bytes{};
        }
        return encode_fingerprint_action(encode_fingerprint_record(record));
    };
    const auto appended = append_under_lock(ScanDepth::everything, make, [] {});
    if (!appended) return pass_on(appended.error());
    return record;
}

Result<FingerprintRecord> GarageFile::keep_time_stamp(const Hash256& fingerprint, Bytes time_stamp) {
    FingerprintRecord record;
    const auto make = [&]() -> Result<Bytes> {
        const auto& saved = loader_.fingerprints();
        const auto printed =
            std::ranges::find_if(saved, [&](const auto& one) { return one.fingerprint() == fingerprint; });
        if (printed == saved.end()) {
            return refuse("The time stamp is about a fingerprint that was never printed of this garage: " +
                          hex_text(fingerprint) + ".");
        }
        record = *printed;
        record.time_stamp = std::move(time_stamp);
        if (std::ranges::find(saved, record) != saved.end()) return Bytes{};
        const Bytes body = encode_fingerprint_record(record);
        if (body.empty() || body.size() > max_fingerprint_record_bytes - action_header_bytes - seal_bytes)
            return refuse("The time stamp is too long to be kept in the garage file.");
        return encode_fingerprint_action(body);
    };
    const auto appended = append_under_lock(ScanDepth::everything, make, [] {});
    if (!appended) return pass_on(appended.error());
    return record;
}

Result<GarageFile> GarageFile::create(Surroundings around, const std::string& path,
                                      const GarageSettings& settings, RecordedTime recorded) {
    FileLayer& files = around.files;
    if (files.identity(path)) {
        return refuse("There is already a file of this name. Choose another, or remove it yourself first.",
                      file_place(path));
    }
    const SubjectId subject{around.random.sixteen()};
    const auto action =
        make_action({{subject, {recorded, {}, settings}}}, {}, {}, ChainIndex{}, around.random);
    if (!action) return pass_on(action.error());
    Bytes bytes = encode_file_header(subject);
    put_bytes(bytes, action->bytes);
    GarageFile garage(std::move(around), path);
    if (const auto made = make_file(files, path, bytes); !made) return pass_on(made.error());
    garage.subject_ = subject;
    static_cast<void>(files.make_folders(garage.around_.state_folder));
    if (const auto notes = garage.open_notes(); !notes) garage.miss_notes(notes.error());
    garage.save_notes({}, as_written(action->notes));
    // Taken in from memory, as after an append.
    garage.identity_ = files.identity(path).value_or(FileIdentity{});
    garage.end_ = file_header_bytes;
    garage.size_ = bytes.size();
    Window window(bytes, 0);
    const auto found = scan_actions(window, garage.end_, 0, ScanDepth::usual, garage.loader_);
    const auto taken = garage.take_in(found, window);
    if (!taken) return pass_on(taken.error());
    return garage;
}

} // namespace sumpbook::store
