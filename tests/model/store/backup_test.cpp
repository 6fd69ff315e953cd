// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/backup.h"

#include "model/store/garage_copy.h"
#include "tests/catch.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/set_bench.h"

#include <algorithm>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

const std::string garage_path = "/home/collection.sumpbook";

struct Backups : SetBench {
    Backups() {
        static_cast<void>(disk.make_folders("/home"));
        example(garage_path);
    }
    Backup make(const Date& today, std::optional<std::size_t> keep = {}) {
        return must(back_up(disk, garage_path, "/backups", today, keep, at_once));
    }
};

} // namespace

TEST_CASE("A backup is named after the garage and the day", "[backup]") {
    CHECK(backup_name(garage_path, {day(2026, 11, 29), 1}) == "collection-2026-11-29.sumpbook");
    CHECK(backup_name("a b", {day(1999, 1, 2), 3}) == "a b-1999-01-02-3.sumpbook");
    for (const BackupName name : {BackupName{day(2026, 11, 29), 1}, BackupName{day(2026, 2, 28), 12}})
        CHECK(read_backup_name(garage_path, backup_name(garage_path, name)) == name);
    for (const auto* other :
         {"collection.sumpbook", "collection-2026-11-29.txt", "collection-2026-13-01.sumpbook",
          "collection-2026-02-30.sumpbook", "collection-2026-11-29-1.sumpbook", "collection-2026-11-29-02.sumpbook",
          "collection-2026-11-29-.sumpbook", "collection-2026-11-29x.sumpbook", "collection--026-11-29.sumpbook",
          "other-2026-11-29.sumpbook", "collection-old-2026-11-29.sumpbook", "collection-2026-11-29.sumpbook.lock",
          "collection-+026-11-29.sumpbook", "collection-2026-11-29--2.sumpbook"}) {
        CHECK_FALSE(read_backup_name(garage_path, other));
    }
}

TEST_CASE("A backup is a verified canonical copy with the garage's permissions", "[backup]") {
    Backups bench;
    const auto handle = bench.disk.open(garage_path, OpenMode::read_write);
    REQUIRE(handle);
    REQUIRE(bench.disk.set_mode(*handle, 0600));
    bench.disk.close(*handle);
    const auto before = bench.disk.bytes(garage_path);
    const auto backup = bench.make(day(2026, 11, 29));
    CHECK(backup.written.path == "/backups/collection-2026-11-29.sumpbook");
    CHECK(bench.disk.bytes(backup.written.path) == bench.merged({garage_path}));
    CHECK(must(read_copy(bench.disk, backup.written.path, at_once)).mode == 0600);
    CHECK(bench.disk.bytes(garage_path) == before);
    CHECK(bench.make(day(2026, 11, 29)).written.path == "/backups/collection-2026-11-29-2.sumpbook");
}

TEST_CASE("Only the newest backups of this garage are kept, and nothing else is removed", "[backup]") {
    Backups bench;
    for (unsigned i = 1; i <= 4; ++i)
        bench.make(day(2026, 11, i));
    bench.make(day(2026, 11, 4)); // a second one
    bench.example("/elsewhere");
    bench.copy("/elsewhere", "/backups/collection-2020-01-01.sumpbook"); // of another garage
    bench.copy(garage_path, "/backups/mine-2020-01-01.sumpbook");        // of another name
    bench.disk.put("/backups/collection-2020-01-02.sumpbook", Bytes{1, 2, 3});
    const auto backup = bench.make(day(2026, 11, 5), 3);
    CHECK(backup.removed == std::vector<std::string>{"collection-2026-11-03.sumpbook",
                                                     "collection-2026-11-02.sumpbook",
                                                     "collection-2026-11-01.sumpbook"});
    CHECK(backup.kept == std::vector<std::string>{"collection-2026-11-05.sumpbook",
                                                  "collection-2026-11-04-2.sumpbook",
                                                  "collection-2026-11-04.sumpbook"});
    for (const auto* name : {"collection-2020-01-01.sumpbook", "mine-2020-01-01.sumpbook",
                             "collection-2020-01-02.sumpbook", "collection-2026-11-05.sumpbook"})
        CHECK(bench.disk.identity(std::string("/backups/") + name));
    CHECK_FALSE(bench.disk.identity("/backups/collection-2026-11-03.sumpbook"));
}

