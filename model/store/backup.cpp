// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/backup.h"

#include "model/store/action.h"
#include "model/store/garage_copy.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace sumpbook::store {
namespace {

constexpr std::string_view ending = ".sumpbook";
constexpr int most_of_a_day = 1000;

/// "collection" of "/home/garage/collection.sumpbook"; a name without the ending is kept whole.
std::string stem_of(const std::string& path) {
    std::string name = path.substr(path.rfind('/') + 1); // npos + 1 is 0
    if (name.size() > ending.size() && name.ends_with(ending)) name.resize(name.size() - ending.size());
    return name;
}

/// A whole number of exactly this text, without a sign or zeros in front of more digits than `width`.
std::optional<int> number_of(std::string_view text, std::size_t width) {
    int number = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (fault != std::errc() || end != text.data() + text.size() || number < 0) return std::nullopt;
    if (fmt::format("{:0{}}", number, width) != text) return std::nullopt;
    return number;
}

std::optional<Date> date_of(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = number_of(text.substr(0, 4), 4);
    const auto month = number_of(text.substr(5, 2), 2);
    const auto of_month = number_of(text.substr(8, 2), 2);
    if (!year || !month || !of_month) return std::nullopt;
    const Date date = std::chrono::year(*year) / std::chrono::month(static_cast<unsigned>(*month)) /
                      std::chrono::day(static_cast<unsigned>(*of_month));
    if (!date.ok()) return std::nullopt;
    return date;
}

std::string in_folder(const std::string& folder, const std::string& name) {
    return folder.ends_with('/') ? folder + name : folder + "/" + name;
}

/// The number behind the last backup of the day: a number that became free again would make a new backup look
/// older than those it follows.
int next_number(const std::vector<std::string>& names, const std::string& path, const Date& today) {
    int number = 1;
    for (const auto& name : names) {
        const auto read = read_backup_name(path, name);
        if (read && read->date == today) number = std::max(number, read->number + 1);
    }
    return number;
}

/// A free name behind all others of the day.
Result<BackupName> free_name(FileLayer& files, const std::string& path, const std::string& folder,
                             const Date& today) {
    const auto names = files.list(folder);
    if (!names) return pass_on(io_problem(folder, "looked for in the folder", names.error()));
    for (BackupName name{today, next_number(*names, path, today)}; name.number < most_of_a_day; ++name.number) {
        const auto there = files.identity(in_folder(folder, backup_name(path, name)));
        if (there) continue;
        if (there.error().fault == IoFault::not_found) return name;
        return pass_on(io_problem(folder, "looked for in the folder", there.error()));
    }
    return refuse("There are too many backups of this day in the folder.",
                  {.file = folder, .line = {}, .column = {}, .text = {}});
}

/// Whether the file starts as a file of this garage.
bool is_of(FileLayer& files, const std::string& path, const SubjectId& garage) {
    const auto file = open_file(files, path, OpenMode::read);
    if (!file) return false;
    Bytes head(file_header_bytes);
    const auto got = read_fully(*file, 0, head);
    if (!got || *got != head.size()) return false;
    const auto subject = read_file_header(head, path);
    return subject && *subject == garage;
}

using Named = std::pair<BackupName, std::string>;

/// Backups of this garage besides the new one, newest first.
Io<std::vector<Named>> older_backups(FileLayer& files, const std::string& path, const std::string& folder,
                                     const SubjectId& garage, const std::string& new_name) {
    const auto names = files.list(folder);
    if (!names) return tl::unexpected<IoError>(names.error());
    std::vector<Named> older;
    for (const auto& name : *names) {
        const auto read = read_backup_name(path, name);
        if (read && name != new_name && is_of(files, in_folder(folder, name), garage))
            older.emplace_back(*read, name);
    }
    std::ranges::sort(older, std::ranges::greater{});
    return older;
}

/// Whether the garage holds every frame of the other, with every part that is shown there and was not erased.
bool holds_all_of(const FrameSet& garage, const FrameSet& other) {
    return std::ranges::all_of(other.frames(), [&](const SetFrame& frame) {
        const auto* held = garage.find(frame);
        return held != nullptr && ((frame.shown & ~held->shown) == 0 ||
                                   garage.erased().contains({frame.header.subject, frame.hash}));
    });
}

/// Why an older backup must stay: the garage may have lost what it holds, as when a synced folder put an
/// older file back. Empty: it can go.
std::string reason_to_stay(FileLayer& files, const std::string& path, const FrameSet& garage,
                           Patience patience) {
    const auto old = read_copy(files, path, patience);
    if (!old) return "it does not verify any more; look at it, then remove it yourself";
    if (!holds_all_of(garage, old->set)) return "it holds entries that the garage does not; merge them first";
    return {};
}

Io<void> remove_backup(FileLayer& files, const std::string& path) {
    if (const auto removed = files.remove(path); !removed) return removed;
    static_cast<void>(files.remove(path + ".lock")); // of whoever read it
    return {};
}

/// The new one is safe by now: whatever fails here is only told.
void rotate(FileLayer& files, const std::string& folder, const std::vector<Named>& older, std::size_t keep,
            const FrameSet& garage, Patience patience, Backup& backup) {
    for (std::size_t i = 0; i < older.size(); ++i) {
        const auto& name = older[i].second;
        const auto path = in_folder(folder, name);
        if (i + 1 < keep) {
            backup.kept.push_back(name);
            continue;
        }
        auto reason = reason_to_stay(files, path, garage, patience);
        if (reason.empty()) {
            const auto removed = remove_backup(files, path);
            if (!removed) reason = "it could not be removed: " + reason_of(removed.error());
        }
        (reason.empty() ? backup.removed : backup.kept).push_back(name);
        if (!reason.empty())
            backup.notices.push_back(fmt::format("The older backup {} was kept: {}.", name, reason));
    }
    if (!backup.removed.empty()) static_cast<void>(files.sync_folder(folder));
}

} // namespace

