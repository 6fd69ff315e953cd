// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/disk_bench.h"

#include "model/store/hash.h"
#include "tests/model/store/example_garage.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace sumpbook::store {
namespace {

std::string text_of(const SubjectId& subject, const Record& record) {
    return fmt::format("record of {} about {}\n", record.recorded.seconds_since_1970,
                       hex_text(subject.bytes));
}

std::string sorted(std::vector<std::string> lines) {
    std::ranges::sort(lines);
    return fmt::format("{}", fmt::join(lines, ""));
}

} // namespace

std::string state_text(const GarageFile& garage) {
    std::vector<std::string> lines;
    for (const auto& record : garage.records())
        lines.push_back(text_of(record.subject, record.record));
    for (const auto& record : garage.fingerprints())
        lines.push_back(fmt::format("fingerprint of {}\n", record.printed.seconds_since_1970));
    for (const auto& finding : garage.index().findings())
        lines.push_back("finding " + finding.id + "\n");
    return sorted(std::move(lines));
}

std::string with_record(const std::string& state, const SubjectId& subject, const Record& record) {
    std::vector<std::string> lines{text_of(subject, record)};
    std::istringstream in(state);
    for (std::string line; std::getline(in, line);)
        lines.push_back(line + "\n");
    return sorted(std::move(lines));
}

std::string state_text(MemoryDisk& disk, const std::string& path) {
    if (!disk.identity(path)) return "no file";
    SeededRandom random("state");
    const auto garage = GarageFile::open(surroundings(disk, random), path, ScanDepth::everything);
    return garage ? state_text(*garage) : garage.error().sentence;
}

MemoryDisk empty_disk() {
    MemoryDisk disk;
    static_cast<void>(disk.make_folders(folder_of(garage_path)));
    return disk;
}

MemoryDisk example_disk() {
    MemoryDisk disk = empty_disk();
    SeededRandom random("example");
    make_example(surroundings(disk, random), garage_path);
    return disk.after_power_cut(1);
}

} // namespace sumpbook::store
