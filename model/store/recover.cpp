// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/recover.h"

#include "model/store/damage_text.h"
#include "model/store/garage_copy.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::size_t subject_at = 16;
constexpr std::size_t check_at = 32;

struct KnownGarage {
    GarageKnown how = GarageKnown::nowhere;
    SubjectId subject;
};

/// A header of which any number of bytes is wrong outside the id, or one in it: its check tells.
std::optional<SubjectId> mended(ByteView header) {
    const auto matches = [&](const SubjectId& subject) {
        return std::ranges::equal(ByteView(encode_file_header(subject)).subspan(check_at),
                                  header.subspan(check_at));
    };
    SubjectId subject{get_array<16>(header, subject_at)};
    if (matches(subject)) return subject;
    for (auto& byte : subject.bytes) {
        const auto as_read = byte;
        for (unsigned value = 0; value < 256; ++value) {
            byte = static_cast<std::uint8_t>(value);
            if (matches(subject)) return subject;
        }
        byte = as_read;
    }
    return std::nullopt;
}

KnownGarage garage_of(ByteView header, const Salvage& found, RandomSource& random) {
    if (header.size() == file_header_bytes) {
        if (const auto subject = mended(header)) return {GarageKnown::mended, *subject};
    }
    // Only a garage has settings, and it has one subject.
    if (found.with_settings.size() == 1) return {GarageKnown::settings, *found.with_settings.begin()};
    return {GarageKnown::nowhere, SubjectId{random.sixteen()}};
}

/// What the chain names as standing before its frames and is not here.
void find_missing(const ChainIndex& index, const ChainId& id, const BikeNames& names,
                  std::vector<MissingFrames>& missing) {
    const auto& chain = index.chains().at(id);
    std::optional<std::uint32_t> before; // the highest sequence below
    std::optional<std::uint32_t> last;
    for (const auto place : chain.frames) {
        const auto& frame = index.frames()[place];
        if (last && *last != frame.sequence) before = last;
        last = frame.sequence;
        if (frame.sequence == 0 || frame.parent) continue;
        const auto until = frame.sequence - 1;
        const auto from = before ? std::min(*before + 1, until) : 0;
        const bool told = !missing.empty() && missing.back().chain == chain.name && missing.back().last == until;
        if (!told) missing.push_back({chain.name, chain.subject, names.of(chain.subject), from, until});
    }
}

RecoverPlan plan_of(const Salvage& found, FrameSet set) {
    RecoverPlan plan;
    const auto index = set.chains();
    for (const auto& [id, chain] : index.chains())
        find_missing(index, id, found.names, plan.missing);
    for (const auto& frame : set.frames())
        plan.entries += frame.header.entry_count;
    for (const auto& damage : found.broken)
        plan.broken.push_back({damage.at, damage.until, damage.what,
                               damage.header ? heading_text(*damage.header, index) : std::string()});
    plan.left_out = found.left_out;
    plan.attachments_dropped = found.attachments_dropped;
    plan.search_stopped = found.stopped;
    plan.set = std::move(set);
    return plan;
}

Problem later_version(const std::string& path) {
    return {ProblemKind::newer_format,
            "The file holds frames written by a later version of this program. Recover it with that version; "
            "it was left untouched.",
            Place{.file = path, .line = {}, .column = {}, .text = {}}};
}

Result<RecoverPlan> recover_opened(const OpenedSource& opened, RandomSource& random) {
    const auto& path = opened.source->path;
    Window window(opened.source->file, opened.bytes);
    const auto head = window.view(
        0, static_cast<std::size_t>(std::min<std::uint64_t>(opened.bytes, file_header_bytes)));
    const Bytes header(head.begin(), head.end());
    const auto stated = read_file_header(header, path);
    if (!stated && stated.error().kind == ProblemKind::newer_format) return pass_on(stated.error());
    const bool starts_well = stated || action_starts_at(window, file_header_bytes);
    Salvage found = salvage(window, starts_well ? file_header_bytes : 0, *opened.source);
    if (!stated && starts_well) {
        found.broken.insert(found.broken.begin(), {.at = 0,
                                                   .until = file_header_bytes,
                                                   .frame_number = 0,
                                                   .what = "the header of the file, which does not match its check",
                                                   .header = {}});
    }
    if (found.later_version) return pass_on(later_version(path));
    if (found.frames.empty()) {
        return refuse("Nothing in this file verifies as a part of a garage: there is nothing to recover.",
                      {.file = path, .line = {}, .column = {}, .text = {}});
    }
    const auto garage = stated ? KnownGarage{GarageKnown::header, *stated} : garage_of(header, found, random);
    auto set = FrameSet::of(garage.subject, found.frames, found.records, {opened.source});
    if (!set) return pass_on(set.error());
    auto plan = plan_of(found, *std::move(set));
    plan.garage = garage.how;
    plan.mode = opened.mode;
    return plan;
}

} // namespace

Result<RecoverPlan> plan_recovery(FileLayer& files, RandomSource& random, const std::string& path,
                                  Patience patience) {
    const auto opened = open_source(files, path, patience);
    if (!opened) return pass_on(opened.error());
    try {
        return recover_opened(*opened, random);
    } catch (const IoFailure& failure) {
        return pass_on(io_problem(path, "read", failure.error));
    }
}

} // namespace sumpbook::store
