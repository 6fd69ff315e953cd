// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace sumpbook::bench {

/// What one run of one job measured, in a process of its own, so that no run finds memory that another left.
struct Measured {
    double milliseconds = 0;     ///< Of the job alone, without starting the process.
    double cpu_milliseconds = 0; ///< Work of all its threads: what a busy machine disturbs least.
    double megabytes = 0;        ///< Most memory the process held, programs and libraries included (VmHWM).
    double base_megabytes = 0;   ///< The same before the job.
    std::size_t entries = 0;
};

/// Jobs by name: "keep THREADS" opens and verifies a garage file and keeps its entries as the verified bytes;
/// "records THREADS" makes the records as well; "step" steps the rows of a database; "hash" computes a
/// SHA-256 of each row too. Does the job on the file and prints what was measured.
int run_here(const std::vector<std::string>& words);

/// Runs a job in a process of its own; `cores` 1 pins it to the first core.
[[nodiscard]] Measured run_apart(const std::string& program, const std::string& job, const std::string& path,
                                 int cores);

/// How much longer two threads take that count at the same time than one alone: 1 means both cores are free.
[[nodiscard]] double two_threads_ratio();

[[nodiscard]] double median(std::vector<double> values);
[[nodiscard]] double best(const std::vector<double>& values);
/// The value that 95 of 100 do not pass.
[[nodiscard]] double nineteen_of_twenty(std::vector<double> values);

} // namespace sumpbook::bench
