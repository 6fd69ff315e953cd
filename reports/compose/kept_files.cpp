// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/kept_files.h"

#include "reports/compose/words.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

FileState state_of(const AttachmentRef& file, const std::vector<store::AttachmentSpot>& spots) {
    const auto spot = std::ranges::find(spots, file.part_hash, &store::AttachmentSpot::hash);
    if (spot == spots.end()) return FileState::missing;
    if (!spot->shown) return FileState::left_out;
    return spot->checked ? FileState::checked : FileState::not_checked;
}

std::string_view slug(FileState state) {
    switch (state) {
    case FileState::checked:
        return "checked";
    case FileState::not_checked:
        return "not-yet-checked";
    case FileState::left_out:
        return "left-out";
    case FileState::missing:
        break;
    }
    return "missing";
}

std::string state_words(FileState state) {
    switch (state) {
    case FileState::checked:
        return "checked";
    case FileState::not_checked:
        return "not yet checked";
    case FileState::left_out:
        return "left out of this garage file";
    case FileState::missing:
        break;
    }
    return "not in this garage file";
}

} // namespace

std::vector<KeptFile> kept_files(const Entry& entry, const std::vector<store::AttachmentSpot>& spots) {
    std::vector<KeptFile> files;
    for (const auto& file : entry.attachments)
        files.push_back({file, state_of(file, spots)});
    return files;
}

std::string kept_file_words(const KeptFile& file) {
    const auto size = static_cast<std::int64_t>(file.reference.size_bytes);
    return file.reference.name + ", " + grouped(Decimal(size)) + (size == 1 ? " byte, " : " bytes, ") +
           state_words(file.state);
}

document::Array kept_files_json(const std::vector<KeptFile>& files) {
    document::Array items;
    for (const auto& file : files) {
        document::Object item;
        item.add("number", static_cast<std::int64_t>(items.size() + 1));
        item.add("name", file.reference.name).add("media_type", file.reference.media_type);
        item.add("size_bytes", file.reference.size_bytes).add("state", slug(file.state));
        items.emplace_back(std::move(item));
    }
    return items;
}

} // namespace sumpbook::compose
