// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/usage_problem.h"

#include "app/cli/suggestions.h"

#include <map>
#include <string_view>

namespace sumpbook::cli {
namespace {

std::vector<std::string> names_of_options(const CLI::App& app) {
    std::vector<std::string> names;
    for (const auto* option : app.get_options()) {
        for (const auto& name : option->get_lnames())
            names.push_back("--" + name);
    }
    return names;
}

std::vector<std::string> quoted_paths(const std::vector<std::string>& groups, const std::string& name) {
    std::vector<std::string> paths;
    for (const auto& group : groups)
        paths.push_back(group + " " + name);
    return paths;
}

/// The commands one level down, each with the groups that have it: "show" of "bike" and "log".
std::map<std::string, std::vector<std::string>> commands_below(const CLI::App& root) {
    std::map<std::string, std::vector<std::string>> groups;
    for (const auto* group : root.get_subcommands([](const CLI::App*) { return true; })) {
        for (const auto& name : names_of_commands(*group))
            groups[name].push_back(group->get_name());
    }
    return groups;
}

/// " Did you mean "log correct"?" for a word that is a command one level down; `or_near` also for one that is
/// nearly one.
std::string meant_below(const CLI::App& root, const std::string& typed, bool or_near) {
    const auto groups = commands_below(root);
    std::vector<std::string> names;
    for (const auto& [name, of] : groups)
        names.push_back(name);
    auto meant = groups.contains(typed) ? std::vector{typed} : std::vector<std::string>{};
    if (meant.empty() && or_near) meant = near_misses(typed, names);
    std::string text;
    for (const auto& name : meant) {
        for (const auto& path : quoted_paths(groups.at(name), name))
            text += (text.empty() ? " Did you mean \"" : "\" or \"") + path;
    }
    return text.empty() ? text : text + "\"?";
}

bool is_digits(std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789.,") == std::string_view::npos;
}

/// What a word that is one too many may have been: the second half of a number, a reading, a bike.
std::string perhaps(const CLI::App& at, const std::string& typed) {
    for (const auto* option : at.get_options()) {
        const auto& results = option->results();
        if (!is_digits(typed) || results.empty() || !is_digits(results.back()) || results.back().size() > 3)
            continue;
        return " A number with blanks stands in quotes: " + option->get_name() + " \"" + results.back() +
               " " + typed + "\".";
    }
    const bool has_odometer = at.get_option_no_throw("--odometer") != nullptr;
    if (is_digits(typed)) return has_odometer ? " A reading is given with --odometer " + typed + "." : "";
    if (at.get_option_no_throw("--note") != nullptr) return " Text is given with --note \"" + typed + "\".";
    return " If it is a bike: -b \"" + typed + "\".";
}

/// A word that nothing is known by.
std::string stray_word(const CLI::App& root, const CLI::App& at) {
    const auto extras = root.remaining(true);
    const std::string typed = extras.empty() ? std::string() : extras.front();
    if (typed.starts_with("-")) {
        auto known = names_of_options(at);
        for (const auto& name : names_of_options(root))
            known.push_back(name);
        return "There is no option \"" + typed + "\" here." + did_you_mean(typed, known);
    }
    const auto commands = names_of_commands(at);
    // In "reprt oil" the stray word stands in front of the command that was reached.
    auto meant = did_you_mean(typed, commands);
    if (commands.empty()) {
        meant = did_you_mean(typed, names_of_commands(root));
        if (meant.empty()) return "\"" + typed + "\" is one word too many." + perhaps(at, typed);
    }
    if (meant.empty()) meant = meant_below(root, typed, false);
    if (meant.empty()) meant = did_you_mean(typed, names_of_commands(root));
    if (meant.empty()) meant = meant_below(root, typed, true);
    return "There is no command \"" + typed + "\" here." + meant;
}

/// What an option takes, as its help says: "point|comma".
std::string type_of(const CLI::App& root, const CLI::App& at, const std::string& name) {
    for (const auto* app : {&at, &root}) {
        for (const auto* option : app->get_options()) {
            if (option->check_name(name)) return option->get_type_name();
        }
    }
    return {};
}

/// The library begins its sentences with the option they are about: "--decimal: x not in {...}".
std::string option_in(const std::string& sentence) {
    return sentence.substr(0, sentence.find_first_of(": "));
}

template <class Kind>
bool is(const CLI::ParseError& error) {
    return dynamic_cast<const Kind*>(&error) != nullptr;
}

} // namespace

std::vector<std::string> names_of_commands(const CLI::App& app) {
    std::vector<std::string> names;
    for (const auto* sub : app.get_subcommands([](const CLI::App*) { return true; }))
        names.push_back(sub->get_name());
    return names;
}

const CLI::App* reached(const CLI::App& root, std::string& path) {
    const CLI::App* app = &root;
    path = "sumpbook";
    while (true) {
        const auto chosen = app->get_subcommands();
        if (chosen.empty()) return app;
        app = chosen.front();
        path += " " + app->get_name();
    }
}

std::optional<Problem> unknown_command(const CLI::App& root) {
    std::string path;
    const CLI::App* at = reached(root, path);
    const auto extras = root.remaining(true);
    if (names_of_commands(*at).empty() || extras.empty() || extras.front().starts_with("-"))
        return std::nullopt;
    return Problem{ProblemKind::wrong_usage, stray_word(root, *at) + " See: " + path + " --help", {}};
}

Problem usage_problem(const CLI::App& root, const CLI::ParseError& error) {
    std::string path;
    const CLI::App* at = reached(root, path);
    const std::string library_says = error.what();
    const std::string option = option_in(library_says);
    std::string sentence = library_says + (library_says.ends_with('.') ? "" : ".");
    if (is<CLI::ExtrasError>(error)) sentence = stray_word(root, *at);
    if (is<CLI::RequiredError>(error)) sentence = "\"" + option + "\" is needed.";
    if (is<CLI::ArgumentMismatch>(error))
        sentence = option + " needs a value: " + type_of(root, *at, option) + ".";
    if (is<CLI::ValidationError>(error) || is<CLI::ConversionError>(error)) {
        sentence = option + " takes " + type_of(root, *at, option) + ".";
    }
    if (is<CLI::ExcludesError>(error)) {
        const auto middle = library_says.find(" excludes ");
        sentence = option + " and " + library_says.substr(middle + 10) + " do not go together.";
    }
    return {ProblemKind::wrong_usage, sentence + " See: " + path + " --help", {}};
}

} // namespace sumpbook::cli
