// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/pages.h"

#include "reports/render/column_widths.h"
#include "reports/render/figure_object.h"
#include "reports/render/theme.h"

#include <QAbstractTextDocumentLayout>
#include <QFontMetricsF>
#include <QImage>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextTable>

#include <algorithm>
#include <array>

namespace sumpbook::render {

namespace {

constexpr double body_points = 9.5;
constexpr double least_points = 5.5;
constexpr double cell_padding = 2;    // points, above and below
constexpr double side_padding = 0.36; // of the letters' size, left and right
constexpr double points_an_inch = 72;
constexpr double qr_points = 40 / 25.4 * points_an_inch; // 40 mm

plot::Tone tone_of(document::Severity severity) {
    switch (severity) {
    case document::Severity::good:
        return plot::Tone::good;
    case document::Severity::caution:
        return plot::Tone::caution;
    case document::Severity::danger:
        return plot::Tone::danger;
    case document::Severity::none:
        break;
    }
    return plot::Tone::muted;
}

/// The mark in front of a text that matters: the palette's shapes as letters.
QString mark_letter(document::Severity severity) {
    switch (severity) {
    case document::Severity::good:
        return QStringLiteral("\u25CF\u00A0");
    case document::Severity::caution:
        return QStringLiteral("\u25B2\u00A0");
    case document::Severity::danger:
        return QStringLiteral("\u25A0\u00A0");
    case document::Severity::none:
        break;
    }
    return {};
}

/// Texts of verdicts bring their mark along.
bool starts_with_mark(const std::string& text) {
    return std::ranges::any_of(std::array{"\u25CF", "\u25B2", "\u25A0", "\u25CB"},
                               [&](const char* mark) { return text.starts_with(mark); });
}

/// Black on white with its margin, about `width` dots wide, each square a whole number of dots.
QImage qr_image(const plot::QrCode& code, double width) {
    const auto squares = static_cast<int>(code.size + 2 * plot::qr_margin);
    QImage image(squares, squares, QImage::Format_RGB32);
    image.fill(Qt::white);
    for (std::size_t row = 0; row < code.size; ++row)
        for (std::size_t column = 0; column < code.size; ++column)
            if (code.is_dark(row, column))
                image.setPixelColor(static_cast<int>(column + plot::qr_margin),
                                    static_cast<int>(row + plot::qr_margin), Qt::black);
    const int dots = squares * std::max(1, static_cast<int>(width) / squares);
    return image.scaled(dots, dots, Qt::IgnoreAspectRatio, Qt::FastTransformation);
}

/// Writes blocks behind each other.
class PageFiller {
public:
    PageFiller(QTextDocument& pages, double width, double dots_an_inch)
        : cursor_(&pages)
        , width_(width)
        , dots_a_point_(dots_an_inch / points_an_inch) {}

    void operator()(const document::Heading& heading) {
        const double points = heading.level == 1 ? 17 : heading.level == 2 ? 12.5 : 10.5;
        next_block(points * 0.9, points * 0.3);
        QTextBlockFormat with_next = cursor_.blockFormat();
        with_next.setHeadingLevel(heading.level);
        cursor_.setBlockFormat(with_next);
        cursor_.insertText(QString::fromStdString(heading.text), letters(points, true));
    }

    void operator()(const document::Sentence& sentence) {
        next_block(2, 4);
        insert(sentence.text, sentence.severity, body_points, false);
    }

    void operator()(const document::Facts& facts) {
        document::Table table{{{""}, {""}}, {}};
        for (const auto& [name, value] : facts.lines)
            table.rows.push_back({{name}, {value}});
        insert_table(table, false);
    }

    void operator()(const document::Table& table) { insert_table(table, true); }

    void operator()(const document::Figure& figure) {
        next_block(6, 6);
        cursor_.insertText(QString(QChar::ObjectReplacementCharacter), FigureObject::format_for(figure.plot));
    }

    void operator()(const plot::QrCode& code) {
        next_block(12, 2);
        cursor_.insertImage(qr_image(code, px(qr_points)));
        (*this)(document::Sentence{std::string(plot::qr_caption), document::Severity::none});
    }

private:
    [[nodiscard]] double px(double points) const { return points * dots_a_point_; }

    [[nodiscard]] QTextCharFormat letters(double points, bool bold) const {
        QFont face = font(px(points), bold);
        QTextCharFormat format;
        format.setFont(face);
        format.setForeground(qcolor(plot::surface(plot::Background::light).text));
        return format;
    }

    void next_block(double above_points, double below_points) {
        QTextBlockFormat format;
        format.setTopMargin(first_ ? 0 : px(above_points));
        format.setBottomMargin(px(below_points));
        if (first_)
            cursor_.setBlockFormat(format);
        else
            cursor_.insertBlock(format);
        first_ = false;
    }

    void insert(const std::string& text, document::Severity severity, double points, bool bold) {
        if (severity != document::Severity::none && !starts_with_mark(text)) {
            QTextCharFormat mark = letters(points, bold);
            mark.setForeground(qcolor(tone_of(severity), Theme::light));
            cursor_.insertText(mark_letter(severity), mark);
        }
        cursor_.insertText(QString::fromStdString(text), letters(points, bold));
    }

    /// What the columns want in letters of this size; bold, which is wider, throughout.
    [[nodiscard]] std::vector<ColumnWish> wishes(const document::Table& table, double points) const {
        const QFontMetricsF metrics(font(px(points), true));
        const double mark = metrics.horizontalAdvance(mark_letter(document::Severity::danger));
        return column_wishes(table, metrics, mark, px(2 * side_padding * points + 1));
    }

