// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/damage_text.h"

#include <fmt/format.h>

namespace sumpbook::store {
namespace {

/// "behind the entry k7-11": the last one that stands in front of `place` and verifies.
std::string behind_text(std::uint64_t place, const ChainIndex& index) {
    const IndexedFrame* last = nullptr;
    for (const auto& frame : index.frames()) {
        if (frame.at < place && frame.entry_count > 0) last = &frame;
    }
    if (last == nullptr) return "in front of the first entry";
    return fmt::format("behind the entry {}", index.entry_id(*last, last->entry_count - 1));
}

} // namespace

std::string heading_text(const FrameHeader& header, const ChainIndex& index) {
    if (header.kind == FrameKind::attachment) return "by its heading an attachment";
    const auto* before = index.frame_before(header.chain, header.sequence);
    if (before == nullptr)
        return fmt::format("by its heading the entries {}-...", index.name_of(header.chain));
    const auto first = before->entries_before + before->entry_count + 1;
    const auto last = first + header.entry_count - 1;
    const auto name = index.name_of(header.chain);
    if (first == last) return fmt::format("by its heading the entry {}-{}", name, first);
    return fmt::format("by its heading the entries {0}-{1} to {0}-{2}", name, first, last);
}

Problem damage_problem(const std::string& path, const Scan& scan, const ChainIndex& index) {
    const Damage& damage = scan.damages.empty() ? *scan.tail_damage : scan.damages.front();
    const std::size_t others =
        scan.damages.empty() ? 0 : scan.damages.size() - 1 + (scan.tail == Tail::damaged ? 1 : 0);
    std::string sentence =
        fmt::format("The garage file is damaged: frame {}, {}, at byte {}, {}", damage.frame_number,
                    behind_text(damage.at, index), damage.wrong_at, damage.what);
    if (damage.header) sentence += fmt::format(" ({})", heading_text(*damage.header, index));
    if (others > 0) sentence += others == 1 ? std::string("; 1 more place is damaged") : fmt::format("; {} more places are damaged", others);
    sentence += ". Nothing was changed. Keep this file: what still verifies in it is not lost.";
    return {ProblemKind::damaged, std::move(sentence), file_place(path)};
}

Problem fault_problem(const std::string& path, const Loader::Fault& fault) {
    return {fault.kind,
            fmt::format("Frame {} of the garage file {}. The file was left untouched.", fault.frame_number,
                        fault.what),
            file_place(path)};
}

} // namespace sumpbook::store
