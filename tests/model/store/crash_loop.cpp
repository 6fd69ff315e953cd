// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/crash_loop.h"

#include <fmt/format.h>

namespace sumpbook::store {

void CrashingFiles::after(const FileOperation& operation, bool worked) {
    const auto& name = operation.name;
    const bool changes = name == "write" || name == "truncate" || name == "sync" || name == "rename" ||
                         name == "remove" || name == "sync folder" || name == "open";
    if (worked && changes) moment_(operation);
}

void CrashLoop::moment(const FileOperation& operation) {
    ++moments;
    where_ = fmt::format("after {} of {}", operation.name, operation.path);
    look(disk_, true); // the program was killed: what it wrote stays
    for (std::uint64_t i = 0; i < seeds_ && !disk_.all_safe(); ++i) {
        const auto seed = i < 2 ? i : ++seed_;
        look(disk_.after_power_cut(seed, MemoryDisk::PowerCut::in_order), true);
        if (i >= 2) look(disk_.after_power_cut(seed, MemoryDisk::PowerCut::any_order), false);
    }
}

void CrashLoop::look(MemoryDisk disk, bool in_order) {
    ++images;
    const auto complain = [&](const std::string& what) {
        if (wrong.size() < 10) wrong.push_back(where_ + ": " + what);
    };
    const auto found = state_text(disk);
    if (!in_order && found.find("is damaged: frame") != std::string::npos) {
        ++not_right;
        auto bytes = disk.bytes(garage_path);
        bytes.resize(acknowledged_bytes_);
        disk.put(garage_path, bytes);
        if (state_text(disk) != acknowledged_) complain("more than the last action is damaged");
        return;
    }
    if (found != acknowledged_ && found != under_way_) {
        complain(fmt::format("it reads\n{}\ninstead of\n{}\nor\n{}", found, acknowledged_, under_way_));
        return;
    }
    ++(found == acknowledged_ ? with_old : with_new);
    if (found == "no file") return;
    SeededRandom random(fmt::format("crash {}", images));
    auto garage = GarageFile::open(surroundings(disk, random), garage_path);
    if (!garage) return complain("it does not open: " + garage.error().sentence);
    const auto more = garage->append({{subject_of(1), fuel_record(999)}});
    if (!more) return complain("the next save says: " + more.error().sentence);
    const auto wanted = with_record(found, subject_of(1), fuel_record(999));
    auto restarted = disk.after_power_cut(0);
    if (state_text(restarted) != wanted) complain("after the next save it reads\n" + state_text(restarted));
}

void CrashLoop::save(const std::string& name, const Save& what) {
    MemoryDisk trial(disk_);
    if (const auto done = what(trial); !done) {
        wrong.push_back(name + " says: " + done.error().sentence);
        return;
    }
    under_way_ = state_text(trial);
    CrashingFiles files(disk_, [this](const FileOperation& operation) { moment(operation); });
    if (!what(files)) wrong.push_back(name + " does not work twice");
    acknowledged_ = under_way_;
    acknowledged_bytes_ = disk_.bytes(garage_path).size();
}

void CrashLoop::save_records(const std::string& name, int first, int count, std::size_t attachment_bytes) {
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

void CrashLoop::run() {
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

} // namespace sumpbook::store
