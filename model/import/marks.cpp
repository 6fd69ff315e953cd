// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/marks.h"

#include "model/import/amount_text.h"
#include "model/import/words.h"
#include "model/quantity/number_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace sumpbook::import {
namespace {

enum class Vote { none, first, second, ambiguous };

Vote vote_of(bool first, bool second, bool same) {
    if (first && second) return same ? Vote::none : Vote::ambiguous;
    if (first) return Vote::first;
    return second ? Vote::second : Vote::none;
}

Vote number_vote(std::string_view cell) {
    const auto number = number_piece(cell);
    if (number.empty()) return Vote::none;
    const auto point = read_number(number, DecimalMark::point);
    const auto comma = read_number(number, DecimalMark::comma);
    return vote_of(point.has_value(), comma.has_value(), point && comma && *point == *comma);
}

Vote date_vote(std::string_view cell) {
    const auto text = date_part(cell);
    if (text.empty()) return Vote::none;
    const auto day_first = read_date(text, DateOrder::day_month_year);
    const auto month_first = read_date(text, DateOrder::month_day_year);
    return vote_of(day_first.has_value(), month_first.has_value(),
                   day_first && month_first && *day_first == *month_first);
}

void count(Votes& votes, Vote vote, std::size_t line, const std::string& cell) {
    const auto note = [line](std::size_t& number, std::optional<std::size_t>& first) {
        if (number++ == 0) first = line;
    };
    switch (vote) {
    case Vote::none:
        return;
    case Vote::first:
        return note(votes.first, votes.first_line);
    case Vote::second:
        return note(votes.second, votes.second_line);
    case Vote::ambiguous:
        if (votes.ambiguous == 0) votes.ambiguous_text = cell;
        note(votes.ambiguous, votes.ambiguous_line);
    }
}

Votes votes_of(const Table& table, const Columns& columns, bool dates) {
    Votes votes;
    for (const auto& row : table.rows) {
        if (row.cells.size() > table.headings.size()) continue; // its cells may stand under the wrong heading
        for (const auto& column : columns.all) {
            if (column.field == nullptr || column.index >= row.cells.size()) continue;
            const std::string& cell = row.cells[column.index];
            const FieldType type = column.field->type;
            if (dates ? type != FieldType::date : !is_numeric(type)) continue;
            count(votes, dates ? date_vote(cell) : number_vote(cell), row.line, cell);
        }
    }
    return votes;
}

enum class Verdict { no_matter, first, second, ask };

Verdict verdict_of(const Votes& votes) {
    constexpr std::size_t clear_majority = 10;
    if (votes.first == 0 && votes.second == 0)
        return votes.ambiguous == 0 ? Verdict::no_matter : Verdict::ask;
    if (votes.first >= clear_majority * votes.second) return Verdict::first;
    if (votes.second >= clear_majority * votes.first) return Verdict::second;
    return Verdict::ask;
}

std::string why_open(const Votes& votes, std::string_view first, std::string_view second) {
    if (votes.first == 0)
        return fmt::format("no cell decides it (line {}: {})", *votes.ambiguous_line, votes.ambiguous_text);
    return fmt::format("line {} has {}, line {} has {}", *votes.first_line, first, *votes.second_line,
                       second);
}

void settle_decimal(Marks& marks, const ImportOptions& options) {
    if (options.decimal_mark) {
        marks.decimal = *options.decimal_mark;
        marks.decimal_stated = true;
        return;
    }
    switch (verdict_of(marks.decimal_votes)) {
    case Verdict::no_matter:
        return;
    case Verdict::first:
        marks.decimal = DecimalMark::point;
        return;
    case Verdict::second:
        marks.decimal = DecimalMark::comma;
        return;
    case Verdict::ask:
        marks.questions.push_back(
            {fmt::format("Do decimals stand after a point or after a comma in this file? By itself it leaves "
                         "this open: {}.",
                         why_open(marks.decimal_votes, "a decimal point", "a decimal comma")),
             "--decimal point"});
    }
}

void settle_order(Marks& marks, const ImportOptions& options) {
    if (options.date_order) {
        marks.order = *options.date_order;
        marks.order_stated = true;
        return;
    }
    switch (verdict_of(marks.order_votes)) {
    case Verdict::no_matter:
        return;
    case Verdict::first:
        marks.order = DateOrder::day_month_year;
        return;
    case Verdict::second:
        marks.order = DateOrder::month_day_year;
        return;
    case Verdict::ask:
        marks.questions.push_back({fmt::format("Does the day or the month come first in the dates? By itself "
                                               "the file leaves this open: {}.",
                                               why_open(marks.order_votes, "a date with the day first",
                                                        "a date with the month first")),
                                   "--date-order dmy"});
    }
}

bool has_decimals(std::string_view cell, DecimalMark mark) {
    const auto number = number_piece(cell);
    return !number.empty() && read_number(number, mark) &&
           number.find(mark == DecimalMark::comma ? ',' : '.') != std::string_view::npos;
}

std::set<std::size_t> columns_with_decimals(const Table& table, const Columns& columns, DecimalMark mark) {
    std::set<std::size_t> found;
    if (mark == DecimalMark::unknown) return found;
    for (const auto& column : columns.all) {
        if (column.field == nullptr || !is_numeric(column.field->type)) continue;
        std::size_t filled = 0;
        std::size_t with = 0;
        for (const auto& row : table.rows) {
            if (column.index >= row.cells.size() || trimmed(row.cells[column.index]).empty()) continue;
            ++filled;
            if (has_decimals(row.cells[column.index], mark)) ++with;
        }
        if (with >= 3 && with * 10 >= filled * 8) found.insert(column.index);
    }
    return found;
}

} // namespace

std::string_view date_part(std::string_view cell) {
    const auto text = trimmed(cell);
    const auto looks_like_time = [](std::string_view rest) {
        return rest.size() >= 4 && rest.front() >= '0' && rest.front() <= '9' &&
               rest.substr(1, 2).find(':') != std::string_view::npos &&
               rest.find_first_not_of("0123456789:.+-ZAPMapm ") == std::string_view::npos;
    };
    for (std::size_t at = 8; at + 1 < text.size(); ++at)
        if ((text[at] == ' ' || text[at] == 'T') && looks_like_time(text.substr(at + 1)))
            return trimmed(text.substr(0, text[at - 1] == ',' ? at - 1 : at));
    return text;
}

Marks find_marks(const Table& table, const Columns& columns, const ImportOptions& options) {
    Marks marks;
    marks.decimal_votes = votes_of(table, columns, false);
    marks.order_votes = votes_of(table, columns, true);
    settle_decimal(marks, options);
    settle_order(marks, options);
    marks.columns_with_decimals = columns_with_decimals(table, columns, marks.decimal);
    return marks;
}

} // namespace sumpbook::import
