// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/crash_loop.h"

#include "model/store/backup.h"
#include "model/store/recover.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>
#include <string_view>

namespace sumpbook::store {

void CrashingFiles::after(const FileOperation& operation, bool worked) {
    const auto& name = operation.name;
    const bool changes = name == "write" || name == "truncate" || name == "sync" || name == "rename" ||
                         name == "remove" || name == "sync folder" || name == "open";
    if (worked && changes) moment_(operation);
}

std::size_t CrashingFiles::most_at_once(const FileOperation& operation, std::size_t asked) const {
    return operation.name == "write" ? std::min(asked, most_written_) : asked;
}

namespace {

/// Those that start like this, sorted.
std::vector<std::string> lines_of(const std::string& state, std::string_view start) {
    std::vector<std::string> lines;
    std::istringstream in(state);
    for (std::string line; std::getline(in, line);) {
        if (line.starts_with(start)) lines.push_back(line);
    }
    std::ranges::sort(lines);
    return lines;
}

} // namespace

void CrashLoop::moment(const FileOperation& operation) {
    ++moments;
    where_ = fmt::format("after {} of {}", operation.name, operation.path);
    const auto look_at = [&](const MemoryDisk& disk, bool in_order) {
        ++images;
        look(disk, in_order);
    };
    look_at(disk_, true); // the program was killed: what it wrote stays
    for (std::uint64_t i = 0; i < seeds_ && !disk_.all_safe(); ++i) {
        const auto seed = i < 2 ? i : ++seed_;
        look_at(disk_.after_power_cut(seed, MemoryDisk::PowerCut::in_order), true);
        if (i >= 2) look_at(disk_.after_power_cut(seed, MemoryDisk::PowerCut::any_order), false);
    }
}

void CrashLoop::complain(const std::string& what) {
    if (wrong.size() < 10) wrong.push_back(where_ + ": " + what);
}

bool CrashLoop::is_whole(const std::string& found) {
    if (found != acknowledged_ && found != under_way_) {
        complain(fmt::format("it reads\n{}\ninstead of\n{}\nor\n{}", found, acknowledged_, under_way_));
        return false;
    }
    ++(found == acknowledged_ ? with_old : with_new);
    return true;
}

void CrashLoop::goes_on(MemoryDisk& disk, const std::string& path, const std::string& found) {
    SeededRandom random(fmt::format("crash {}", images));
    auto garage = GarageFile::open(surroundings(disk, random), path);
    if (!garage) return complain("it does not open: " + garage.error().sentence);
    const auto more = garage->append({{subject_of(1), fuel_record(999)}});
    if (!more) return complain("the next save says: " + more.error().sentence);
    const auto wanted = with_record(found, subject_of(1), fuel_record(999));
    auto restarted = disk.after_power_cut(0);
    const auto then = state_text(restarted, path);
    if (then != wanted) complain("after the next save it reads\n" + then);
}

void CrashLoop::attempt(const std::string& name, const std::string& path, const Work& what,
                        std::size_t most_written) {
    MemoryDisk trial(disk_);
    if (const auto done = what(trial); !done) {
        wrong.push_back(name + " says: " + done.error().sentence);
        return;
    }
    under_way_ = state_text(trial, path);
    if (under_way_ == acknowledged_) wrong.push_back(name + " changes nothing");
    CrashingFiles files(disk_, most_written, [this](const FileOperation& operation) { moment(operation); });
    if (!what(files)) wrong.push_back(name + " does not work twice");
    acknowledged_ = under_way_;
}

void CrashingSaves::look(MemoryDisk disk, bool in_order) {
    const auto found = state_text(disk);
    if (!in_order && found.find("is damaged: frame") != std::string::npos) return look_at_damaged(disk);
    if (is_whole(found) && found != "no file") goes_on(disk, garage_path, found);
}

void CrashingSaves::look_at_damaged(MemoryDisk& disk) {
    ++not_right;
    recover(disk);
    auto bytes = disk.bytes(garage_path);
    bytes.resize(acknowledged_bytes_);
    disk.put(garage_path, bytes);
    if (state_text(disk) != acknowledged_) complain("more than the last action is damaged");
}

/// Everything acknowledged is in the file that is written from it, and no record that nobody saved.
void CrashingSaves::recover(MemoryDisk& disk) {
    const auto before = disk.bytes(garage_path);
    const std::string path = "/garage/recovered.sumpbook";
    SeededRandom random("recover");
    const auto plan = plan_recovery(disk, random, garage_path, Patience{0});
    if (!plan) return complain("recovering says: " + plan.error().sentence);
    const auto written = write_out(disk, plan->set, path, plan->mode);
    if (!written) return complain("writing what was recovered says: " + written.error().sentence);
    const auto found = state_text(disk, path);
    if (!std::ranges::includes(lines_of(found, {}), lines_of(acknowledged_, {})))
        return complain(fmt::format("recovering gives\n{}\nand lacks some of\n{}", found, acknowledged_));
    for (const auto* start : {"record ", "fingerprint "}) {
        if (!std::ranges::includes(lines_of(under_way_, start), lines_of(found, start)))
            return complain(fmt::format("recovering makes up\n{}", found));
    }
    if (disk.bytes(garage_path) != before) return complain("recovering changed the file");
    ++recovered;
}

void CrashingSaves::save(const std::string& name, const Work& what) {
    attempt(name, garage_path, what);
    acknowledged_bytes_ = disk_.bytes(garage_path).size();
}

void CrashingSaves::save_records(const std::string& name, int first, int count,
                                 std::size_t attachment_bytes) {
    save(name, [=](FileLayer& files) -> Result<void> {
        SeededRandom random(fmt::format("crash at {}", first));
        auto garage = GarageFile::open(surroundings(files, random), garage_path);
        if (!garage) return pass_on(garage.error());
        std::vector<NewRecord> records;
        for (int i = first; i < first + count; ++i)
            records.push_back({subject_of(static_cast<std::uint8_t>(1 + i % 2)), fuel_record(i)});
        std::vector<NewAttachment> attachments;
        if (attachment_bytes > 0) {
            auto made = new_attachment(subject_of(1), Bytes(attachment_bytes, 'x'), random);
            if (!made) return pass_on(made.error());
            attachments.push_back(std::move(*made));
        }
        const auto ids = garage->append(records, attachments);
        if (!ids) return pass_on(ids.error());
        return {};
    });
}

void CrashingSaves::run() {
    save("create", [](FileLayer& files) -> Result<void> {
        SeededRandom random("create");
        const auto made =
            GarageFile::create(surroundings(files, random), garage_path, full_settings(), {1'700'000'000});
        if (!made) return pass_on(made.error());
        return {};
    });
    save_records("an entry", 10, 1);
    save_records("two entries about two bikes", 20, 2);
    save_records("an entry with an attachment", 30, 1, 3000);
    save("a fingerprint", [](FileLayer& files) -> Result<void> {
        SeededRandom random("fingerprint");
        auto garage = GarageFile::open(surroundings(files, random), garage_path);
        if (!garage) return pass_on(garage.error());
        const auto taken = garage->take_fingerprint({1'800'000'000});
        if (!taken) return pass_on(taken.error());
        return {};
    });
    save("an erasure", [](FileLayer& files) -> Result<void> {
        SeededRandom random("erasure");
        auto garage = GarageFile::open(surroundings(files, random), garage_path);
        if (!garage) return pass_on(garage.error());
        for (const auto& record : garage->records()) {
            if (record.record.recorded != fuel_record(10).recorded) continue;
            const auto erased = garage->erase(record.name, "names somebody", {1'800'000'001});
            if (!erased) return pass_on(erased.error());
            return {};
        }
        return refuse("There is no entry to erase.");
    });
    const auto start = static_cast<std::ptrdiff_t>(disk_.bytes(garage_path).size());
    save_records("many entries", 40, 12);
    // A save that was cut short, of several sectors: the next one sets it aside first.
    auto bytes = disk_.bytes(garage_path);
    const Bytes action(bytes.begin() + start, bytes.end());
    put_bytes(bytes, ByteView(action).first(action.size() - 30));
    disk_.put(garage_path, bytes);
    save_records("an entry behind a torn end", 60, 1);
    save_records("an entry after that", 61, 1);
}

void CrashingMaker::look(MemoryDisk disk, bool /*in_order*/) {
    const auto found = state_text(disk, operation_.path);
    look_beside(disk, found == under_way_);
    look_at_new_names(disk);
    if (!is_whole(found)) return;
    if (found != "no file") return goes_on(disk, operation_.path, found);
    if (const auto again = operation_.run(disk); !again)
        return complain("doing it again says: " + again.error().sentence);
    auto restarted = disk.after_power_cut(0);
    if (state_text(restarted, operation_.path) != under_way_) complain("doing it again gives something else");
    look_beside(restarted, true);
}

/// The sources are as they were, and what it removes goes only once the new file is there.
void CrashingMaker::look_beside(const MemoryDisk& disk, bool is_new) {
    const auto names = disk.names();
    bool gone = false;
    for (const auto& name : changed_beside(operation_.before, disk, operation_.path)) {
        gone = true;
        const bool may_go = is_new && std::ranges::count(operation_.removes, name) == 1;
        if (!may_go || std::ranges::count(names, name) == 1) complain(name + " is not as it was");
    }
    if (gone) ++removed;
}

/// Names that nobody takes for a garage file or a backup of one.
void CrashingMaker::look_at_new_names(const MemoryDisk& disk) {
    const auto before = operation_.before.names();
    bool has_temporary = false;
    for (const auto& name : disk.names()) {
        if (name == operation_.path || std::ranges::count(before, name) == 1) continue;
        if (name.ends_with(".lock") || name.starts_with("/state/")) continue;
        has_temporary = true;
        const auto last = name.substr(name.rfind('/') + 1);
        if (!name.starts_with(operation_.path + ".new-") || name.ends_with(".sumpbook") ||
            read_backup_name(garage_path, last))
            complain("it left " + name);
    }
    if (has_temporary) ++temporary;
}

} // namespace sumpbook::store
