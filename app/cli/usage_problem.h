// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"

#include <CLI/CLI.hpp>

#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cli {

[[nodiscard]] std::vector<std::string> names_of_commands(const CLI::App& app);

/// The command the words had reached; `path` becomes "sumpbook oil assess".
[[nodiscard]] const CLI::App* reached(const CLI::App& root, std::string& path);

/// A word where a command was meant, which is none: also where help was asked for with it. Absent where every
/// word was understood.
[[nodiscard]] std::optional<Problem> unknown_command(const CLI::App& root);

/// What was wrong with the words, said to the owner instead of in the library's terms: the word, where one
/// can be guessed what was meant, and where help is.
[[nodiscard]] Problem usage_problem(const CLI::App& root, const CLI::ParseError& error);

} // namespace sumpbook::cli
