// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/chain_index.h"
#include "model/store/file_layer.h"
#include "model/store/file_lock.h"
#include "model/store/fingerprint.h"

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::store {

/// A file that frames of a set stand in, open and locked for reading as long as a set refers to it.
struct FrameSource {
    std::string path;
    OpenFile file;
    std::optional<FileLock> lock;
};

/// Where the bytes of a frame stand.
struct FrameCopy {
    const FrameSource* source = nullptr;
    std::uint64_t at = 0;
    std::uint32_t length = 0;
    std::uint8_t shown = 0; ///< Parts that are shown there.
    bool operator==(const FrameCopy&) const = default;
};

/// One frame of a garage. Its bytes stay in the files: a set of a million frames is small, attachments or not.
struct SetFrame {
    Hash256 hash{};
    FrameHeader header;
    std::uint8_t shown = 0;        ///< Parts that the set shows, each of which one of the copies shows.
    std::vector<FrameCopy> copies; ///< One almost always; more where files withhold different parts.
};

/// A garage as what it is: a set of frames, and of fingerprint records. What a frame hash, and so the name of
/// a frame, says is one and the same in all files; what differs is which parts they show.
class FrameSet {
public:
    /// The empty garage of this subject.
    explicit FrameSet(const SubjectId& garage = {})
        : garage_(garage) {}
    /// Frames in any order, also twice the same. Refused: a chain that speaks of two subjects.
    [[nodiscard]] static Result<FrameSet> of(const SubjectId& garage, std::vector<SetFrame> frames,
                                             std::vector<FingerprintRecord> records,
                                             std::vector<std::shared_ptr<const FrameSource>> sources);

    [[nodiscard]] const SubjectId& garage() const { return garage_; }
    /// In canonical order: subject, chain, sequence, hash.
    [[nodiscard]] const std::vector<SetFrame>& frames() const { return frames_; }
    [[nodiscard]] const SetFrame* find(const SetFrame& like) const;
    /// In canonical order, by their hash: everything known of the leaves of a record stands in one.
    [[nodiscard]] std::vector<FingerprintRecord> fingerprints() const;
    [[nodiscard]] std::size_t fingerprint_count() const { return records_.size(); }

    /// The union: every frame and every record of both, and of every frame each part that one of them shows.
    /// Refused, with nothing changed: another garage, a chain that speaks of two subjects.
    [[nodiscard]] Result<void> unite(const FrameSet& other);
    /// The frames of chosen subjects of another garage, and all its fingerprint records: they go on
    /// verifying. Refused: a chain that speaks of two subjects.
    [[nodiscard]] Result<void> adopt(const FrameSet& other, const std::set<SubjectId>& subjects);

    /// Frames that a record of these files says were erased: what they held is shown no more, here and in every
    /// union with this set, whatever another copy still has.
    void keep_erased(const std::set<Hash256>& erased);
    [[nodiscard]] const std::set<Hash256>& erased() const { return erased_; }

    /// Only this subject, without the parts whose bits are in `withheld`. Of fingerprint records the heads of
    /// this subject stay and the bare leaves of the others.
    [[nodiscard]] FrameSet hand_over(const SubjectId& subject, std::uint8_t withheld) const;

    /// The chains, as a file in canonical order has them.
    [[nodiscard]] ChainIndex chains() const;

private:
    [[nodiscard]] Result<void> take(const std::vector<SetFrame>& frames);
    void take(const FingerprintRecord& record);
    void keep_open(const FrameSet& other);

    SubjectId garage_;
    void hide_erased();
    std::vector<SetFrame> frames_;
    std::set<Hash256> erased_;
    /// By the hash of the record with bare leaves: what is known of the leaves is put together.
    std::map<Hash256, FingerprintRecord> records_;
    std::vector<std::shared_ptr<const FrameSource>> sources_;
};

} // namespace sumpbook::store
