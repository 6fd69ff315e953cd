// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/garage_copy.h"

#include "model/store/damage_text.h"
#include "model/store/erasure.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::store {
namespace {

/// Collects the places of frames beside what they say.
class SetReader final : public ScanHandler {
public:
    explicit SetReader(const FrameSource& source)
        : source_(&source) {}

    void frame(const VerifiedFrame& verified, std::uint64_t at) override {
        loader.frame(verified, at);
        const auto shown = verified.frame.parts_shown();
        const auto length = static_cast<std::uint32_t>(encoded_length(verified));
        frames.push_back(
            {verified.hash, verified.frame.header, shown, {FrameCopy{source_, at, length, shown}}});
    }
    void fingerprint_record(ByteView body) override { loader.fingerprint_record(body); }
    void action_done(bool good) override {
        loader.action_done(good);
        if (good) good_ = frames.size();
        frames.resize(good_);
    }

    Loader loader;
    std::vector<SetFrame> frames;

private:
    const FrameSource* source_;
    std::size_t good_ = 0;
};

Result<GarageCopy> read_opened(const OpenedSource& opened) {
    const auto& path = opened.source->path;
    Window window(opened.source->file, opened.bytes);
    const auto head = static_cast<std::size_t>(std::min<std::uint64_t>(opened.bytes, file_header_bytes));
    const auto garage = read_file_header(window.view(0, head), path);
    if (!garage) return pass_on(garage.error());
    SetReader reader(*opened.source);
    reader.loader.expect(opened.bytes);
    const auto found = scan_actions(window, file_header_bytes, 0, ScanDepth::everything, reader);
    if (!found.damages.empty() || found.tail == Tail::damaged)
        return pass_on(damage_problem(path, found, reader.loader.index()));
    if (reader.loader.fault()) return pass_on(fault_problem(path, *reader.loader.fault()));
    auto set =
        FrameSet::of(*garage, std::move(reader.frames), reader.loader.fingerprints(), {opened.source});
    if (!set) return pass_on(set.error());
    set->keep_erased(erased_frames(reader.loader.records()));
    GarageCopy copy{.set = *std::move(set),
                    .contents = std::move(reader.loader),
                    .bytes = opened.bytes,
                    .mode = opened.mode,
                    .notices = {}};
    if (found.tail == Tail::torn) {
        copy.notices.push_back(fmt::format("The last save in {} was cut short and is left out ({} bytes at "
                                           "its end). Everything before it verifies.",
                                           path, opened.bytes - found.good_end));
    }
    return copy;
}

} // namespace

Result<OpenedSource> open_source(FileLayer& files, const std::string& path, Patience patience) {
    const auto problem = [&](const IoError& error) { return pass_on(io_problem(path, "read", error)); };
    auto itself = files.real_path(path);
    if (!itself) return problem(itself.error());
    auto opened = open_locked(files, *itself, patience);
    if (!opened) return pass_on(opened.error());
    const auto size = files.size(opened->file.handle());
    if (!size) return problem(size.error());
    const auto mode = files.mode(opened->file.handle());
    if (!mode) return problem(mode.error());
    auto source = std::make_shared<FrameSource>(
        FrameSource{*std::move(itself), std::move(opened->file), std::move(opened->lock)});
    return OpenedSource{std::move(source), *size, *mode};
}

Result<GarageCopy> read_copy(FileLayer& files, const std::string& path, Patience patience) {
    const auto opened = open_source(files, path, patience);
    if (!opened) return pass_on(opened.error());
    try {
        return read_opened(*opened);
    } catch (const IoFailure& failure) {
        return pass_on(io_problem(path, "read", failure.error));
    }
}

} // namespace sumpbook::store
