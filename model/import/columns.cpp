// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/columns.h"

#include "model/import/heading.h"
#include "model/import/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>

namespace sumpbook::import {
namespace {

/// Whether the left side of a map names this column: its heading, or # and its number.
bool names_column(std::string_view name, std::size_t index, std::string_view heading) {
    if (name.starts_with('#')) {
        std::size_t number = 0;
        const auto digits = name.substr(1);
        const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
        return error == std::errc() && end == digits.data() + digits.size() && number == index + 1;
    }
    return trimmed(name) == trimmed(heading) || plain_words(name) == plain_words(heading);
}

tl::unexpected<Problem> usage(std::string sentence) {
    return fail(ProblemKind::wrong_usage, std::move(sentence));
}

std::string field_list(ImportKind kind) {
    std::vector<std::string> slugs;
    for (const auto& field : fields_of(kind))
        slugs.push_back(field.slug);
    return listed(slugs);
}

/// Builds the proposal step by step; `open_` holds the headings that may be several fields.
class Proposal {
public:
    Proposal(ImportKind kind, const ImportOptions& options, const Currency& garage)
        : kind_(kind)
        , options_(options)
        , garage_(garage) {}

    Result<Columns> run(const std::vector<std::string>& headings) {
        for (std::size_t i = 0; i < headings.size(); ++i)
            add(i, headings[i]);
        if (auto done = apply_map(); !done) return pass_on(done.error());
        match_words();
        settle_open();
        if (auto done = apply_units(); !done) return pass_on(done.error());
        ask_about_doubles();
        ask_about_units();
        return std::move(columns_);
    }

private:
    void add(std::size_t index, const std::string& heading) {
        columns_.all.push_back({.index = index,
                                .heading = std::string(trimmed(heading)),
                                .field = nullptr,
                                .unit = {},
                                .stated = false});
    }

    Result<void> apply_map() {
        for (const auto& [name, slug] : options_.map) {
            const bool out = slug == "-" || slug.empty();
            const Field* field = out ? nullptr : find_field(kind_, slug);
            if (!out && field == nullptr)
                return usage(
                    fmt::format("There is no field \"{}\" here. Fields are {}.", slug, field_list(kind_)));
            if (!map_columns(name, field)) return usage(fmt::format("The file has no column \"{}\".", name));
        }
        return {};
    }

    bool map_columns(std::string_view name, const Field* field) {
        bool found = false;
        for (auto& column : columns_.all) {
            if (!names_column(name, column.index, column.heading)) continue;
            found = true;
            column.stated = true;
            take(column,
                 field == nullptr ? HeadingMatch{} : match_with(*field, take_apart(column.heading), garage_));
        }
        return found;
    }

    void take(Column& column, HeadingMatch match) {
        column.field = match.field;
        column.unit = std::move(match.unit);
        unclear_[column.index] = std::move(match.unclear);
    }

    [[nodiscard]] bool is_taken(const Field* field) const {
        return std::ranges::any_of(columns_.all,
                                   [field](const Column& column) { return column.field == field; });
    }

    void match_words() {
        for (auto& column : columns_.all) {
            if (column.stated || column.heading.empty()) continue;
            auto matches = matches_of(kind_, take_apart(column.heading), garage_);
            if (matches.size() == 1) take(column, std::move(matches.front()));
            if (matches.size() > 1) open_.emplace(column.index, std::move(matches));
        }
    }

    /// A heading of two meanings is the one that no other column has; else it is asked about.
    void settle_open() {
        for (auto& [index, matches] : open_) {
            std::vector<HeadingMatch> left;
            for (auto& match : matches)
                if (!is_taken(match.field)) left.push_back(match);
            Column& column = columns_.all[index];
            if (left.size() == 1) {
                take(column, std::move(left.front()));
            } else {
                std::vector<std::string> slugs;
                for (const auto& match : matches)
                    slugs.push_back("\"" + match.field->slug + "\"");
                ask(fmt::format("The column \"{}\" may hold {}: which is it?", column.heading, listed(slugs)),
                    fmt::format("--map \"{}={}\"", column.heading, matches.front().field->slug));
            }
        }
    }

