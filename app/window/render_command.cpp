// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/render_command.h"

#include "app/cli/report_parts.h"
#include "app/cli/suggestions.h"
#include "app/window/look.h"
#include "app/window/main_window.h"
#include "reports/compose/pictures.h"
#include "reports/plot/layout.h"
#include "reports/render/image.h"
#include "reports/render/pdf.h"
#include "reports/render/picture_page.h"

#include <QApplication>
#include <QBuffer>
#include <QFileInfo>
#include <QSaveFile>

#include <algorithm>
#include <array>

namespace sumpbook::window {
namespace {

constexpr int usual_width = 900;

/// A document of the command line, for paper.
struct Report {
    std::string_view name;
    const char* shows;
    Result<document::Document> (*make)(cli::Session& session, const compose::ReportFront& front);
};

constexpr std::array reports{
    Report{"report-due", "what to do now, soon and later, as pages", &cli::due_report},
    Report{"report-oil", "is the engine wearing, is the oil fit, as pages", &cli::oil_report},
    Report{"report-costs", "spent by year and category, as pages", &cli::costs_report},
    Report{"report-history", "everything done, for a buyer, as pages", &cli::history_report},
};

Problem unknown_name(const std::string& typed) {
    std::vector<std::string> known;
    std::string list;
    const auto add = [&](std::string_view name, std::string_view shows) {
        known.emplace_back(name);
        list += (list.empty() ? "" : "; ") + known.back() + " (" + std::string(shows) + ")";
    };
    for (const auto& picture : compose::pictures())
        add(picture.name, picture.shows);
    for (const auto& report : reports)
        add(report.name, report.shows);
    return {ProblemKind::wrong_usage,
            "There is no picture \"" + typed + "\"." + cli::did_you_mean(typed, known) +
                " There are: " + list + ".",
            {}};
}

Result<std::vector<const Bike*>> bikes_of(cli::Session& session, bool one) {
    if (!one) return session.bikes();
    const auto bike = session.one_bike();
    if (!bike) return pass_on(bike.error());
    return std::vector<const Bike*>{*bike};
}

bool ends_in(const std::string& path, const char* ending) {
    return QString::fromStdString(path).endsWith(QLatin1String(ending), Qt::CaseInsensitive);
}

QByteArray png_of(const QImage& image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    image.save(&buffer, "PNG");
    return bytes;
}

Problem wrong_form(const std::string& what, const char* form) {
    return {ProblemKind::wrong_usage, "The file to make ends in " + std::string(form) + ".", {.text = what}};
}

Result<QByteArray> report_pages(cli::Session& session, const Report& report, const DeskOptions& options) {
    if (!ends_in(options.to, ".pdf")) return pass_on(wrong_form(options.to, ".pdf"));
    const auto front = cli::report_front_of(session);
    if (!front) return pass_on(front.error());
    const auto document = report.make(session, *front);
    if (!document) return pass_on(document.error());
    const auto code = cli::fingerprint_code_of(session);
    if (!code) return pass_on(code.error());
    const auto* title = std::get_if<document::Heading>(&document->blocks.front());
    return render::pdf(*document, title == nullptr ? QString("Sumpbook") : shown(title->text), *code);
}

} // namespace

Result<QByteArray> rendered(const Opened& opened, const DeskOptions& options) {
    const auto report = std::ranges::find(reports, options.render, &Report::name);
    if (report != reports.end()) return report_pages(*opened.session, *report, options);
    const auto* picture = compose::find_picture(options.render);
    if (picture == nullptr) return pass_on(unknown_name(options.render));
    const bool paper = ends_in(options.to, ".pdf");
    if (!paper && !ends_in(options.to, ".png")) return pass_on(wrong_form(options.to, ".png or .pdf"));
    const auto bikes = bikes_of(*opened.session, picture->of_one_bike);
    if (!bikes) return pass_on(bikes.error());
    const auto plot = picture->draw({&opened.content->garage, *bikes, opened.today});
    if (!plot) return pass_on(plot.error());
    const QSize size = options.width == 0
                           ? QSize(usual_width, static_cast<int>(plot::good_height(*plot, usual_width)))
                           : QSize(options.width, options.height);
    if (paper) return render::picture_page(*plot, size);
    return render::png(*plot, size, options.scale, options.theme.value_or(render::Theme::light));
}

Result<QByteArray> screenshot(const cli::World& world, const DeskOptions& options) {
    const auto& pages = page_names();
    if (std::ranges::find(pages, options.screenshot) == pages.end()) {
        return fail(ProblemKind::wrong_usage, "There is no page \"" + options.screenshot + "\"." +
                                                  cli::did_you_mean(options.screenshot, pages));
    }
    MainWindow window(world, options.garage);
    if (options.width != 0) window.resize(options.width, options.height);
    window.show();
    window.open(options.garage.garage_file);
    window.show_page(options.screenshot);
    QApplication::processEvents();
    QApplication::processEvents(); // layouts that asked for more room have it now
    return png_of(window.grab().toImage());
}

Result<void> write_file(const std::string& path, const QByteArray& bytes, bool write_over) {
    if (!write_over && QFileInfo::exists(QString::fromStdString(path)))
        return fail(ProblemKind::unconfirmed,
                    "Write over " + path + "? Nothing was written. Add --yes to do it.");
    QSaveFile file(QString::fromStdString(path));
    if (file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit()) return {};
    return fail(ProblemKind::io, "The file could not be written: " + file.errorString().toStdString() + ".",
                {.file = path, .line = {}, .column = {}, .text = {}});
}

} // namespace sumpbook::window
