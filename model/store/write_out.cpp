// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/write_out.h"

#include "model/store/action.h"
#include "model/store/loader.h"
#include "model/store/tail.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::size_t head_bytes = frame_unhashed_bytes + frame_header_bytes + hash_bytes;

Result<Bytes> read_piece(const FrameCopy& copy, std::size_t from, std::size_t length) {
    Bytes bytes(length);
    const auto got = read_fully(copy.source->file, copy.at + from, bytes);
    if (!got) return pass_on(io_problem(copy.source->path, "read", got.error()));
    if (*got != length)
        return pass_on(io_problem(copy.source->path, "read", IoError{IoFault::ended, 0}));
    return bytes;
}

Problem changed_meanwhile(const std::string& path) {
    return {ProblemKind::damaged,
            "The file was changed by another program while it was read. Nothing was written; try again.",
            Place{.file = path, .line = {}, .column = {}, .text = {}}};
}

/// Bytes on their way into a file, in pieces worth a system call.
class Output {
public:
    Output(const OpenFile& file, std::string path)
        : file_(&file)
        , path_(std::move(path)) {}

    Result<void> add(ByteView bytes) {
        put_bytes(buffer_, bytes);
        return buffer_.size() < Window::usual_bytes ? Result<void>() : flush();
    }
    Result<void> flush() {
        const auto written = write_fully(*file_, at_, buffer_);
        if (!written) return pass_on(io_problem(path_, "written", written.error()));
        at_ += buffer_.size();
        buffer_.clear();
        return {};
    }
    [[nodiscard]] std::uint64_t written() const { return at_; }

private:
    const OpenFile* file_;
    std::string path_;
    Bytes buffer_;
    std::uint64_t at_ = 0;
};

/// The frame with its parts put together from all copies, or left out.
Result<Bytes> composed_records(const SetFrame& set_frame) {
    Frame frame{.header = set_frame.header, .parts = {}};
    std::vector<Bytes> held; // what the parts are views into
    for (const auto& copy : set_frame.copies) {
        auto bytes = read_piece(copy, 0, copy.length);
        if (!bytes) return pass_on(bytes.error());
        held.push_back(*std::move(bytes));
        const auto start = read_frame_start(held.back());
        if (!start || start->length != copy.length) return pass_on(changed_meanwhile(copy.source->path));
        const auto verified = verify_frame(*start, held.back());
        if (!verified || verified->hash != set_frame.hash)
            return pass_on(changed_meanwhile(copy.source->path));
        for (std::size_t slot = 0; slot < part_slots; ++slot) {
            const auto& part = verified->frame.parts[slot];
            const bool show = part.shown && (set_frame.shown & bit_of(slot)) != 0;
            if (show || !frame.parts[slot].shown) frame.parts[slot] = show ? part : withheld_part(part.hash);
        }
    }
    return encode_frame(frame);
}

Result<Bytes> withheld_attachment(const SetFrame& set_frame) {
    const auto head = read_piece(set_frame.copies.front(), 0, head_bytes);
    if (!head) return pass_on(head.error());
    Frame frame{.header = set_frame.header, .parts = {}};
    frame.parts[attachment_slot] = withheld_part(get_array<hash_bytes>(*head, head_bytes - hash_bytes));
    return encode_frame(frame);
}

Result<void> copy_over(const FrameCopy& copy, Output& out) {
    for (std::size_t done = 0; done < copy.length;) {
        const auto piece = read_piece(copy, done, std::min<std::size_t>(copy.length - done, Window::usual_bytes));
        if (!piece) return pass_on(piece.error());
        if (const auto added = out.add(*piece); !added) return added;
        done += piece->size();
    }
    return {};
}

Result<void> write_frame(const SetFrame& frame, Output& out) {
    const auto as_is = std::ranges::find(frame.copies, frame.shown, &FrameCopy::shown);
    if (as_is != frame.copies.end()) {
        if (const auto added = out.add(encode_action_header(as_is->length, 1)); !added) return added;
        return copy_over(*as_is, out);
    }
    const auto bytes = frame.header.kind == FrameKind::attachment ? withheld_attachment(frame)
                                                                   : composed_records(frame);
    if (!bytes) return pass_on(bytes.error());
    if (const auto added = out.add(encode_action_header(bytes->size(), 1)); !added) return added;
    return out.add(*bytes);
}

