// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/options.h"
#include "app/window/render_command.h"
#include "reports/compose/pictures.h"
#include "reports/plot/faults.h"
#include "tests/app/window/desk_run.h"
#include "tests/sample/garage_run.h"

#include "tests/catch.h"

#include <QImage>

#include <filesystem>

using namespace sumpbook;
using namespace sumpbook::window;

namespace {

Result<DeskOptions> typed(const std::vector<const char*>& typed_words) {
    std::vector<const char*> words{"sumpbook-desk"};
    words.insert(words.end(), typed_words.begin(), typed_words.end());
    return read_options(static_cast<int>(words.size()), words.data());
}

Result<QByteArray> drawn(const std::string& what, const std::string& bike, const std::string& to,
                         const std::string& path = example_garage()) {
    start_qt();
    DeskOptions options;
    options.garage.garage_file = path;
    options.garage.bike = bike;
    options.render = what;
    options.to = to;
    options.scale = 2;
    options.width = 800;
    options.height = 500;
    const auto opened = open_garage(example_world(), options.garage);
    REQUIRE(opened);
    return rendered(*opened, options);
}

Ended desk(const std::string& words) {
    return run("env -u DISPLAY -u WAYLAND_DISPLAY -u QT_QPA_PLATFORM XDG_STATE_HOME=" + scratch("state") +
               " " SUMPBOOK_DESK " " + words + " --today 2026-11-15");
}

} // namespace

TEST_CASE("Options of the window are read and refused in words", "[window]") {
    const auto picture =
        typed({"my.sumpbook", "--render", "costs", "--to", "a.png", "--size", "1200x700", "--scale", "2"});
    REQUIRE(picture);
    CHECK(picture->garage.garage_file == "my.sumpbook");
    CHECK(picture->width == 1200);
    CHECK(picture->height == 700);
    CHECK(typed({"--help"})->printed.starts_with("Examples:\n  sumpbook-desk my.sumpbook"));
    const auto refused = [](const std::vector<const char*>& words) {
        const auto read = typed(words);
        REQUIRE_FALSE(read);
        CHECK(read.error().kind == ProblemKind::wrong_usage);
        return read.error().sentence;
    };
    CHECK(refused({"a", "--render", "costs"}).find("--to") != std::string::npos);
    CHECK(refused({"a", "--to", "b.png"}).find("--render") != std::string::npos);
    CHECK(refused({"a", "--render", "x", "--to", "b.png", "--size", "12"}).find("1200x700") !=
          std::string::npos);
    CHECK(refused({"a", "--render", "x", "--to", "b.png", "--size", "800x500x2"}).find("--size") !=
          std::string::npos);
    CHECK(refused({"a", "--theme", "blue"}) == "--theme is light or dark.");
    CHECK(refused({"a", "--render", "x", "--to", "b.png", "--scale", "0"}).find("--scale") !=
          std::string::npos);
    CHECK(refused({"a", "--nonsense"}).find("--help") != std::string::npos);
}

TEST_CASE("Every picture is drawn from the example garage, or says why not", "[window]") {
    REQUIRE(compose::pictures().size() >= 7);
    for (const auto& picture : compose::pictures()) {
        INFO(picture.name);
        const auto png = drawn(std::string(picture.name), "Meridian", "out.png");
        REQUIRE(png);
        const auto image = QImage::fromData(*png, "PNG");
        CHECK(image.size() == QSize(1600, 1000));
        const auto pdf = drawn(std::string(picture.name), "Meridian", "out.pdf");
        REQUIRE(pdf);
        CHECK(pdf->startsWith("%PDF-"));
    }
}

TEST_CASE("Every picture of every bike of the example garage is without a fault, wide and narrow",
          "[window]") {
    start_qt();
    const auto opened = open_garage(example_world(), {.garage_file = example_garage()});
    REQUIRE(opened);
    int looked_at = 0;
    for (std::size_t row = 0; row <= 5; ++row) {
        const auto selection = selection_of(*opened, row);
        for (const auto& picture : compose::pictures()) {
            if (picture.of_one_bike && selection.bikes.size() != 1) continue;
            const auto plot = picture.draw({selection.garage, selection.bikes, selection.today});
            if (!plot) continue; // a sentence says why
            ++looked_at;
            for (const double width : {430.0, 620.0, 900.0, 1400.0}) {
                CAPTURE(picture.name, row, width);
                CHECK(plot::faults(*plot, {width, plot::good_height(*plot, width)}) ==
                      std::vector<std::string>{});
            }
        }
    }
    CHECK(looked_at == 36);
}

TEST_CASE("A picture that cannot be drawn is refused", "[window]") {
    const auto unknown = drawn("wear-metal", "Meridian", "out.png");
    REQUIRE_FALSE(unknown);
    CHECK(unknown.error().kind == ProblemKind::wrong_usage);
    CHECK(unknown.error().sentence.find("Did you mean \"wear-metals\"?") != std::string::npos);
    const auto which = drawn("wear-metals", "", "out.png");
    REQUIRE_FALSE(which);
    CHECK(which.error().sentence.find("Which bike?") != std::string::npos);
    const auto form = drawn("wear-metals", "Meridian", "out.jpg");
    REQUIRE_FALSE(form);
    CHECK(form.error().kind == ProblemKind::wrong_usage);

    const auto path = scratch("one-bike.sumpbook");
    const auto sumpbook = "XDG_STATE_HOME=" + scratch("state") + " " SUMPBOOK_PROGRAM " ";
    REQUIRE(run(sumpbook + "new " + path + " --currency EUR").status == 0);
    REQUIRE(run(sumpbook + "-g " + path + " bike add Plain --odometer-unit km").status == 0);
    for (const auto& picture : compose::pictures()) {
        INFO(picture.name);
        const auto nothing = drawn(std::string(picture.name), "Plain", "out.png", path);
        REQUIRE_FALSE(nothing);
        CHECK(nothing.error().kind == ProblemKind::refused);
    }
}

TEST_CASE("The program makes its files without a screen and ends with the promised statuses", "[window]") {
    const auto out = scratch("costs.png");
    const auto made = desk(example_garage() + " --render costs --to " + out);
    INFO(made.said);
    CHECK(made.status == 0);
    CHECK(std::filesystem::file_size(out) > 5000);
    const auto again = desk(example_garage() + " --render costs --to " + out);
    CHECK(again.status != 0);
    CHECK(again.said.find("Write over " + out + "? Nothing was written. Add --yes to do it.") !=
          std::string::npos);
    CHECK(desk(example_garage() + " --render costs --yes --to " + out).status == 0);
    const auto page = scratch("page.png");
    CHECK(desk(example_garage() + " --screenshot oil --to " + page).status == 0);
    CHECK(QImage(QString::fromStdString(page)).width() == 1200);
    const auto no_screen = desk(example_garage());
    CHECK(no_screen.status == 5);
    CHECK(no_screen.said.find("There is no screen here") != std::string::npos);
    CHECK(desk(example_garage() + " --render nothing --to " + out).status == 2);
    CHECK(desk(scratch("nowhere.sumpbook") + " --render costs --to " + out).status == 5);
    CHECK(desk(example_garage() + " --render costs --to " + scratch("no-such-folder/a.png")).status == 5);
    std::string bytes = sample::bytes_of(example_garage());
    bytes[bytes.size() / 3] = static_cast<char>(bytes[bytes.size() / 3] ^ 1);
    sample::write_bytes(scratch("spoilt.sumpbook"), bytes);
    CHECK(desk(scratch("spoilt.sumpbook") + " --render costs --to " + out).status == 4);
}
