// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/catch.h"
#include "tests/model/store/example_garage.h"

#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <csignal>
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

TEST_CASE("Two programs that append at once lose nothing", "[writers]") {
    Bench bench;
    REQUIRE(bench.create());
    const auto state = bench.folder.file("state");
    std::vector<pid_t> children;
    for (int writer = 0; writer < 2; ++writer) {
        const pid_t child = fork();
        if (child == 0)
            write_entries(bench.path(), state, bench.folder.file("journal" + std::to_string(writer)),
                          writer * 1000, 100);
        children.push_back(child);
    }
    for (const auto child : children) {
        int status = 0;
        REQUIRE(waitpid(child, &status, 0) == child);
        CHECK(status == 0);
    }
    const auto garage = bench.open(ScanDepth::everything);
    REQUIRE(garage);
    CHECK(garage->records().size() == 201);
    CHECK(garage->index().chains().size() == 2); // one installation, one chain a subject
    CHECK(garage->findings().empty());
    CHECK(garage->notices().empty());
    const auto times = times_in(*garage);
    for (int writer = 0; writer < 2; ++writer) {
        for (const int number : acknowledged(bench.folder.file("journal" + std::to_string(writer)))) {
            CHECK(times.count(fuel_record(number).recorded.seconds_since_1970) == 1);
        }
    }
}

TEST_CASE("Writers killed at any moment lose nothing that was acknowledged", "[writers]") {
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
