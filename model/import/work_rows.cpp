// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/entry_rows.h"
#include "model/import/words.h"
#include "model/import/work_cells.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace sumpbook::import {
namespace {

/// What is wrong with the pieces of a cell, in one sentence after the other, and no longer than a text may be.
class PieceProblems {
public:
    void add(const std::string& sentence) {
        constexpr std::size_t most_told = 10;
        if (++count_ <= most_told) told_ += (told_.empty() ? "" : " ") + sentence;
        else if (count_ == most_told + 1) told_ += " And so on.";
    }
    [[nodiscard]] const std::string& told() const { return told_; }

private:
    std::string told_;
    std::size_t count_ = 0;
};

/// Reads the pieces of a cell one by one; unclear ones are left out and stand together in one doubt.
template <class Read>
auto read_list(RowReader& reader, std::string_view field, Read from_piece) {
    std::vector<typename decltype(from_piece(std::string_view()))::value_type> found;
    PieceProblems problems;
    reader.use(field);
    for (const auto& piece : pieces_of(reader.cell(field), '|')) {
        auto value = from_piece(piece);
        if (value)
            found.push_back(std::move(*value));
        else
            problems.add(value.error().sentence);
    }
    if (!problems.told().empty()) reader.doubt(field, "pieces between bars: " + problems.told());
    return found;
}

/// A plan item of the bike by its own name, or a starter item by its name or another word for it.
Result<std::string> plan_item_in(const Bike& bike, std::string_view piece) {
    const auto own = std::ranges::find_if(bike.plan, [piece](const auto& item) {
        return plain_words(item.value.slug) == plain_words(piece) ||
               plain_words(item.value.label) == plain_words(piece);
    });
    if (own != bike.plan.end()) return own->value.slug;
    if (auto starter = value_of_word("plan-item", piece)) return *starter;
    return refuse(fmt::format("\"{}\" is no plan item.", piece));
}

std::vector<std::string> read_does(RowReader& reader) {
    auto slugs =
        read_list(reader, "does", [&](std::string_view piece) { return plan_item_in(reader.bike(), piece); });
    std::vector<std::string> once;
    for (auto& slug : slugs)
        if (std::ranges::find(once, slug) == once.end()) once.push_back(std::move(slug));
    return once;
}

/// Without a typed total the column for all parts and the labour make it up; without that column nothing is
/// paid in one sum, so that the prices in the list of parts and the labour count. A typed total stays, and is
/// doubted where the two columns are there and say something else, and where they are past any amount.
void settle_paid(RowReader& reader, Entry& entry, const std::optional<Money>& parts,
                 const std::optional<Money>& labour) {
    if (!parts || (labour && parts->currency != labour->currency)) return;
    const Money sum{parts->minor + (labour ? labour->minor : 0), parts->currency};
    if (!is_allowed(sum))
        return reader.doubt("total", fmt::format("{}, parts and labour: more than an amount may be", text_of(sum)));
    if (!entry.paid) {
        if (!reader.has("total")) entry.paid = sum;
        return;
    }
    if (labour && entry.paid->currency == sum.currency && entry.paid->minor != sum.minor)
        reader.doubt("total",
                     fmt::format("{}, parts and labour; the total as typed counts until this is settled",
                                 text_of(sum)));
}

/// The prices in the list of parts, where every part has one, against the column for all parts.
void compare_parts(RowReader& reader, const Work& work, const std::optional<Money>& parts_price) {
    if (!parts_price || work.parts.empty()) return;
    std::int64_t sum = 0;
    for (const auto& part : work.parts) {
        if (!part.price || part.price->currency != parts_price->currency) return;
        sum += part.price->minor;
    }
    const Money listed_sum{sum, parts_price->currency};
    if (sum != parts_price->minor)
        reader.doubt(
            "parts price",
            fmt::format("{}, the sum of the parts listed; the price as typed counts until this is settled",
                        text_of(listed_sum)));
}

RowVerdict read_job(RowReader& reader, Entry& entry) {
    Work work;
    work.text = reader.text("text");
    work.checks = read_list(reader, "checks", check_in);
    const auto money_rules = reader.rules_of("parts price");
    work.parts =
        read_list(reader, "parts", [&](std::string_view piece) { return part_in(piece, money_rules); });
    work.torques =
        read_list(reader, "torques", [&](std::string_view piece) { return torque_in(piece, money_rules); });
    work.paint_marks_seen = read_list(reader, "paint marks", paint_mark_in);
    work.labour_hours = reader.number_from_zero("labour hours");
    const auto parts_price = reader.price("parts price");
    work.labour_price = reader.price("labour price");
    work.done_by = reader.choice<DoneBy>("done by", "done-by");
    work.planned = reader.yes_no("planned").value_or(false);
    compare_parts(reader, work, parts_price);
    settle_paid(reader, entry, parts_price, work.labour_price);
    const bool says_something =
        reader.has("does") || reader.has("checks") || reader.has("text") || reader.has("parts");
    entry.body = std::move(work);
    if (says_something) return {};
    return {.holds_entry = false, .reason = "it says neither what was done nor what was checked"};
}

/// Blank: work. A word that is no kind counts as work until it is settled.
std::string read_kind(RowReader& reader) {
    reader.use("kind");
    if (!reader.has("kind")) return "work";
    if (const auto kind = value_of_word("work-kind", reader.cell("kind"))) return *kind;
    reader.doubt("kind",
                 "one of " + listed(values_of("work-kind")) + "; it counts as work until this is settled");
    return "work";
}

} // namespace

RowVerdict read_work(RowReader& reader, Entry& entry) {
    const std::string kind = read_kind(reader);
    entry.paid = reader.price("total");
    entry.does = read_does(reader);
    const auto verdict = kind == "work" ? read_job(reader, entry) : read_other_kind(reader, entry, kind);
    reader.doubt_unused(kind);
    return verdict;
}

} // namespace sumpbook::import
