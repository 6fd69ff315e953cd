// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/options.h"

#include "app/cli/usage_problem.h"

#include <CLI/CLI.hpp>

#include <charconv>

namespace sumpbook::window {
namespace {

constexpr double most_scale = 8;
constexpr int least_size = 160;
constexpr int most_size = 8000;

constexpr const char* examples =
    "Examples:\n"
    "  sumpbook-desk my.sumpbook\n"
    "  sumpbook-desk my.sumpbook --render wear-metals -b \"Old twin\" --to iron.png\n"
    "  sumpbook-desk my.sumpbook --render costs --to costs.pdf\n\n";

/// "1200x700".
bool read_size(const std::string& text, int& width, int& height) {
    const auto* end = text.data() + text.size();
    const auto first = std::from_chars(text.data(), end, width);
    if (first.ec != std::errc{} || first.ptr == end || *first.ptr != 'x') return false;
    const auto second = std::from_chars(first.ptr + 1, end, height);
    const auto fits = [](int length) { return length >= least_size && length <= most_size; };
    return second.ec == std::errc{} && second.ptr == end && fits(width) && fits(height);
}

struct Typed {
    std::string theme;
    std::string size;
};

void add_options(CLI::App& app, DeskOptions& options, Typed& typed) {
    app.add_option("garage", options.garage.garage_file, "The garage file")
        ->type_name("FILE")
        ->envname("SUMPBOOK_GARAGE");
    app.add_option("-b,--bike", options.garage.bike, "The bike meant, by its name")->type_name("NAME");
    app.add_option("--today", options.garage.today, "Reckon as if today were this day")
        ->type_name("YYYY-MM-DD");
    app.add_option("--theme", typed.theme, "Colours, where the desktop's are not wanted")
        ->type_name("light|dark");
    const std::string group = "Pictures and documents, without a window";
    app.add_option("--render", options.render, "Draw this; an unknown name lists what there is")
        ->type_name("WHAT")
        ->group(group);
    app.add_option("--to", options.to, "The file to make, .png or .pdf")->type_name("FILE")->group(group);
    app.add_flag("--yes", options.garage.yes, "Write over a file that is there already")->group(group);
    app.add_option("--size", typed.size, "Of a picture; 900 wide and as high as it needs if not given")
        ->type_name("WxH")
        ->group(group);
    app.add_option("--scale", options.scale, "Finer: 2 for a screen of double density")
        ->type_name("N")
        ->group(group);
    app.add_option("--screenshot", options.screenshot, "Draw a page of the window: due, log, oil or costs")
        ->type_name("PAGE")
        ->group("For developers");
}

Result<DeskOptions> checked(DeskOptions options, const Typed& typed) {
    const auto wrong = [](std::string sentence) {
        return fail(ProblemKind::wrong_usage, std::move(sentence));
    };
    if (typed.theme == "dark") options.theme = render::Theme::dark;
    if (typed.theme == "light") options.theme = render::Theme::light;
    if (!typed.theme.empty() && !options.theme) return wrong("--theme is light or dark.");
    if (!typed.size.empty() && !read_size(typed.size, options.width, options.height))
        return wrong("--size is width x height, each 160 to 8000: --size 1200x700.");
    if (!(options.scale > 0) || options.scale > most_scale) return wrong("--scale is above 0, at most 8.");
    const bool makes_file = !options.render.empty() || !options.screenshot.empty();
    if (!options.render.empty() && !options.screenshot.empty())
        return wrong("Give --render or --screenshot, not both.");
    if (makes_file && options.to.empty())
        return wrong("Where to? Name the file with --to FILE.png or FILE.pdf.");
    if (!makes_file && !options.to.empty())
        return wrong("What goes into " + options.to + "? Name it with --render.");
    if (makes_file && options.garage.garage_file.empty())
        return wrong("Which garage? sumpbook-desk FILE --render WHAT --to OUT.");
    return options;
}

} // namespace

Result<DeskOptions> read_options(int argc, const char* const* argv) {
    DeskOptions options;
    Typed typed;
    CLI::App app("The window of Sumpbook: what is due, the log, oil and costs of your motorcycles.",
                 "sumpbook-desk");
    app.set_help_flag("-h,--help", "Print this help and leave");
    app.set_version_flag("--version", "sumpbook-desk 0.1.0", "Print the version and leave");
    add_options(app, options, typed);
    try {
        app.parse(argc, argv);
    } catch (const CLI::CallForVersion& version) {
        options.printed = std::string(version.what()) + "\n";
        return options;
    } catch (const CLI::CallForHelp& /*asked*/) {
        options.printed = examples + app.help();
        return options;
    } catch (const CLI::ParseError& error) {
        return pass_on(cli::usage_problem(app, error));
    }
    return checked(std::move(options), typed);
}

} // namespace sumpbook::window
