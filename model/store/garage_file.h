// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/emptied_frames.h"
#include "model/store/erasure.h"
#include "model/store/file_lock.h"
#include "model/store/fingerprint.h"
#include "model/store/loader.h"
#include "model/store/new_action.h"

#include <functional>
#include <string>
#include <vector>

namespace sumpbook::store {

/// What a garage file is read and written with.
struct Surroundings {
    FileLayer& files;
    RandomSource& random;
    std::string state_folder; ///< For the notes about this installation's own chains.
    Patience patience;
    unsigned threads = 1; ///< That verify a long file at the same time.
};

/// What was erased.
struct Erased {
    std::string id;              ///< Of the withdrawal that says so.
    std::size_t versions = 0;    ///< Of the entry.
    std::size_t copies = 0;      ///< Records saved with them that were recorded again.
    std::size_t attachments = 0; ///< Whose bytes are gone.
};

/// A garage file that was read and verified. Other programs may append, and what they wrote is taken in
/// before anything is added. What is written through stays open between calls and is checked each time to be
/// what still stands under its name; it is closed with this object, which the file layer must outlive.
class GarageFile {
public:
    /// Makes a file with its settings in it: temporary name, sync, rename, sync of the folder. Refused where
    /// something stands already; nothing is left behind when it fails.
    [[nodiscard]] static Result<GarageFile> create(Surroundings around, const std::string& path,
                                                   const GarageSettings& settings, RecordedTime recorded);
    /// Problems: io, locked, damaged (with frame and place), newer_format, refused (past a limit). An action
    /// at the end that was never written completely is left out, with a notice. Where `path` is a link it is
    /// the file itself that is named from here on, and locked: it has one lock under all its names.
    [[nodiscard]] static Result<GarageFile> open(Surroundings around, const std::string& path,
                                                 ScanDepth depth = ScanDepth::usual);

    [[nodiscard]] const SubjectId& subject() const { return subject_; }
    /// In file order. They were verified when the file was read and are made when this is first called, which
    /// two threads may not do at once.
    [[nodiscard]] const std::vector<NamedRecord>& records() const { return loader_.records(); }
    [[nodiscard]] const ChainIndex& index() const { return loader_.index(); }
    [[nodiscard]] const std::vector<FingerprintRecord>& fingerprints() const {
        return loader_.fingerprints();
    }
    /// Frames whose money (or other) part exists but is not in this file.
    [[nodiscard]] std::size_t withheld(Part part) const { return loader_.withheld(part); }
    [[nodiscard]] const std::vector<AttachmentSpot>& attachments() const {
        return loader_.attachments();
    }
    /// Bytes at the end of the file, of a save that was cut short; they are left out.
    [[nodiscard]] std::uint64_t torn_bytes() const { return tail_ == Tail::torn ? size_ - end_ : 0; }
    /// Sentences the owner should see once.
    [[nodiscard]] const std::vector<std::string>& notices() const { return notices_; }
    /// `frame-missing`, `chain-forked`, `not-written-here`.
    [[nodiscard]] std::vector<Finding> findings() const;
    [[nodiscard]] std::uint64_t bytes() const { return end_; }
    /// Of all frames, also of those whose open part is not here.
    [[nodiscard]] std::size_t entries() const { return loader_.entries(); }

    /// Whether what stands under its name is still the file that was read, no longer and no shorter. It costs
    /// three calls of the system: for those who look several times a second.
    [[nodiscard]] bool is_as_seen() const;
    /// Takes in what other programs appended; true if there was anything.
    [[nodiscard]] Result<bool> refresh();

    /// Writes all records and attachments as one action: it is on the disk, whole, when this returns, or
    /// nothing of it is in the file. Returns the ids for people, in the order given. After a failed sync the
    /// file takes no more from this program or any other until the machine was restarted or the file
    /// replaced.
    [[nodiscard]] Result<std::vector<std::string>> append(const std::vector<NewRecord>& records,
                                                          const std::vector<NewAttachment>& attachments = {});

    /// Whether a sync failed and what was to be saved is only in memory.
    [[nodiscard]] bool has_unsaved() const { return !unsaved_.empty(); }
    /// Then: makes a new file of everything that is saved in this one and of what could not be, on the disk and
    /// read back when this returns. Refused where `path` exists. Problems: as create() and open().
    [[nodiscard]] Result<void> save_elsewhere(const std::string& path) const;

    /// Takes what all versions of the entry said, and attachments that only they refer to, out of the file
    /// and leaves the hashes (see erasure.h). The file is replaced by one written anew: it is the old or the
    /// new one at any time. `entry` names any version. Refused where other records stand in the same save and
    /// a part of it was left out of this file: a copy of them would lack it.
    [[nodiscard]] Result<Erased> erase(const RecordName& entry, std::optional<std::string> reason,
                                       RecordedTime now);

