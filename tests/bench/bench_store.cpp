// SPDX-License-Identifier: GPL-3.0-or-later
// Prints what the garage file costs beside SQLite on the same rows and columns: time, memory, bytes, durable
// saving, and what each notices of a changed byte. Nothing is asserted: times belong to the machine they were
// taken on. Goals are printed beside the figures, with "met" or "MISSED".
//   bench_store FOLDER [ROWS [ROUNDS]]     ROWS 1000000, ROUNDS 7
#include "model/store/garage_file.h"
#include "model/store/posix_file_layer.h"
#include "tests/bench/append_times.h"
#include "tests/bench/database.h"
#include "tests/bench/one_run.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <map>

using namespace sumpbook;
using namespace sumpbook::bench;

namespace {

struct Job {
    std::string label, job, path;
    int cores = 2;
};

/// What the rounds of one job measured.
struct Rounds {
    std::vector<double> all;       ///< Milliseconds.
    std::vector<double> both_free; ///< Of the rounds before and after which both cores were free.
    std::vector<double> cpu;       ///< Milliseconds of work of all threads.
    double megabytes = 0;
    std::size_t entries = 0;
    [[nodiscard]] const std::vector<double>& counted() const { return both_free.empty() ? all : both_free; }
};

constexpr double free_enough = 1.15;

/// All jobs in turn, so that a slow while hits all of them.
std::vector<Rounds> measure(const std::string& program, const std::vector<Job>& jobs, int rounds) {
    std::vector<Rounds> measured(jobs.size());
    double before = two_threads_ratio();
    for (int round = 0; round < rounds; ++round) {
        std::vector<double> times;
        for (std::size_t i = 0; i < jobs.size(); ++i) {
            const auto one = run_apart(program, jobs[i].job, jobs[i].path, jobs[i].cores);
            times.push_back(one.milliseconds);
            measured[i].cpu.push_back(one.cpu_milliseconds);
            measured[i].megabytes = std::max(measured[i].megabytes, one.megabytes);
            measured[i].entries = one.entries;
        }
        const double after = two_threads_ratio();
        for (std::size_t i = 0; i < jobs.size(); ++i) {
            measured[i].all.push_back(times[i]);
            if (std::max(before, after) < free_enough) measured[i].both_free.push_back(times[i]);
        }
        before = after;
    }
    return measured;
}

void print_rounds(const std::vector<Job>& jobs, const std::vector<Rounds>& measured) {
    std::printf("  %-58s %8s %10s %13s %8s %8s\n", "", "best ms", "median ms", "least CPU ms", "MB peak",
                "entries");
    for (std::size_t i = 0; i < jobs.size(); ++i) {
        const auto& times = measured[i].counted();
        std::printf("  %-58s %8.1f %10.1f %13.1f %8.0f %8zu\n", jobs[i].label.c_str(), best(times),
                    median(times), best(measured[i].cpu), measured[i].megabytes, measured[i].entries);
    }
    const auto& one = measured.front();
    std::printf("  (%zu of %zu rounds had both cores free before and after%s)\n", one.both_free.size(),
                one.all.size(),
                one.both_free.empty() ? ": none, so ALL are counted and say little" : "; only these count");
}

/// One goal, and whether it was met.
void print_goal(const std::string& what, double value, double goal, const char* unit) {
    std::printf("  goal: %-54s %9.2f <= %.2f %-6s %s\n", what.c_str(), value, goal, unit,
                value <= goal ? "met" : "MISSED");
}

struct Files {
    std::string alone, batches, small, database;
    double alone_bytes = 0, batch_bytes = 0;
};

Files write_files(const std::string& folder, std::size_t rows) {
    std::printf("Writing %zu rows ...\n", rows);
    Files files{folder + "/alone.sumpbook", folder + "/batches.sumpbook", folder + "/small.sumpbook",
                folder + "/rows.db"};
    const auto count = static_cast<double>(rows);
    files.alone_bytes = static_cast<double>(write_garage_file(files.alone, rows, 1)) / count;
    files.batch_bytes = static_cast<double>(write_garage_file(files.batches, rows, 100)) / count;
    write_garage_file(files.small, 20'000, 1);
    const auto database = static_cast<double>(write_database(files.database, rows)) / count;
    std::printf("\nBytes an entry: %.1f alone, %.1f in batches of 100; SQLite %.1f (which keeps no hashes)\n",
                files.alone_bytes, files.batch_bytes, database);
    print_goal("an entry alone", files.alone_bytes, 260, "bytes");
    print_goal("an entry in a batch", files.batch_bytes, 90, "bytes");
    return files;
}

void compare_opening(const std::string& program, const Files& files, int rounds) {
    const std::vector<Job> jobs{
        {"garage file, one an action, 2 threads: verify, keep bytes", "keep 2", files.alone, 2},
        {"  the same, and the records made", "records 2", files.alone, 2},
        {"garage file, one an action, on one core: verify, keep bytes", "keep 1", files.alone, 1},
        {"  the same, and the records made", "records 1", files.alone, 1},
        {"garage file, 100 an action, 2 threads: verify, keep bytes", "keep 2", files.batches, 2},
        {"  the same, and the records made", "records 2", files.batches, 2},
        {"SQLite, every column stepped, SHA-256 a row", "hash", files.database, 2},
        {"SQLite, the same, on one core", "hash", files.database, 1},
        {"SQLite, every column stepped, no hash", "step", files.database, 2},
        {"garage file, 20 000 entries, 2 threads: verify, keep bytes", "keep 2", files.small, 2},
        {"  the same, and the records made", "records 2", files.small, 2}};
    std::printf(
        "\nOpening. Kept bytes are verified and known to be readable; records are made of them when a "
        "command\nasks for any. SQLite keeps nothing.\n");
    const auto measured = measure(program, jobs, rounds);
    print_rounds(jobs, measured);
    const auto typical = [&](std::size_t job) { return median(measured[job].counted()); };
    print_goal("two cores / SQLite with SHA-256, kept as bytes", typical(0) / typical(6), 1.0, "times");
    print_goal("  with the records made", typical(1) / typical(6), 1.0, "times");
    print_goal("one core / SQLite with SHA-256, kept as bytes", typical(2) / typical(7), 1.3, "times");
    print_goal("  with the records made", typical(3) / typical(7), 1.3, "times");
    print_goal("batches of 100, kept as bytes", typical(4), 100, "ms");
    print_goal("  with the records made", typical(5), 100, "ms");
    print_goal("20 000 entries, kept as bytes", typical(9), 15, "ms");
    print_goal("  with the records made", typical(10), 15, "ms");
    print_goal("peak memory, kept as bytes", measured[0].megabytes, 200, "MB");
    print_goal("  with the records made", measured[1].megabytes, 200, "MB");
}

void show_growth(const std::string& program, const std::string& folder, std::size_t most, int rounds) {
    std::printf(
        "\nGrowth, one an action, 2 threads, kept as bytes (linear: the last column stays or falls)\n");
    std::printf("  %10s %12s %14s\n", "entries", "median ms", "us an entry");
    for (std::size_t rows = 1'000; rows <= most; rows *= 10) {
        const std::string path = folder + "/growth.sumpbook";
        write_garage_file(path, rows, 1);
        std::vector<double> times;
        for (int round = 0; round < rounds; ++round)
            times.push_back(run_apart(program, "keep 2", path, 2).milliseconds);
        std::printf("  %10zu %12.2f %14.3f\n", rows, median(times),
                    median(times) * 1000 / static_cast<double>(rows));
        std::filesystem::remove(path);
    }
}

void compare_appending(const std::string& folder) {
    constexpr int times = 500;
    const auto taken = append_in_turn(folder + "/append", times);
    std::printf("\nOne entry saved durably, %d times, the three in turn (us)\n  %-40s %10s %10s %8s\n", times,
                "", "median", "p95", "ratio");
    const double plain = median(taken.plain);
    const auto line = [plain](const char* what, const std::vector<double>& values) {
        std::printf("  %-40s %10.0f %10.0f %8.2f\n", what, median(values), nineteen_of_twenty(values),
                    median(values) / plain);
    };
    line("write + fdatasync of the same bytes", taken.plain);
    line("garage file", taken.garage);
    line("SQLite, write-ahead log, FULL", taken.database);
    print_goal("garage file / write + fdatasync", median(taken.garage) / plain, 1.1, "times");
    print_goal("garage file / SQLite", median(taken.garage) / median(taken.database), 1.0, "times");
}

/// Changes one byte of this text where it stands in the file.
void change_a_byte_of(const std::string& path, const std::string& text) {
    std::fstream file(path, std::ios::binary | std::ios::in | std::ios::out);
    std::string bytes(std::filesystem::file_size(path), '\0');
    file.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    const auto at = bytes.find(text);
    if (!file || at == std::string::npos) give_up("no such text in " + path);
    file.seekp(static_cast<std::streamoff>(at));
    file.put('X');
    if (!file.flush()) give_up("could not change " + path);
}

void compare_noticing(const std::string& folder) {
    const std::string garage = folder + "/changed.sumpbook";
    const std::string rows = folder + "/changed.db";
    write_garage_file(garage, 1'000, 1);
    write_database(rows, 1'000);
    const std::string note = row_of(500).note;
    change_a_byte_of(garage, note);
    change_a_byte_of(rows, note);
    std::printf("\nOne byte of the note \"%s\" changed in both files\n", note.c_str());
    Database database(rows);
    std::printf("  SQLite, PRAGMA integrity_check: %s (the note now reads \"%s\")\n",
                database.text_of("PRAGMA integrity_check").c_str(),
                database.text_of("SELECT note FROM entries WHERE number = 501").c_str());
    store::PosixFileLayer files;
    store::SystemRandom random;
    const auto opened = store::GarageFile::open({files, random, folder, {}}, garage);
    std::printf("  garage file: %s\n", opened ? "opened: NOT NOTICED" : opened.error().sentence.c_str());
}

} // namespace

int main(int argc, char* argv[]) {
    const std::vector<std::string> words(argv + 1, argv + argc);
    if (words.size() == 5 && words[0] == "--job") return run_here({words.begin() + 1, words.end()});
    if (words.empty()) give_up("usage: bench_store FOLDER [ROWS [ROUNDS]]");
    const std::string folder = words[0];
    const std::size_t rows = words.size() > 1 ? std::stoul(words[1]) : 1'000'000;
    const int rounds = words.size() > 2 ? std::stoi(words[2]) : 7;
    std::filesystem::create_directories(folder);
    std::printf("SQLite %s; two threads at once take %.2f times as long as one (1: both cores are free)\n",
                sqlite3_libversion(), two_threads_ratio());
    const Files files = write_files(folder, rows);
    compare_opening(argv[0], files, rounds);
    show_growth(argv[0], folder, rows, rounds);
    compare_appending(folder);
    compare_noticing(folder);
    std::filesystem::remove_all(folder);
    return 0;
}
