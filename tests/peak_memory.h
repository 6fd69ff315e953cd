// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstddef>

namespace sumpbook {

/// Peak memory in bytes of a process of its own that does `work`, which says whether it went well; 0 when it
/// did not. What the child has from this process counts, so compare with a child that does nothing.
template <class Work>
[[nodiscard]] std::size_t peak_memory(Work work) {
    const pid_t child = fork();
    if (child == 0) _exit(work() ? 0 : 1);
    int status = 0;
    rusage usage{};
    if (wait4(child, &status, 0, &usage) != child || !WIFEXITED(status) || WEXITSTATUS(status) != 0) return 0;
    return static_cast<std::size_t>(usage.ru_maxrss) * 1024;
}

} // namespace sumpbook