    /// The bytes of an attachment, verified. Refused when they are withheld or not here. Problem `io` where
    /// another file has taken the place of the one that was read: read again what the places of attachments
    /// are (refresh).
    [[nodiscard]] Result<Bytes> attachment(const Hash256& part_hash) const;

    /// Reads every attachment that is here: the part hashes of those whose bytes do not match, in file order.
    /// Problems: as attachment().
    [[nodiscard]] Result<std::vector<Hash256>> damaged_attachments() const;

    /// Reads and verifies the whole file again, saves the record of its fingerprint and returns it. Printing
    /// twice without a change in between adds nothing.
    [[nodiscard]] Result<FingerprintRecord> take_fingerprint(RecordedTime now);
    /// Keeps an authority's answer about a fingerprint that was printed of this garage before, as one more
    /// record of it. Refused: no such fingerprint, too long. The same answer twice adds nothing.
    [[nodiscard]] Result<FingerprintRecord> keep_time_stamp(const Hash256& fingerprint, Bytes time_stamp);
    /// `only`: about this subject alone.
    [[nodiscard]] FingerprintCheck check(const TypedFingerprint& typed,
                                         const std::optional<SubjectId>& only = {}) const;

private:
    GarageFile(Surroundings around, std::string path)
        : around_(std::move(around))
        , path_(std::move(path)) {}

    [[nodiscard]] Result<void> load(const OpenFile& file, ScanDepth depth);
    [[nodiscard]] Result<void> scan(const OpenFile& file, std::uint64_t size, ScanDepth depth);
    [[nodiscard]] Result<void> take_in(const Scan& found, Window& window);
    [[nodiscard]] Result<void> catch_up(const OpenFile& file);
    [[nodiscard]] Result<bool> is_known(const OpenFile& file) const;
    [[nodiscard]] Result<LockedFile> open_known() const;
    [[nodiscard]] Io<void> open_to_write();
    [[nodiscard]] Result<void> settle_tail(const OpenFile& file, FileLock& lock);
    [[nodiscard]] Result<void> refuse_while_suspect(FileLock& lock, const OpenFile& file) const;
    [[nodiscard]] Result<void> write(const OpenFile& file, FileLock& lock, ByteView action);
    [[nodiscard]] Result<void> copy_with(const OpenFile& to, ByteView more) const;
    [[nodiscard]] Problem failed_sync(const OpenFile& file, FileLock& lock, const IoError& error);

    /// Makes the bytes to append, with the file locked and read up to its end; none: nothing to do.
    using Make = std::function<Result<Bytes>()>;
    [[nodiscard]] Result<void> append_under_lock(ScanDepth depth, const Make& make,
                                                 const std::function<void()>& written);

    [[nodiscard]] Result<Erased> rewrite_without(const Erasure& erasure, std::optional<std::string> reason,
                                                 RecordedTime now);
    [[nodiscard]] Result<void> write_anew(const OpenFile& to, const std::vector<Patch>& patches,
                                          ByteView added) const;
    [[nodiscard]] Result<void> read_back(const OpenFile& file, const EmptiedFrames& emptied,
                                         GarageFile& written) const;
    [[nodiscard]] Result<void> replace_by(const EmptiedFrames& emptied, ByteView added);

    [[nodiscard]] std::string notes_path() const;
    [[nodiscard]] Result<FileLock> lock_notes();
    /// Opens the notes if need be; an error: they can be neither read nor written.
    [[nodiscard]] Io<std::vector<ChainNote>> open_notes();
    /// `before`: what was read or written last.
    void save_notes(const std::vector<ChainNote>& before, const std::vector<ChainNote>& notes);
    void miss_notes(const IoError& error);

    Surroundings around_;
    std::string path_;
    SubjectId subject_;
    FileIdentity identity_;
    Loader loader_;
    std::uint64_t end_ = 0; ///< End of the last good action.
    /// The bytes in front of it: the seal of the last frame or fingerprint record, or the end of the header.
    std::array<std::uint8_t, seal_bytes> last_seal_{};
    Tail tail_ = Tail::whole;
    std::uint64_t size_ = 0; ///< Of the file when it was last looked at.
    bool unsafe_ = false;    ///< A sync failed: nothing more is written here.
    Bytes unsaved_;          ///< The action that was to be saved then.
    std::vector<std::string> notices_;

    // Kept open from one append to the next: opening costs more than all else but the disk.
    std::optional<OpenFile> file_, lock_file_, notes_file_, notes_lock_file_;
};

} // namespace sumpbook::store
