// SPDX-License-Identifier: GPL-3.0-or-later
// Prints how long whole commands take beside an empty program linked to the same libraries. Nothing is
// asserted: times belong to the machine they were taken on.
#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

extern char** environ; // NOLINT(readability-redundant-declaration): POSIX leaves the declaration to us

namespace {

using Words = std::vector<std::string>;

/// Wall milliseconds of one run with its output thrown away; the program must end well.
double milliseconds_of(const Words& words) {
    std::vector<char*> argv;
    for (const auto& word : words)
        argv.push_back(const_cast<char*>(word.c_str())); // posix_spawn's signature
    argv.push_back(nullptr);
    posix_spawn_file_actions_t actions{};
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", O_WRONLY, 0);
    const auto start = std::chrono::steady_clock::now();
    pid_t child = 0;
    int status = -1;
    const bool ran = posix_spawn(&child, argv[0], &actions, nullptr, argv.data(), environ) == 0 &&
                     waitpid(child, &status, 0) == child && WIFEXITED(status) && WEXITSTATUS(status) == 0;
    const auto end = std::chrono::steady_clock::now();
    posix_spawn_file_actions_destroy(&actions);
    if (!ran) {
        std::fprintf(stderr, "This command did not end well: %s\n", words[0].c_str());
        std::exit(1);
    }
    return std::chrono::duration<double, std::milli>(end - start).count();
}

double median(std::vector<double> values) {
    std::ranges::sort(values);
    return values[values.size() / 2];
}

} // namespace

int main(int argc, char* argv[]) {
    if (argc < 4) {
        std::fprintf(stderr, "usage: command_times EMPTY SUMPBOOK GARAGE\n");
        return 2;
    }
    const Words base{argv[2], "-g", argv[3], "--today", "2026-11-20", "--json"};
    const std::vector<Words> commands{{"due"}, {"oil", "assess"}, {"costs", "spent"}, {"log"}};
    constexpr int rounds = 21;
    std::printf("%-14s %10s %12s %8s   (median of %d rounds, wall time, output thrown away)\n", "command",
                "ms", "empty ms", "ratio", rounds);
    for (const auto& command : commands) {
        Words words = base;
        words.insert(words.end(), command.begin(), command.end());
        std::vector<double> ours;
        std::vector<double> empty;
        for (int round = 0; round < rounds; ++round) { // in turn, so that drift hits both
            empty.push_back(milliseconds_of({argv[1]}));
            ours.push_back(milliseconds_of(words));
        }
        std::string name;
        for (const auto& word : command)
            name += (name.empty() ? "" : " ") + word;
        std::printf("%-14s %10.2f %12.2f %8.1f\n", name.c_str(), median(ours), median(empty),
                    median(ours) / median(empty));
    }
    return 0;
}
