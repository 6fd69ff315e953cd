// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/pasted_commands.h"

#include "reports/compose/file_counts.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string_view>

namespace sumpbook::cli {
namespace {

constexpr std::string_view program = "sumpbook ";

/// Whether what follows the program's name is a command about one garage.
bool is_about_a_garage(std::string_view command) {
    constexpr auto words = std::to_array<std::string_view>(
        {"add", "backup", "bike", "check", "compare", "costs", "due", "export", "faults", "fingerprint",
         "handover", "import", "log", "oil", "plan", "report", "verify"});
    const auto word = command.substr(0, command.find_first_of(" .,;:\")"));
    if (std::ranges::find(words, word) == words.end()) return false;
    const auto end = std::min(command.find(". "), command.find(')'));
    return command.substr(0, end).find("--help") == std::string_view::npos;
}

/// Commands need no -g where the environment names the same file.
bool is_typed(const GlobalOptions& options) {
    const char* usual = std::getenv("SUMPBOOK_GARAGE");
    return !options.garage_file.empty() && (usual == nullptr || options.garage_file != usual);
}

} // namespace

std::string with_garage(const std::string& sentence, const GlobalOptions& options) {
    if (!is_typed(options)) return sentence;
    const auto garage = "-g " + compose::typed_name(options.garage_file) + " ";
    std::string text;
    std::size_t done = 0;
    for (auto at = sentence.find(program); at != std::string::npos; at = sentence.find(program, done)) {
        const auto behind = at + program.size();
        text += sentence.substr(done, behind - done);
        // "my.sumpbook log" ends in a file's name.
        const bool begins = at == 0 || std::string_view(" \"(").find(sentence[at - 1]) != std::string_view::npos;
        if (begins && is_about_a_garage(std::string_view(sentence).substr(behind))) text += garage;
        done = behind;
    }
    return text + sentence.substr(done);
}

std::string way_out(const Problem& problem) {
    if (problem.kind != ProblemKind::damaged || problem.place.file.empty()) return {};
    const auto file = compose::typed_name(problem.place.file);
    return " Use your newest backup; if there is none: sumpbook recover " + file +
           " --to NEW. See: sumpbook -g " + file + " check";
}

document::Document with_garage(document::Document answer, const GlobalOptions& options) {
    if (!is_typed(options)) return answer;
    for (auto& block : answer.blocks) {
        if (auto* sentence = std::get_if<document::Sentence>(&block))
            sentence->text = with_garage(sentence->text, options);
        auto* table = std::get_if<document::Table>(&block);
        if (table == nullptr) continue;
        for (auto& row : table->rows) {
            for (auto& cell : row)
                cell.text = with_garage(cell.text, options);
        }
    }
    return answer;
}

} // namespace sumpbook::cli
