// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/exit_status.h"
#include "app/window/look.h"
#include "app/window/main_window.h"
#include "app/window/options.h"
#include "app/window/render_command.h"
#include "reports/write/text.h"

#include <QApplication>

#include <cstdio>
#include <exception>

namespace {

using namespace sumpbook;
using namespace sumpbook::window;

int report(const Problem& problem) {
    std::fputs(("sumpbook-desk: " + write::printable(cli::sentence_with_place(problem)) + "\n").c_str(),
               stderr);
    return static_cast<int>(cli::exit_status(problem.kind));
}

bool makes_file(const DeskOptions& options) { return !options.render.empty() || !options.screenshot.empty(); }

/// Qt ends the program itself where it finds no screen: better said before.
bool there_is_a_screen() {
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

/// Two remarks of Qt that say nothing to an owner are kept from the terminal; all others pass.
void qt_message(QtMsgType type, const QMessageLogContext& context, const QString& message) {
    for (const char* idle : {"QStandardPaths: XDG_RUNTIME_DIR not set", "This plugin does not support"}) {
        if (message.startsWith(QLatin1String(idle))) return;
    }
    std::fputs((qFormatLogMessage(type, context, message) + '\n').toLocal8Bit().constData(), stderr);
}

/// Pictures need no screen.
void prepare_platform(const DeskOptions& options) {
    if (makes_file(options) && !qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    if (!options.screenshot.empty()) qputenv("QT_SCALE_FACTOR", QByteArray::number(options.scale));
}

Result<void> make_file(const cli::World& world, const DeskOptions& options) {
    const auto bytes = [&]() -> Result<QByteArray> {
        if (!options.screenshot.empty()) return screenshot(world, options);
        const auto opened = open_garage(world, options.garage);
        if (!opened) return pass_on(opened.error());
        return rendered(*opened, options);
    }();
    if (!bytes) return pass_on(bytes.error());
    return write_file(options.to, *bytes, options.garage.yes);
}

int show_window(const cli::World& world, const DeskOptions& options) {
    MainWindow window(world, options.garage);
    window.show();
    QApplication::processEvents();
    if (!options.garage.garage_file.empty()) window.open(options.garage.garage_file);
    if (window.problem()) report(*window.problem());
    const int left = QApplication::exec();
    return window.problem() ? static_cast<int>(cli::exit_status(window.problem()->kind)) : left;
}

int run(int argc, char** argv) {
    const auto options = read_options(argc, argv);
    if (!options) return report(options.error());
    if (!options->printed.empty()) {
        std::fputs(options->printed.c_str(), stdout);
        return 0;
    }
    if (!makes_file(*options) && !there_is_a_screen()) {
        return report({ProblemKind::io,
                       "There is no screen here to show a window on. Pictures and reports need none: "
                       "sumpbook-desk FILE --render WHAT --to OUT.png",
                       {}});
    }
    prepare_platform(*options);
    qInstallMessageHandler(&qt_message);
    int words = 1; // ours are not Qt's
    QApplication app(words, argv);
    QApplication::setApplicationName("sumpbook-desk");
    QGuiApplication::setDesktopFileName("org.sumpbook.Desk");
    if (options->theme) QApplication::setPalette(palette_of(*options->theme));
    const auto world = cli::look_around();
    if (!makes_file(*options)) return show_window(world, *options);
    if (const auto made = make_file(world, *options); !made) return report(made.error());
    return 0;
}

} // namespace

int main(int argc, char* argv[]) {
    try {
        return run(argc, argv);
    } catch (const std::exception& broken) {
        std::fputs(
            ("sumpbook-desk: Something is wrong in the program itself: " + std::string(broken.what()) + ".\n")
                .c_str(),
            stderr);
        return static_cast<int>(cli::ExitStatus::io_failed);
    }
}
