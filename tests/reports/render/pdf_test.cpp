// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/pdf.h"

#include "reports/render/column_widths.h"
#include "tests/catch.h"
#include "tests/reports/render/gallery.h"

#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>

#include <numeric>

using namespace sumpbook;

namespace {

/// What poppler's tool reads back from a PDF.
QString tool_on(const QByteArray& pdf, const QString& tool, const QStringList& before,
                const QStringList& after) {
    const QTemporaryDir folder;
    QFile file(folder.filePath("report.pdf"));
    REQUIRE(file.open(QIODevice::WriteOnly));
    REQUIRE(file.write(pdf) == pdf.size());
    file.close();
    QProcess process;
    process.start(tool, before + QStringList{file.fileName()} + after);
    REQUIRE(process.waitForFinished());
    REQUIRE(process.exitCode() == 0);
    return QString::fromUtf8(process.readAllStandardOutput());
}

const QByteArray& report() {
    static const QByteArray bytes = render::pdf(gallery::report(), "Oil report of the example bike");
    return bytes;
}

} // namespace

TEST_CASE("A report is a PDF of A4 pages with vector figures, the same each time", "[window][pdf]") {
    CHECK(report().startsWith("%PDF-"));
    CHECK(report() == render::pdf(gallery::report(), "Oil report of the example bike"));
    const QString info = tool_on(report(), "pdfinfo", {}, {});
    CHECK(info.contains("A4"));
    CHECK_FALSE(info.contains("CreationDate"));
    CHECK(tool_on(report(), "pdfimages", {"-list"}, {}).trimmed().count('\n') ==
          1); // the head of the list alone
}

TEST_CASE("Every word of a report is printed, and every page numbered", "[window][pdf]") {
    const QString text = tool_on(report(), "pdftotext", {"-layout"}, {"-"});
    for (int row = 1; row <= 70; ++row)
        CHECK(text.contains(QString("ROW%1 ").arg(row)));
    CHECK(text.contains("Text with <b>marks</b> & signs"));
    CHECK(text.contains("wwwEND"));
    CHECK(text.count('w') >= 150);
    for (int column = 1; column <= 11; ++column)
        CHECK(text.count(QString("%1.25").arg(1000 * column)) >= 3); // no number is broken
    const int pages = static_cast<int>(text.count('\f'));
    for (int page = 1; page <= pages; ++page)
        CHECK(text.contains(QString("page %1 of %2").arg(page).arg(pages)));
    CHECK(text.contains("below detection, drawn at half the limit"));
}

TEST_CASE("No letter is printed outside the margins", "[window][pdf]") {
    const QString boxes = tool_on(report(), "pdftotext", {"-bbox"}, {"-"});
    const QRegularExpression word("xMin=\"([0-9.]+)\" yMin=\"([0-9.]+)\" xMax=\"([0-9.]+)\"");
    int words = 0;
    for (auto match = word.globalMatch(boxes); match.hasNext(); ++words) {
        const auto found = match.next();
        const double margin = 18 / 25.4 * 72;
        CHECK(found.captured(1).toDouble() >= margin - 1);
        CHECK(found.captured(3).toDouble() <= 595.3 - margin + 1);
    }
    CHECK(words > 500);
}

TEST_CASE("Columns take what they need, then share", "[window][pdf]") {
    using render::column_widths;
    CHECK(column_widths({{10, 20}, {10, 30}}, 100) == std::vector<double>{20, 30});
    CHECK(column_widths({{10, 20}, {10, 190}}, 100)[0] >= 10);
    const auto crowded = column_widths({{10, 20}, {500, 600}, {30, 40}}, 100);
    CHECK(crowded == std::vector<double>{10, 60, 30});
    const auto shared = column_widths({{10, 20}, {10, 190}}, 100);
    CHECK(std::accumulate(shared.begin(), shared.end(), 0.0) == Approx(100));
}

TEST_CASE("A document without blocks is one page with its foot", "[window][pdf]") {
    const QString text = tool_on(render::pdf({}, "Nothing"), "pdftotext", {}, {"-"});
    CHECK(text.contains("page 1 of 1"));
}
