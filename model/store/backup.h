// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/write_out.h"

namespace sumpbook::store {

/// "collection.sumpbook" on 29 November 2026: "collection-2026-11-29.sumpbook"; the second of a day
/// "collection-2026-11-29-2.sumpbook".
struct BackupName {
    Date date;
    int number = 1; ///< Of the day.
    auto operator<=>(const BackupName&) const = default;
};
[[nodiscard]] std::string backup_name(const std::string& garage_path, const BackupName& name);
/// Absent for every other name.
[[nodiscard]] std::optional<BackupName> read_backup_name(const std::string& garage_path,
                                                         const std::string& file_name);

struct Backup {
    WrittenOut written;
    std::vector<std::string> removed; ///< Older backups, by file name.
    std::vector<std::string> kept;    ///< All backups of this garage in the folder now, newest first.
    std::vector<std::string> notices;
};

/// A verified copy in canonical form, dated, with the permissions of the garage file. `folder` is made if need
/// be. With `keep`, all but the newest so many backups of this garage are removed, once the new one is on the
/// disk and reads back right: only files whose name and garage id are those of this garage, never the new one.
/// An older one that does not verify, or holds what the garage does not, stays, with a notice.
/// Refused: a damaged garage, keep of 0.
[[nodiscard]] Result<Backup> back_up(FileLayer& files, const std::string& path, const std::string& folder,
                                     const Date& today, std::optional<std::size_t> keep, Patience patience);

} // namespace sumpbook::store