std::string backup_name(const std::string& garage_path, const BackupName& name) {
    const auto date = fmt::format("{:04}-{:02}-{:02}", static_cast<int>(name.date.year()),
                                  static_cast<unsigned>(name.date.month()),
                                  static_cast<unsigned>(name.date.day()));
    const auto number = name.number == 1 ? std::string() : fmt::format("-{}", name.number);
    return fmt::format("{}-{}{}{}", stem_of(garage_path), date, number, ending);
}

std::optional<BackupName> read_backup_name(const std::string& garage_path, const std::string& file_name) {
    const auto front = stem_of(garage_path) + "-";
    if (!file_name.starts_with(front) || !file_name.ends_with(ending)) return std::nullopt;
    if (file_name.size() < front.size() + 10 + ending.size()) return std::nullopt;
    const auto middle = std::string_view(file_name).substr(
        front.size(), file_name.size() - front.size() - ending.size());
    const auto date = date_of(middle.substr(0, 10));
    if (!date) return std::nullopt;
    if (middle.size() == 10) return BackupName{*date, 1};
    const auto number = middle[10] == '-' ? number_of(middle.substr(11), 1) : std::nullopt;
    if (!number || *number < 2) return std::nullopt;
    return BackupName{*date, *number};
}

Result<Backup> back_up(FileLayer& files, const std::string& path, const std::string& folder,
                       const Date& today, std::optional<std::size_t> keep, Patience patience) {
    if (keep && *keep == 0) return refuse("At least one backup is kept: the one that is made.");
    const auto garage = read_copy(files, path, patience);
    if (!garage) return pass_on(garage.error());
    if (const auto made = files.make_folders(folder); !made)
        return pass_on(io_problem(folder, "backed up there", made.error()));
    const auto name = free_name(files, path, folder, today);
    if (!name) return pass_on(name.error());
    const auto new_name = backup_name(path, *name);
    const auto written = write_out(files, garage->set, in_folder(folder, new_name), garage->mode);
    if (!written) return pass_on(written.error());
    Backup backup{.written = *written, .removed = {}, .kept = {new_name}, .notices = garage->notices};
    const auto older = older_backups(files, path, folder, garage->set.garage(), new_name);
    if (!older) {
        backup.notices.push_back(fmt::format("Older backups could not be listed, and none was removed: {}.",
                                             reason_of(older.error())));
        return backup;
    }
    rotate(files, folder, *older, keep.value_or(SIZE_MAX), garage->set, patience, backup);
    return backup;
}

} // namespace sumpbook::store
