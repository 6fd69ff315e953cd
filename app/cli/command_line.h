// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/exit_status.h"
#include "model/quantity/dates.h"
#include "model/quantity/number_text.h"

#include <CLI/CLI.hpp>

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace sumpbook::cli {

class Session;

/// What a command does once its words are understood. Problems are printed by `main`.
using Action = std::function<Result<ExitStatus>(Session&)>;

/// The options that every command understands, before or after its name.
struct GlobalOptions {
    std::string garage_file;
    std::string bike;
    std::string today; ///< ISO; empty: the computer's date.
    bool json = false;
    bool plain = false;
    bool yes = false;
    bool no_color = false;
    std::string decimal;    ///< "point", "comma" or empty.
    std::string date_order; ///< "ymd", "dmy", "mdy" or empty.
    std::optional<std::uint64_t> sample_seed;
};

/// All commands of the program and the one that was chosen.
class CommandLine {
public:
    CommandLine();

    /// A command, or a group of commands ("oil") that is not run by itself. `examples` stand at the top of
    /// its --help: whole command lines.
    CLI::App& group(const std::string& name, const std::string& summary);
    CLI::App& command(const std::string& name, const std::string& summary,
                      const std::vector<std::string>& examples);
    CLI::App& command(CLI::App& group, const std::string& name, const std::string& summary,
                      const std::vector<std::string>& examples);
    /// What `command` does; called at most once a run.
    void on_run(CLI::App& command, Action action);

    /// Reads the words. A refusal names the word, where it can what was meant, and how to get help; --help
    /// and --version return their text through `text`.
    [[nodiscard]] Result<void> parse(int argc, const char* const* argv, std::string& text);

    [[nodiscard]] const GlobalOptions& options() const { return options_; }
    /// Empty when only help was asked for.
    [[nodiscard]] const Action& action() const { return action_; }
    [[nodiscard]] CLI::App& root() { return app_; }

private:
    void add_global_options();

    CLI::App app_;
    GlobalOptions options_;
    Action action_;
};

} // namespace sumpbook::cli
