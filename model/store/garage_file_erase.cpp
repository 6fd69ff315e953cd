// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_file.h"

#include "model/store/action.h"
#include "model/store/tail.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

namespace sumpbook::store {
namespace {

/// Puts the frames of an action that is still in memory behind those of an index, and names its records.
class Ahead final : public ScanHandler {
public:
    explicit Ahead(const ChainIndex& before)
        : index(before) {}
    void frame(const VerifiedFrame& verified, std::uint64_t place) override {
        IndexedFrame frame;
        frame.hash = verified.hash;
        frame.at = place;
        frame.record_count = verified.frame.header.entry_count;
        if (index.add(verified.frame.header, frame) != nullptr)
            throw std::logic_error("an action was made that does not go behind the others");
        for (std::uint32_t i = 0; i < frame.record_count; ++i)
            names.push_back({verified.hash, i});
    }
    void fingerprint_record(ByteView /*body*/) override {}
    void action_done(bool /*good*/) override {}

    ChainIndex index;
    std::vector<RecordName> names; ///< In the order of the action.
};

/// In the order they were given in.
std::vector<RecordName> names_in(const NewAction& action, const std::vector<RecordName>& written) {
    std::vector<RecordName> names(written.size());
    for (std::size_t i = 0; i < action.order.size(); ++i)
        names[action.order[i]] = written[i];
    return names;
}

/// The notes while it is not known whether the file was replaced: both ends are this installation's own.
std::vector<ChainNote> notes_between(const std::vector<ChainNote>& before, std::vector<ChainNote> after) {
    for (auto& note : after) {
        const auto same = std::ranges::find(before, note.chain, &ChainNote::chain);
        const auto old_end = same == before.end() ? std::optional<ChainEnd>() : same->written;
        if (note.written == old_end) continue;
        note.about_to_write = note.written;
        note.written = old_end;
    }
    return after;
}

/// The actions that record again what would be lost, one behind the other.
struct Added {
    Bytes bytes;
    std::vector<ChainNote> notes; ///< Once they are on the disk.
    std::vector<std::string> notices;
};

Result<Added> added_actions(const Erasure& erasure, const std::vector<NamedRecord>& records,
                            const std::vector<NewRecord>& first, std::vector<ChainNote> notes,
                            const ChainIndex& index, RandomSource& random) {
    auto one = make_action(first, {}, std::move(notes), index, random);
    if (!one) return pass_on(one.error());
    Added added{one->bytes, as_written(std::move(one->notes)), std::move(one->notices)};
    if (erasure.current.empty()) return added;
    Ahead ahead(index);
    Window window(ByteView(one->bytes), 0);
    static_cast<void>(scan_actions(window, 0, 0, ScanDepth::usual, ahead));
    auto names = names_in(*one, ahead.names);
    names.erase(names.begin()); // the withdrawal
    auto two =
        make_action(second_copies(erasure, records, names), {}, std::move(added.notes), ahead.index, random);
    if (!two) return pass_on(two.error());
    put_bytes(added.bytes, two->bytes);
    added.notes = as_written(std::move(two->notes));
    added.notices.insert(added.notices.end(), two->notices.begin(), two->notices.end());
    return added;
}

/// Whether a record that is not erased stands in a frame of which a part was left out before.
bool copy_would_lack(const Erasure& erasure, const std::vector<NamedRecord>& records,
                     const std::set<Hash256>& incomplete) {
    const auto lacks = [&](std::size_t i) { return incomplete.contains(records[i].name.frame_hash); };
    return std::ranges::any_of(erasure.earlier, lacks) || std::ranges::any_of(erasure.current, lacks);
}

} // namespace

/// Copies what stays, empties the frames and adds the actions, with the permissions of the old file.
Result<void> GarageFile::write_anew(const OpenFile& to, const std::vector<Patch>& patches,
                                    ByteView added) const {
    FileLayer& files = around_.files;
    const auto problem = [&](const IoError& error) {
        return pass_on(io_problem(path_, "written anew; nothing was changed", error));
    };
    const auto old = open_file(files, path_, OpenMode::read);
    if (!old) return problem(old.error());
    const auto mode = files.mode(old->handle());
    if (!mode) return problem(mode.error());
    if (const auto set = files.set_mode(to.handle(), *mode); !set) return problem(set.error());
    const auto copied = copy_patched(*old, end_, patches, to);
    if (!copied) return problem(copied.error());
    if (const auto put = write_fully(to, *copied, added); !put) return problem(put.error());
    return {};
}

/// Reads the new file back in full, before it takes the place of the one that this program knows.
Result<void> GarageFile::read_back(const OpenFile& file, const EmptiedFrames& emptied,
                                   GarageFile& written) const {
    if (auto read = written.load(file, ScanDepth::everything); !read) return read;
    if (written.tail_ != Tail::whole)
        return pass_on(io_problem(path_, "written anew; nothing was changed", {IoFault::ended, 0}));
    try {
        Window window(file, written.size_);
        if (!are_emptied(window, file_header_bytes, emptied.frames)) {
            return fail(ProblemKind::io,
                        "What was written does not read back as it should. Nothing was changed; the disk may "
                        "be failing.",
                        file_place(path_));
        }
    } catch (const IoFailure& failure) {
        return pass_on(io_problem(path_, "written anew; nothing was changed", failure.error));
    }
    const auto identity = around_.files.identity(path_);
    if (!identity) return pass_on(io_problem(path_, "written anew; nothing was changed", identity.error()));
    if (*identity == identity_) return {};
    return fail(ProblemKind::io,
                "Another file took the place of this garage file meanwhile. Nothing was changed; try again.",
                file_place(path_));
}

Result<void> GarageFile::replace_by(const EmptiedFrames& emptied, ByteView added) {
    FileLayer& files = around_.files;
    GarageFile written(around_, path_);
    auto replaced = replace_file(
        files, path_, [&](const OpenFile& file) { return write_anew(file, emptied.patches, added); },
        [&](const OpenFile& file) { return read_back(file, emptied, written); });
    if (!replaced) return replaced;
    identity_ = written.identity_;
    loader_ = std::move(written.loader_);
    end_ = written.end_;
    last_seal_ = written.last_seal_;
    size_ = written.size_;
    tail_ = written.tail_;
    const auto synced = sync_folder_of(files, path_);
    if (synced) return {};
    return fail(ProblemKind::io,
                fmt::format("It is erased in the file as it is now, but the disk did not confirm it ({}): "
                            "after a power cut the old file may be back. Look again after the next start "
                            "of the machine.",
                            reason_of(synced.error())),
                file_place(path_));
}

Result<Erased> GarageFile::rewrite_without(const Erasure& erasure, std::optional<std::string> reason,
                                           RecordedTime now) {
    const auto file = open_file(around_.files, path_, OpenMode::read);
    if (!file) return pass_on(io_problem(path_, "read", file.error()));
    EmptiedFrames emptied;
    try {
        Window window(*file, end_);
        emptied = empty_frames(window, file_header_bytes, erasure.frames, erasure.attachments);
    } catch (const IoFailure& failure) {
        return pass_on(io_problem(path_, "read", failure.error));
    }
    const auto here = std::ranges::count_if(
        attachments(), [&](const auto& spot) { return erasure.attachments.contains(spot.hash); });
    if (!emptied.complete || emptied.attachments != static_cast<std::size_t>(here)) {
        return fail(ProblemKind::io,
                    "The garage file was changed while it was read. Nothing is erased yet; try again.",
                    file_place(path_));
    }
    if (copy_would_lack(erasure, records(), emptied.incomplete)) {
        return refuse("Other entries were saved together with this one, and parts of that save were left out "
                      "of this file. They can be kept whole only in the garage that it was made from: erase "
                      "it there.",
                      file_place(path_));
    }
    const auto known = open_notes();
    if (!known) miss_notes(known.error());
    const auto before = known.value_or(std::vector<ChainNote>{});
    const auto first = first_copies(erasure, records(), emptied.frames, std::move(reason), now);
    auto added = added_actions(erasure, records(), first, before, index(), around_.random);
    if (!added) return pass_on(added.error());
    const auto between = notes_between(before, added->notes);
    save_notes(before, between);
    if (auto replaced = replace_by(emptied, added->bytes); !replaced)
        return pass_on(replaced.error());
    save_notes(between, added->notes);
    notices_.insert(notices_.end(), added->notices.begin(), added->notices.end());
    const auto places = 1 + erasure.copies();
    return Erased{records()[records().size() - places].id, erasure.versions.size(), erasure.copies(),
                  emptied.attachments};
}

Result<Erased> GarageFile::erase(const RecordName& entry, std::optional<std::string> reason,
                                 RecordedTime now) {
    const RecordName name = entry; // it may stand among the records that are read anew here
    Result<Erased> done = Erased{};
    const auto make = [&]() -> Result<Bytes> {
        const auto erasure = plan_erasure(records(), name);
        if (!erasure) return pass_on(erasure.error());
        const auto notes_lock = lock_notes();
        if (!notes_lock && notes_lock.error().kind == ProblemKind::locked) return pass_on(notes_lock.error());
        done = rewrite_without(*erasure, std::move(reason), now);
        if (!done) return pass_on(done.error());
        return Bytes{}; // nothing more to append
    };
    const auto written = append_under_lock(ScanDepth::everything, make, [] {});
    if (!written) return pass_on(written.error());
    return done;
}

} // namespace sumpbook::store
