// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/world.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <ctime>
#include <string_view>

namespace sumpbook::cli {
namespace {

std::string environment(const char* name) {
    const char* value = std::getenv(name); // NOLINT(concurrency-mt-unsafe): read before any thread exists
    return value == nullptr ? std::string() : std::string(value);
}

Date local_day(std::time_t now) {
    std::tm parts{};
    localtime_r(&now, &parts);
    return std::chrono::year{parts.tm_year + 1900} /
           std::chrono::month{static_cast<unsigned>(parts.tm_mon + 1)} /
           std::chrono::day{static_cast<unsigned>(parts.tm_mday)};
}

/// COLUMNS where it is set to a number, else the width of the terminal that the answer goes to.
std::optional<int> columns() {
    const std::string asked = environment("COLUMNS");
    int number = 0;
    const auto [end, error] = std::from_chars(asked.data(), asked.data() + asked.size(), number);
    if (error == std::errc{} && end == asked.data() + asked.size() && number > 0) return std::max(number, 40);
    winsize size{};
    if (isatty(STDOUT_FILENO) != 0 && ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
        return std::max<int>(size.ws_col, 40);
    return std::nullopt;
}

std::string state_folder() {
    const std::string state_home = environment("XDG_STATE_HOME");
    if (state_home.starts_with('/')) return state_home + "/sumpbook";
    return environment("HOME") + "/.local/state/sumpbook";
}

} // namespace

World look_around() {
    const std::time_t now = std::time(nullptr);
    World world;
    world.today = local_day(now);
    world.now = {static_cast<std::int64_t>(now)};
    world.out_is_terminal = isatty(STDOUT_FILENO) != 0;
    world.err_is_terminal = isatty(STDERR_FILENO) != 0;
    world.in_is_terminal = isatty(STDIN_FILENO) != 0;
    world.table_width = columns();
    world.terminal_width = std::min(world.table_width.value_or(80), 120);
    world.wants_no_colour = !environment("NO_COLOR").empty() || environment("TERM") == "dumb";
    world.state_folder = state_folder();
    return world;
}

} // namespace sumpbook::cli
