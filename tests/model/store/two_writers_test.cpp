// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <functional>
#include <random>
#include <set>
#include <thread>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

constexpr Patience patient{20'000};

/// Appends `count` entries about one bike, one at a time, and notes each on the disk before the next.
void write_entries(const std::string& path, const std::string& state, const std::string& journal, int first,
                   int count) {
    PosixFileLayer files;
    SystemRandom random;
    auto garage = GarageFile::open({files, random, state, patient}, path);
    if (!garage) _exit(2);
    const auto kept = open_file(files, journal, OpenMode::read_write_or_create);
    if (!kept) _exit(3);
    std::uint64_t at = files.size(kept->handle()).value_or(0);
    for (int i = 0; i < count; ++i) {
        if (!garage->append({{subject_of(1), fuel_record(first + i)}})) _exit(4);
        const auto line = std::to_string(first + i) + "\n";
        if (!write_fully(*kept, at, as_bytes(line))) _exit(5);
        at += line.size();
    }
    _exit(0);
}

/// Numbers of the entries a journal acknowledges.
std::vector<int> acknowledged(const std::string& journal) {
    std::vector<int> numbers;
    std::ifstream in(journal);
    for (int number = 0; in >> number;)
        numbers.push_back(number);
    return numbers;
}

std::multiset<std::int64_t> times_in(const GarageFile& garage) {
    std::multiset<std::int64_t> times;
    for (const auto& record : garage.records())
        times.insert(record.record.recorded.seconds_since_1970);
    return times;
}

} // namespace

