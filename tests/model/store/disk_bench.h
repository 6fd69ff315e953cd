// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/garage_file.h"
#include "tests/model/store/example_records.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/memory_disk.h"

#include <string>

namespace sumpbook::store {

/// Garages on a disk in memory, with the notes of the installation on the same disk.
inline const std::string garage_path = "/garage/example.sumpbook";

[[nodiscard]] inline Surroundings surroundings(FileLayer& layer, RandomSource& random) {
    return {layer, random, "/state", Patience{0}};
}

/// What is in a garage file, one line each, without what differs from run to run (salts, chains): the content
/// of every record, what every frame leaves out, every attachment and its bytes, every fingerprint record,
/// and what a careful reader would be told; or the sentence with which it is refused, or "no file".
[[nodiscard]] std::string state_text(MemoryDisk& disk, const std::string& path = garage_path);
[[nodiscard]] std::string state_text(const GarageFile& garage);
/// The same with one more record, saved alone, that replaces none.
[[nodiscard]] std::string with_record(const std::string& state, const SubjectId& subject,
                                      const Record& record);

/// Files of the first disk that are gone or changed on the second: all but `written`, locks, and the notes of
/// the installation.
[[nodiscard]] std::vector<std::string> changed_beside(const MemoryDisk& before, const MemoryDisk& now,
                                                      const std::string& written);

/// An empty disk with the folder of the garage on it.
[[nodiscard]] MemoryDisk empty_disk();
/// With a garage of five actions, as make_example makes it.
[[nodiscard]] MemoryDisk example_disk();

} // namespace sumpbook::store
