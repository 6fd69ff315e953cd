// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/one_run.h"

#include "model/store/garage_file.h"
#include "model/store/posix_file_layer.h"
#include "tests/bench/database.h"

#include <sched.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <thread>

namespace sumpbook::bench {
namespace {

using Clock = std::chrono::steady_clock;

double milliseconds_since(Clock::time_point start) {
    return std::chrono::duration<double, std::milli>(Clock::now() - start).count();
}

double most_megabytes() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);) {
        if (line.starts_with("VmHWM:")) return std::stod(line.substr(6)) * 1024 / 1e6;
    }
    give_up("this system does not say how much memory a process takes");
}

double cpu_milliseconds() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    const auto of = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
    };
    return of(usage.ru_utime) + of(usage.ru_stime);
}

void pin_to_first_core() {
    cpu_set_t cores;
    CPU_ZERO(&cores);
    CPU_SET(0, &cores);
    if (sched_setaffinity(0, sizeof cores, &cores) != 0) give_up("could not be pinned to one core");
}

std::size_t open_garage(const std::string& path, unsigned threads, bool records) {
    store::PosixFileLayer files;
    store::SystemRandom random;
    const auto garage = store::GarageFile::open({files, random, path + ".state", {}, threads}, path);
    if (!garage) give_up(garage.error().sentence);
    return records ? garage->records().size() : garage->entries();
}

std::size_t do_job(const std::string& job, unsigned threads, const std::string& path) {
    if (job == "keep" || job == "records") return open_garage(path, threads, job == "records");
    if (job == "step" || job == "hash") return Database(path).step_all(job == "hash");
    give_up("no such job: " + job);
}

double count_for_a_while(unsigned threads) {
    const auto count = [] {
        volatile std::uint64_t sum = 0;
        for (std::uint64_t i = 0; i < 30'000'000; ++i)
            sum = sum + i;
    };
    const auto start = Clock::now();
    {
        std::vector<std::jthread> others;
        for (unsigned i = 1; i < threads; ++i)
            others.emplace_back(count);
        count();
    }
    return milliseconds_since(start);
}

} // namespace

int run_here(const std::vector<std::string>& words) {
    if (words.size() != 4) give_up("expected JOB THREADS PATH CORES");
    if (words[3] == "1") pin_to_first_core();
    const double base = most_megabytes();
    const double cpu_before = cpu_milliseconds();
    const auto start = Clock::now();
    const std::size_t entries = do_job(words[0], static_cast<unsigned>(std::stoul(words[1])), words[2]);
    const double taken = milliseconds_since(start);
    std::printf("%.3f %.3f %.1f %.1f %zu\n", taken, cpu_milliseconds() - cpu_before, most_megabytes(), base,
                entries);
    return 0;
}

Measured run_apart(const std::string& program, const std::string& job, const std::string& path, int cores) {
    std::string name = job;
    std::string threads = "1";
    if (const auto space = job.find(' '); space != std::string::npos) {
        name = job.substr(0, space);
        threads = job.substr(space + 1);
    }
    const std::string command =
        "'" + program + "' --job " + name + " " + threads + " '" + path + "' " + std::to_string(cores);
    std::FILE* out = popen(command.c_str(), "r"); // NOLINT(cert-env33-c): our own program
    if (out == nullptr) give_up("could not run " + command);
    std::array<char, 200> line{};
    const bool read = std::fgets(line.data(), line.size(), out) != nullptr;
    if (pclose(out) != 0 || !read) give_up("did not end well: " + command);
    Measured measured;
    std::istringstream(line.data()) >> measured.milliseconds >> measured.cpu_milliseconds >>
        measured.megabytes >> measured.base_megabytes >> measured.entries;
    return measured;
}

double two_threads_ratio() {
    const double alone = count_for_a_while(1);
    return count_for_a_while(2) / alone;
}

double median(std::vector<double> values) {
    std::ranges::sort(values);
    return values[values.size() / 2];
}
double best(const std::vector<double>& values) { return *std::ranges::min_element(values); }
double nineteen_of_twenty(std::vector<double> values) {
    std::ranges::sort(values);
    return values[values.size() * 95 / 100];
}

} // namespace sumpbook::bench
