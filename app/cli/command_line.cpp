// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command_line.h"

#include "app/cli/usage_problem.h"

#include <memory>
#include <sstream>

namespace sumpbook::cli {
namespace {

/// "sumpbook oil assess"
std::string path_of(const CLI::App* app) {
    return app->get_parent() == nullptr ? app->get_name()
                                        : path_of(app->get_parent()) + " " + app->get_name();
}

/// Its own examples; of a group the first one of each of its commands.
std::string examples_of(const CLI::App* app) {
    if (app->get_parent() == nullptr || !app->get_footer().empty()) return app->get_footer();
    std::string text;
    for (const auto* command : app->get_subcommands([](const CLI::App*) { return true; })) {
        const std::string all = command->get_footer();
        text += (text.empty() ? "" : "\n") + all.substr(0, all.find('\n'));
    }
    return text;
}

/// Help that begins with examples: what an owner types comes before what can be typed.
class ExamplesFirst : public CLI::Formatter {
public:
    std::string make_help(const CLI::App* app, std::string /*name*/, CLI::AppFormatMode mode) const override {
        if (mode == CLI::AppFormatMode::Sub) return make_expanded(app);
        std::stringstream out;
        const std::string examples = examples_of(app);
        if (!examples.empty()) out << "Examples:\n" << examples << "\n\n";
        out << app->get_description() << "\n\n" << make_usage(app, path_of(app)) << make_positionals(app);
        out << make_groups(app, mode) << make_subcommands(app, mode);
        std::string text = out.str();
        // A group of options that stand in no help leaves its blank line.
        for (auto at = text.find("\n\n\n"); at != std::string::npos; at = text.find("\n\n\n"))
            text.erase(at, 1);
        while (text.ends_with("\n\n"))
            text.pop_back();
        return text;
    }
    std::string make_option_opts(const CLI::Option* option) const override {
        const std::string type = option->get_type_name();
        const std::string needed = option->get_required() ? " (needed)" : "";
        if (type.empty() || option->get_lnames().empty()) return needed; // a flag, or a word by its place
        return " " + (type.starts_with("TEXT") ? std::string("TEXT") : type) + needed;
    }
};

std::string indented(const std::vector<std::string>& examples) {
    std::string text;
    for (const auto& example : examples)
        text += (text.empty() ? "  " : "\n  ") + example;
    return text;
}

} // namespace

CommandLine::CommandLine()
    : app_("Keeps the service, fuel and oil records of your motorcycles and tells what is due.", "sumpbook") {
    app_.formatter(std::make_shared<ExamplesFirst>());
    app_.get_formatter()->label("OPTIONS", "OPTIONS");
    app_.get_formatter()->column_width(34);
    app_.footer(indented({"sumpbook new my.sumpbook --currency EUR --country DE",
                          "sumpbook -g my.sumpbook bike add \"Old twin\" --odometer-unit km",
                          "sumpbook -g my.sumpbook due"}));
    app_.set_help_flag("-h,--help", "Print this help and leave");
    app_.set_version_flag("--version", "sumpbook 0.1.0", "Print the version and leave");
    app_.require_subcommand(0, 1);
    app_.fallthrough();
    add_global_options();
}

void CommandLine::add_global_options() {
    const std::string group = "For every command";
    app_.add_option("-g,--garage", options_.garage_file, "The garage file")
        ->take_last()
        ->type_name("FILE")
        ->envname("SUMPBOOK_GARAGE")
        ->group(group);
    app_.add_option("-b,--bike", options_.bike, "The bike meant, by its name")
        ->take_last()
        ->type_name("NAME")
        ->group(group);
    app_.add_option("--today", options_.today, "Reckon as if today were this day")
        ->take_last()
        ->type_name("YYYY-MM-DD")
        ->group(group);
    auto* json = app_.add_flag("--json", options_.json, "Print JSON, for programs")->group(group);
    app_.add_flag("--plain", options_.plain, "Print one record a line, fields separated by tabs")
        ->group(group)
        ->excludes(json);
    app_.add_flag("--yes", options_.yes, "Answer yes where the command would ask")->group(group);
    app_.add_flag("--no-color", options_.no_color, "No colours (also with NO_COLOR set)")->group(group);
    app_.add_option("--decimal", options_.decimal,
                    "The decimal mark of typed numbers, where 1.234 could mean two things")
        ->type_name("point|comma")
        ->check(CLI::IsMember({"point", "comma"}).description(""))
        ->group(group);
    app_.add_option("--date-order", options_.date_order, "The order of typed dates that are not YYYY-MM-DD")
        ->type_name("ymd|dmy|mdy")
        ->check(CLI::IsMember({"ymd", "dmy", "mdy"}).description(""))
        ->group(group);
    app_.add_option("--sample-seed", options_.sample_seed,
                    "For examples and tests only: ids, salts and times recorded come from this number")
        ->type_name("N")
        ->group(""); // no owner needs it: it stands in no help
}

CLI::App& CommandLine::group(const std::string& name, const std::string& summary) {
    CLI::App& group = *app_.add_subcommand(name, summary);
    group.formatter(app_.get_formatter() == nullptr ? nullptr : std::make_shared<ExamplesFirst>());
    group.get_formatter()->column_width(34);
    group.footer(""); // its commands' own examples stand for it
    group.require_subcommand(0, 1);
    group.fallthrough();
    on_run(group, [&group](Session& /*unused*/) -> Result<ExitStatus> {
        std::string known;
        for (const auto& sub : names_of_commands(group))
            known += (known.empty() ? "" : ", ") + sub;
        return fail(ProblemKind::wrong_usage, "\"" + group.get_name() + "\" needs one of: " + known + ".");
    });
    return group;
}

CLI::App& CommandLine::command(const std::string& name, const std::string& summary,
                               const std::vector<std::string>& examples) {
    return command(app_, name, summary, examples);
}

CLI::App& CommandLine::command(CLI::App& group, const std::string& name, const std::string& summary,
                               const std::vector<std::string>& examples) {
    CLI::App& command = *group.add_subcommand(name, summary);
    command.formatter(std::make_shared<ExamplesFirst>());
    command.get_formatter()->column_width(34);
    command.footer(indented(examples));
    command.fallthrough();
    return command;
}

void CommandLine::on_run(CLI::App& command, Action action) {
    // The innermost chosen command calls back last... and its parents must not overwrite it.
    command.final_callback([this, &command, action = std::move(action)] {
        if (command.get_subcommands().empty()) action_ = action;
    });
}

Result<void> CommandLine::parse(int argc, const char* const* argv, std::string& text) {
    try {
        app_.parse(argc, argv);
    } catch (const CLI::CallForVersion& version) {
        text = std::string(version.what()) + "\n";
        return {};
    } catch (const CLI::CallForHelp& /*asked*/) {
        if (auto stray = unknown_command(app_)) return pass_on(*std::move(stray));
        std::string path;
        const CLI::App* app = reached(app_, path);
        text = app->help() + (app == &app_ ? "" : "\nOptions for every command: sumpbook --help\n");
        return {};
    } catch (const CLI::ParseError& error) {
        return pass_on(usage_problem(app_, error));
    }
    if (!action_) text = app_.help(); // a bare "sumpbook"
    return {};
}

} // namespace sumpbook::cli
