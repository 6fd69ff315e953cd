// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/usage_problem.h"

#include "app/cli/suggestions.h"

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
    if (meant.empty()) meant = did_you_mean(typed, names_of_commands(root));
    if (commands.empty() && meant.empty()) return "\"" + typed + "\" is one word too many.";
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