namespace {

/// Appends one entry about each of two bikes at a time, until it is killed; what was acknowledged stands in
/// the journal.
[[noreturn]] void write_pairs(const std::string& path, const std::string& state, const std::string& journal,
                              int first, int count) {
    PosixFileLayer files;
    SystemRandom random;
    auto garage = GarageFile::open({files, random, state, patient}, path);
    if (!garage) _exit(2);
    const auto kept = open_file(files, journal, OpenMode::read_write_or_create);
    if (!kept) _exit(3);
    std::uint64_t at = files.size(kept->handle()).value_or(0);
    for (int number = first; number < first + count; ++number) {
        if (!garage->append({{subject_of(1), fuel_record(number)}, {subject_of(2), fuel_record(number)}}))
            _exit(4);
        const auto line = std::to_string(number) + "\n";
        if (!write_fully(*kept, at, as_bytes(line))) _exit(5);
        at += line.size();
        std::this_thread::sleep_for(std::chrono::milliseconds(2)); // the lock is not fair: let others have it
    }
    _exit(0);
}

/// Each pair has both of its records.
bool only_whole_pairs(const GarageFile& garage) {
    const auto times = times_in(garage);
    const auto& settings = garage.records().front();
    return std::ranges::all_of(times, [&](std::int64_t time) {
        return times.count(time) == 2 || time == settings.record.recorded.seconds_since_1970;
    });
}

/// Looks at the file again and again, in both ways, until `stop` is there; what it saw is its last line.
[[noreturn]] void read_on_and_on(const std::string& path, const std::string& state, const std::string& stop,
                                 const std::string& report) {
    PosixFileLayer files;
    SystemRandom random;
    const Surroundings around{files, random, state, patient};
    auto followed = GarageFile::open(around, path);
    if (!followed) _exit(2);
    int looks = 0;
    std::size_t seen = 0;
    while (!files.identity(stop)) {
        if (!followed->refresh()) _exit(3);
        const auto fresh = GarageFile::open(around, path);
        if (!fresh) _exit(4);
        for (const GarageFile* garage : {static_cast<const GarageFile*>(&*followed), &*fresh}) {
            if (!only_whole_pairs(*garage)) _exit(5);
            if (!garage->notices().empty()) _exit(6); // a torn end is a notice: a save was seen half
            if (garage->records().size() < seen) _exit(7);
        }
        seen = fresh->records().size();
        ++looks;
        std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
    std::ofstream(report) << looks << ' ' << seen << '\n';
    _exit(0);
}

pid_t start(const std::function<void()>& what) {
    const pid_t child = fork();
    if (child == 0) what();
    return child;
}

int status_of(pid_t child) {
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    return status;
}

bool is_running(pid_t child) {
    siginfo_t info{};
    return waitid(P_PID, static_cast<id_t>(child), &info, WEXITED | WNOHANG | WNOWAIT) == 0 &&
           info.si_pid == 0;
}

} // namespace

TEST_CASE("Promise 7: two programs that save at once, beside a reader and one that is killed, lose nothing",
          "[writers]") {
    constexpr int each = 500; // saves of two entries
    Bench bench;
    REQUIRE(bench.create());
    const auto state = bench.folder.file("state");
    const auto journal = [&](int writer) { return bench.folder.file("journal" + std::to_string(writer)); };
    std::vector<pid_t> writers;
    for (int writer = 0; writer < 2; ++writer)
        writers.push_back(
            start([&] { write_pairs(bench.path(), state, journal(writer), writer * 1000, each); }));
    const auto stop = bench.folder.file("stop"), report = bench.folder.file("report");
    const pid_t reader = start([&] { read_on_and_on(bench.path(), state, stop, report); });
    // One more writer, killed again and again while the others go on.
    std::mt19937 random(7);
    int killed = 0;
    for (; is_running(writers[0]) || is_running(writers[1]); ++killed) {
        const pid_t victim =
            start([&] { write_pairs(bench.path(), state, journal(2 + killed), 10'000 + 100 * killed, 100); });
        std::this_thread::sleep_for(std::chrono::milliseconds(10 + random() % 150));
        kill(victim, SIGKILL);
        status_of(victim);
    }
    for (const auto writer : writers)
        CHECK(status_of(writer) == 0);
    std::ofstream{stop};
    REQUIRE(status_of(reader) == 0);

    const auto garage = bench.open(ScanDepth::everything);
    REQUIRE(garage);
    std::set<std::string> findings;
    for (const auto& finding : garage->findings())
        findings.insert(finding.id);
    CHECK(findings.count("frame-missing") == 0);
    CHECK(findings.count("chain-forked") == 0);
    CHECK(only_whole_pairs(*garage));
    const auto times = times_in(*garage);
    std::size_t saved = 0, lost = 0;
    for (int writer = 0; writer < 2 + killed; ++writer) {
        if (!bench.files.identity(journal(writer))) continue; // killed before it began
        const auto numbers = acknowledged(journal(writer));
        if (writer < 2) CHECK(numbers.size() == each);
        saved += numbers.size();
        for (const int number : numbers) {
            if (times.count(fuel_record(number).recorded.seconds_since_1970) != 2) ++lost;
        }
    }
    int looks = 0;
    std::size_t seen = 0;
    std::ifstream(report) >> looks >> seen;
    CHECK(lost == 0);
    CHECK(saved > 2 * each); // some of the one that was killed too
    CHECK(looks > 10);
    CHECK(killed > 10);
    std::printf("two writers: %zu saves of two entries acknowledged, %zu lost; %zu entries in the file in "
                "%zu chains; "
                "one writer killed %d times; a reader looked %d times, all whole\n",
                saved, lost, garage->records().size(), garage->index().chains().size(), killed, looks);
}

TEST_CASE("Promise 7: writers killed at any moment lose nothing that was acknowledged", "[writers]") {
    Bench bench;
    REQUIRE(bench.create());
    const auto state = bench.folder.file("state");
    int next = 0;
    std::vector<std::string> journals;
    for (int round = 0; round < 30; ++round) {
        std::vector<pid_t> children;
        for (int writer = 0; writer < 2; ++writer) {
            journals.push_back(bench.folder.file("j" + std::to_string(journals.size())));
            const pid_t child = fork();
            if (child == 0) write_entries(bench.path(), state, journals.back(), next, 1000);
            children.push_back(child);
            next += 1000;
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(20 + 9 * round));
        for (const auto child : children) {
            kill(child, SIGKILL);
            int status = 0;
            REQUIRE(waitpid(child, &status, 0) == child);
        }
    }
    const auto garage = bench.open(ScanDepth::everything);
    REQUIRE(garage);
    std::set<std::string> findings;
    for (const auto& finding : garage->findings())
        findings.insert(finding.id);
    CHECK(findings.count("frame-missing") == 0);
    CHECK(findings.count("chain-forked") == 0);
    const auto times = times_in(*garage);
    std::size_t written = 0;
    for (const auto& journal : journals) {
        if (!bench.files.identity(journal)) continue; // killed before it began
        for (const int number : acknowledged(journal)) {
            ++written;
            CHECK(times.count(fuel_record(number).recorded.seconds_since_1970) == 1);
        }
    }
    CHECK(written > 30);
}

TEST_CASE("Promise 7: two programs that save at once by two names of the file lose nothing", "[writers]") {
    constexpr int each = 200;
    Bench bench;
    REQUIRE(bench.create());
    const auto link = bench.folder.file("link.sumpbook");
    std::filesystem::create_symlink("example.sumpbook", link);
    const auto state = bench.folder.file("state");
    const auto one = start([&] { write_entries(bench.path(), state, bench.folder.file("j1"), 0, each); });
    const auto two = start([&] { write_entries(link, state, bench.folder.file("j2"), 1000, each); });
    CHECK(status_of(one) == 0);
    CHECK(status_of(two) == 0);
    const auto garage = bench.open(ScanDepth::everything);
    REQUIRE(garage);
    CHECK(garage->findings().empty());
    const auto times = times_in(*garage);
    int found = 0;
    for (const int first : {0, 1000}) {
        for (int i = first; i < first + each; ++i)
            found += times.count(fuel_record(i).recorded.seconds_since_1970) == 1 ? 1 : 0;
    }
    CHECK(found == 2 * each);
}
