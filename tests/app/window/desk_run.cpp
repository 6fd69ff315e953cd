// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/window/desk_run.h"

#include "app/window/look.h"
#include "tests/catch.h"
#include "tests/sample/garage_run.h"

#include <QApplication>

#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <memory>

namespace sumpbook::window {
namespace {

const sample::TemporaryFolder& folder() {
    static const sample::TemporaryFolder own;
    return own;
}

} // namespace

void start_qt() {
    static int words = 1;
    static std::array<char, 12> name{"test_window"};
    static std::array<char*, 2> all{name.data(), nullptr};
    if (QApplication::instance() != nullptr) return;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    new QApplication(words, all.data()); // until the program ends
    QApplication::setPalette(palette_of(render::Theme::light));
}

const std::string& example_garage() {
    static const std::string path = [] {
        const auto file = folder().path() / "collection.sumpbook";
        sample::copy_example(folder().path() / "example");
        sample::build_garage(folder().path() / "example", file);
        return file.string();
    }();
    return path;
}

std::string scratch(const std::string& name) { return (folder().path() / name).string(); }

cli::World example_world() {
    cli::World world;
    world.today = Date{std::chrono::year{2026}, std::chrono::November, std::chrono::day{15}};
    world.state_folder = scratch("state");
    return world;
}

Ended run(const std::string& command) {
    Ended ended;
    std::FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::array<char, 4096> buffer{};
    while (const auto count = std::fread(buffer.data(), 1, buffer.size(), pipe))
        ended.said.append(buffer.data(), count);
    ended.status = WEXITSTATUS(pclose(pipe));
    return ended;
}

} // namespace sumpbook::window