Result<void> write_all(const FrameSet& set, Output& out) {
    if (const auto added = out.add(encode_file_header(set.garage())); !added) return added;
    for (const auto& frame : set.frames()) {
        if (const auto written = write_frame(frame, out); !written) return written;
    }
    for (const auto& record : set.fingerprints()) {
        const auto action = encode_fingerprint_action(encode_fingerprint_record(record));
        if (const auto added = out.add(action); !added) return added;
    }
    return out.flush();
}

/// Compares what reads back with what was to be written.
class Comparison final : public ScanHandler {
public:
    explicit Comparison(const FrameSet& set)
        : set_(&set) {}

    void frame(const VerifiedFrame& frame, std::uint64_t at) override {
        const auto& all = set_->frames();
        same_ = same_ && next_ < all.size() && all[next_].hash == frame.hash &&
                all[next_].shown == frame.frame.parts_shown();
        ++next_;
        loader.frame(frame, at);
    }
    void fingerprint_record(ByteView body) override { loader.fingerprint_record(body); }
    void action_done(bool good) override { loader.action_done(good); }

    [[nodiscard]] bool same() const {
        return same_ && next_ == set_->frames().size() && loader.fingerprints() == set_->fingerprints();
    }
    Loader loader;

private:
    const FrameSet* set_;
    std::size_t next_ = 0;
    bool same_ = true;
};

Result<void> read_back(const OpenFile& file, std::uint64_t size, const FrameSet& set, WrittenOut& written) {
    const Place place{.file = written.path, .line = {}, .column = {}, .text = {}};
    Window window(file, size);
    Comparison comparison(set);
    comparison.loader.expect(size);
    const auto garage = read_file_header(window.view(0, file_header_bytes), written.path);
    const auto found = scan_actions(window, file_header_bytes, 0, ScanDepth::everything, comparison);
    if (const auto& fault = comparison.loader.fault()) {
        return fail(fault->kind, "This cannot be one garage file: it " + fault->what + ". Nothing was written.",
                    place);
    }
    if (garage != set.garage() || found.tail != Tail::whole || !found.damages.empty() || !comparison.same()) {
        return fail(ProblemKind::io,
                    "What was written does not read back as it should, so it was removed again. The disk, or "
                    "a file that was read, may be failing.",
                    place);
    }
    written.bytes = size;
    written.frames = set.frames().size();
    written.entries = comparison.loader.entries();
    written.fingerprints = set.fingerprint_count();
    return {};
}

Result<void> fill(const OpenFile& file, const FrameSet& set, std::optional<std::uint32_t> mode,
                  WrittenOut& written) {
    if (mode) {
        if (const auto done = file.layer().set_mode(file.handle(), *mode); !done)
            return pass_on(io_problem(written.path, "made", done.error()));
    }
    Output out(file, written.path);
    if (const auto done = write_all(set, out); !done) return done;
    try {
        return read_back(file, out.written(), set, written);
    } catch (const IoFailure& failure) {
        return pass_on(io_problem(written.path, "read back", failure.error));
    }
}

} // namespace

Result<WrittenOut> write_out(FileLayer& files, const FrameSet& set, const std::string& path,
                             std::optional<std::uint32_t> mode) {
    if (files.identity(path)) {
        return refuse("There is already a file of this name. Choose another, or remove it yourself first.",
                      {.file = path, .line = {}, .column = {}, .text = {}});
    }
    WrittenOut written{.path = path, .bytes = 0, .frames = 0, .entries = 0, .fingerprints = 0};
    const auto made = make_file(files, path, [&](const OpenFile& file) { return fill(file, set, mode, written); });
    if (!made) return pass_on(made.error());
    return written;
}

} // namespace sumpbook::store