    Result<void> apply_units() {
        for (const auto& [slug, text] : options_.units) {
            const Field* field = find_field(kind_, slug);
            if (field == nullptr)
                return usage(
                    fmt::format("There is no field \"{}\" here. Fields are {}.", slug, field_list(kind_)));
            for (auto& column : columns_.all) {
                if (column.field != field) continue;
                if (const auto added = add_unit(column.unit, *field, text, garage_); !added)
                    return usage(added.error().sentence);
                unclear_[column.index].clear();
            }
        }
        return {};
    }

    void ask_about_doubles() {
        std::map<const Field*, std::vector<const Column*>> by_field;
        for (const auto& column : columns_.all)
            if (column.field != nullptr) by_field[column.field].push_back(&column);
        for (const auto& field : fields_of(kind_)) {
            const auto found = by_field.find(&field);
            if (found == by_field.end() || found->second.size() < 2) continue;
            std::vector<std::string> names;
            for (const Column* column : found->second)
                names.push_back(fmt::format("\"{}\" (#{})", column->heading, column->index + 1));
            ask(fmt::format("The columns {} both look like \"{}\": which one is it?", listed(names),
                            field.slug),
                fmt::format("--map \"#{}=-\"", found->second.back()->index + 1));
        }
    }

    void ask_about_units() {
        for (const auto& column : columns_.all) {
            const std::string& unclear = unclear_[column.index];
            if (column.field == nullptr || unclear.empty()) continue;
            ask(fmt::format("In which unit is the column \"{}\"? {}", column.heading,
                            why_unclear(*column.field, unclear)),
                fmt::format("--unit \"{}={}\"", column.field->slug, example_unit(*column.field)));
        }
    }

    [[nodiscard]] std::string why_unclear(const Field& field, const std::string& unclear) const {
        const auto words = pieces_of(plain_words(unclear), ' ');
        if (std::ranges::any_of(words, [](const auto& word) { return is_unclear_volume(word); }))
            return "US and imperial measure differ by a fifth.";
        ColumnUnit unit;
        const auto added = add_unit(unit, field, unclear, garage_);
        return added ? std::string() : added.error().sentence;
    }

    [[nodiscard]] std::string example_unit(const Field& field) const {
        switch (field.type) {
        case FieldType::distance:
            return "km";
        case FieldType::volume:
            return "US gal";
        case FieldType::money:
            return garage_.code();
        case FieldType::unit_price:
            return garage_.code() + " per L";
        default:
            return usual_unit_of(field.slug);
        }
    }

    void ask(std::string sentence, std::string option) {
        columns_.questions.push_back({std::move(sentence), std::move(option)});
    }

    ImportKind kind_;
    const ImportOptions& options_;
    const Currency& garage_;
    Columns columns_;
    std::map<std::size_t, std::vector<HeadingMatch>> open_;
    std::map<std::size_t, std::string> unclear_;
};

} // namespace

const Column* Columns::of(std::string_view field_slug) const {
    for (const auto& column : all)
        if (column.field != nullptr && column.field->slug == field_slug) return &column;
    return nullptr;
}

std::size_t known_headings(ImportKind kind, const std::vector<std::string>& cells,
                           const ImportOptions& options) {
    std::size_t known = 0;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const bool mapped = std::ranges::any_of(options.map, [&](const auto& pair) {
            return !pair.first.starts_with('#') && names_column(pair.first, i, cells[i]);
        });
        // A cell longer than any heading is prose, not a heading; the bound also keeps the search short.
        if (mapped || (cells[i].size() < 100 && !matches_of(kind, take_apart(cells[i]), Currency()).empty()))
            ++known;
    }
    return known;
}

Result<Columns> propose_columns(ImportKind kind, const std::vector<std::string>& headings,
                                const ImportOptions& options, const Currency& garage) {
    return Proposal(kind, options, garage).run(headings);
}

} // namespace sumpbook::import
