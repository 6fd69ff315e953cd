// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/render/column_widths.h"

#include <QStringList>

#include <algorithm>
#include <numeric>

namespace sumpbook::render {

namespace {

double widest_word(const QString& text, const QFontMetricsF& metrics) {
    const QStringList words = text.split(' ');
    double widest = 0;
    for (const QString& word : words)
        widest = std::max(widest, metrics.horizontalAdvance(word));
    return widest;
}

double sum(const std::vector<ColumnWish>& wishes, double ColumnWish::*part) {
    return std::accumulate(wishes.begin(), wishes.end(), 0.0,
                           [part](double total, const ColumnWish& wish) { return total + wish.*part; });
}

/// The width that no column may pass so that they all fit: from the narrowest on, each column takes what it
/// needs or its share of what is left, whichever is less.
double common_limit(const std::vector<ColumnWish>& wishes, double room) {
    std::vector<double> widths;
    for (const ColumnWish& wish : wishes)
        widths.push_back(wish.least);
    std::ranges::sort(widths);
    double left = room;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        const double share = left / static_cast<double>(widths.size() - i);
        if (widths[i] > share) return share;
        left -= widths[i];
    }
    return room;
}

} // namespace

std::vector<ColumnWish> column_wishes(const document::Table& table, const QFontMetricsF& metrics, double mark,
                                      double padding) {
    std::vector<ColumnWish> wishes;
    for (std::size_t column = 0; column < table.columns.size(); ++column) {
        const QString heading = QString::fromStdString(table.columns[column].heading);
        ColumnWish wish{widest_word(heading, metrics), metrics.horizontalAdvance(heading)};
        for (const auto& row : table.rows) {
            const QString text = QString::fromStdString(row[column].text);
            const double before = row[column].severity == document::Severity::none ? 0 : mark;
            wish.least = std::max(wish.least, before + widest_word(text, metrics));
            wish.most = std::max(wish.most, before + metrics.horizontalAdvance(text));
        }
        wishes.push_back({wish.least + padding, wish.most + padding});
    }
    return wishes;
}

std::vector<double> column_widths(const std::vector<ColumnWish>& wishes, double room) {
    const double least = sum(wishes, &ColumnWish::least);
    const double most = sum(wishes, &ColumnWish::most);
    const double limit = common_limit(wishes, room);
    std::vector<double> widths;
    for (const ColumnWish& wish : wishes) {
        if (most <= room)
            widths.push_back(wish.most);
        else if (least <= room)
            widths.push_back(wish.least + (room - least) * (wish.most - wish.least) / (most - least));
        else
            widths.push_back(std::min(wish.least, limit));
    }
    return widths;
}

} // namespace sumpbook::render