TEST_CASE("A number of the day that became free again is not given to a newer backup", "[backup]") {
    Backups bench;
    bench.make(day(2026, 11, 4));
    bench.make(day(2026, 11, 4));
    bench.make(day(2026, 11, 4), 2);
    CHECK_FALSE(bench.disk.identity("/backups/collection-2026-11-04.sumpbook"));
    const auto backup = bench.make(day(2026, 11, 4), 2);
    CHECK(backup.kept == std::vector<std::string>{"collection-2026-11-04-4.sumpbook",
                                                  "collection-2026-11-04-3.sumpbook"});
}

TEST_CASE("The new backup is never the one that goes, whatever the calendar says", "[backup]") {
    Backups bench;
    bench.make(day(2030, 1, 1));
    const auto backup = bench.make(day(2026, 11, 29), 1);
    CHECK(backup.removed == std::vector<std::string>{"collection-2030-01-01.sumpbook"});
    CHECK(bench.disk.identity("/backups/collection-2026-11-29.sumpbook"));
    CHECK_FALSE(back_up(bench.disk, garage_path, "/backups", day(2026, 11, 30), 0, at_once));
}

TEST_CASE("A damaged garage is not backed up, and its older backups stay", "[backup]") {
    Backups bench;
    bench.make(day(2026, 11, 28));
    auto bytes = bench.disk.bytes(garage_path);
    bytes[200] ^= 1;
    bench.disk.put(garage_path, bytes);
    const auto backup = back_up(bench.disk, garage_path, "/backups", day(2026, 11, 29), 1, at_once);
    REQUIRE_FALSE(backup);
    CHECK(backup.error().kind == ProblemKind::damaged);
    CHECK(bench.disk.list("/backups").value().size() == 1);
}

TEST_CASE("An older backup that holds what the garage has lost stays", "[backup]") {
    Backups bench;
    const auto before = bench.disk.bytes(garage_path);
    bench.add(garage_path, subject_of(1), 3);
    bench.make(day(2026, 11, 1));
    bench.disk.put(garage_path, before); // a synced folder put an older state back
    bench.make(day(2026, 11, 2));
    const auto backup = bench.make(day(2026, 11, 3), 1);
    CHECK(backup.removed == std::vector<std::string>{"collection-2026-11-02.sumpbook"});
    REQUIRE(backup.notices.size() == 1);
    CHECK(backup.notices[0] == "The older backup collection-2026-11-01.sumpbook was kept: it holds entries that "
                               "the garage does not; merge them first.");
    CHECK(std::ranges::count(bench.disk.names(), "/backups/collection-2026-11-02.sumpbook.lock") == 0);
}

TEST_CASE("An older backup that does not verify stays", "[backup]") {
    Backups bench;
    bench.make(day(2026, 11, 1));
    auto bytes = bench.disk.bytes("/backups/collection-2026-11-01.sumpbook");
    bytes[bytes.size() / 2] ^= 1;
    bench.disk.put("/backups/collection-2026-11-01.sumpbook", bytes);
    const auto backup = bench.make(day(2026, 11, 2), 1);
    CHECK(backup.removed.empty());
    REQUIRE(backup.notices.size() == 1);
    CHECK(backup.notices[0].find("does not verify any more") != std::string::npos);
}

TEST_CASE("No older backup goes before the new one is on the disk", "[backup]") {
    Backups bench;
    bench.make(day(2026, 11, 28));
    const auto old_name = "/backups/collection-2026-11-28.sumpbook";
    const auto new_name = "/backups/collection-2026-11-29.sumpbook";
    int fail_at = 0;
    for (int failures = 1; failures > 0;) {
        MemoryDisk disk(bench.disk);
        FailingFiles files({.fail_at = ++fail_at, .from_then_on = true, .only = {}}, disk);
        const auto backup = back_up(files, garage_path, "/backups", day(2026, 11, 29), 1, at_once);
        failures = files.failures();
        if (!backup) CHECK(disk.identity(old_name));
        if (backup) CHECK(disk.identity(new_name));
        if (!disk.identity(old_name)) {
            // Even if the power goes now, the new one is there, whole.
            MemoryDisk after = disk.after_power_cut(0);
            CHECK(after.bytes(new_name) == bench.merged({garage_path}));
        }
    }
    CHECK(fail_at > 20);
}