    static bool words_fit(const std::vector<ColumnWish>& columns, double room) {
        double total = 0;
        for (const ColumnWish& wish : columns)
            total += wish.least;
        return total <= room;
    }

    [[nodiscard]] QTextTableFormat table_format(const std::vector<double>& widths, bool with_head) const {
        QTextTableFormat format;
        format.setBorder(0);
        format.setCellSpacing(0);
        format.setCellPadding(px(cell_padding));
        format.setTopMargin(px(3));
        format.setBottomMargin(px(6));
        if (with_head) format.setHeaderRowCount(1);
        QList<QTextLength> lengths;
        for (const double width : widths)
            lengths.append(QTextLength(QTextLength::FixedLength, width));
        format.setColumnWidthConstraints(lengths);
        return format;
    }

    void insert_table(const document::Table& table, bool with_head) {
        if (table.columns.empty() || (table.rows.empty() && !with_head)) return;
        double points = body_points - 0.5;
        std::vector<ColumnWish> columns = wishes(table, points);
        for (; points > least_points && !words_fit(columns, width_); columns = wishes(table, points))
            points -= 0.5;
        next_block(0, 0);
        const int head = with_head ? 1 : 0;
        QTextTable* const grid = cursor_.insertTable(static_cast<int>(table.rows.size()) + head,
                                                     static_cast<int>(table.columns.size()),
                                                     table_format(column_widths(columns, width_), with_head));
        if (with_head) fill_head(*grid, table, points);
        for (std::size_t row = 0; row < table.rows.size(); ++row)
            for (std::size_t column = 0; column < table.columns.size(); ++column)
                fill_cell(*grid, static_cast<int>(row) + head, static_cast<int>(column),
                          table.rows[row][column], table.columns[column].align, points);
        cursor_.movePosition(QTextCursor::End);
    }

    void pad_sides(QTextTableCellFormat& format, double points) const {
        format.setLeftPadding(px(side_padding * points));
        format.setRightPadding(px(side_padding * points));
    }

    void fill_head(QTextTable& grid, const document::Table& table, double points) {
        for (std::size_t column = 0; column < table.columns.size(); ++column) {
            QTextTableCell cell = grid.cellAt(0, static_cast<int>(column));
            QTextTableCellFormat format;
            format.setBottomBorder(px(0.75));
            format.setBottomBorderStyle(QTextFrameFormat::BorderStyle_Solid);
            format.setBottomBorderBrush(qcolor(plot::surface(plot::Background::light).frame));
            format.setVerticalAlignment(QTextCharFormat::AlignBottom);
            pad_sides(format, points);
            cell.setFormat(format);
            write_in(cell, {table.columns[column].heading}, table.columns[column].align, points, true);
        }
    }

    void fill_cell(QTextTable& grid, int row, int column, const document::Cell& text, document::Align align,
                   double points) {
        QTextTableCell cell = grid.cellAt(row, column);
        QTextTableCellFormat format;
        format.setBottomBorder(px(0.4));
        format.setBottomBorderStyle(QTextFrameFormat::BorderStyle_Solid);
        format.setBottomBorderBrush(qcolor(plot::surface(plot::Background::light).grid));
        pad_sides(format, points);
        cell.setFormat(format);
        write_in(cell, text, align, points, false);
    }

    void write_in(const QTextTableCell& cell, const document::Cell& text, document::Align align,
                  double points, bool bold) {
        cursor_ = cell.firstCursorPosition();
        QTextBlockFormat block;
        block.setAlignment(align == document::Align::right ? Qt::AlignRight : Qt::AlignLeft);
        cursor_.setBlockFormat(block);
        insert(text.text, text.severity, points, bold);
    }

    QTextCursor cursor_;
    double width_;
    double dots_a_point_;
    bool first_ = true;
};

int page_of(const QTextDocument& pages, const QTextBlock& block) {
    const QRectF box = pages.documentLayout()->blockBoundingRect(block);
    return static_cast<int>(box.center().y() / pages.pageSize().height());
}

/// A heading at the foot of a page goes to the next one, where what it is about begins. Front to back: each
/// move changes only what comes after it.
void keep_headings_with_next(QTextDocument& pages) {
    for (QTextBlock block = pages.begin(); block.isValid(); block = block.next()) {
        if (block.blockFormat().headingLevel() == 0) continue;
        QTextBlock next = block.next();
        while (next.isValid() && next.text().isEmpty())
            next = next.next();
        if (!next.isValid() || page_of(pages, next) == page_of(pages, block)) continue;
        QTextBlockFormat format = block.blockFormat();
        format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
        QTextCursor(block).setBlockFormat(format);
    }
}

} // namespace

void fill_pages(QTextDocument& pages, const document::Document& report, QSizeF page, double dots_an_inch,
                const std::optional<plot::QrCode>& code) {
    pages.setUndoRedoEnabled(false);
    pages.documentLayout()->registerHandler(FigureObject::object_type,
                                            new FigureObject(page.width(), &pages));
    pages.setDocumentMargin(0);
    QTextOption option = pages.defaultTextOption();
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    pages.setDefaultTextOption(option);
    pages.setPageSize(page);
    PageFiller filler(pages, page.width(), dots_an_inch);
    for (const document::Block& block : report.blocks)
        std::visit(filler, block);
    if (code) filler(*code);
    keep_headings_with_next(pages);
}

} // namespace sumpbook::render
