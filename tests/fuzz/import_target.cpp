// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/plan.h"
#include "model/import/plan_text.h"
#include "model/store/archive.h"
#include "model/store/bodies.h"
#include "tests/fuzz/targets.h"
#include "tests/model/import/import_garage.h"

namespace sumpbook::fuzz {

using namespace import;

namespace {

struct Wish {
    ImportKind kind = ImportKind::fuel;
    ImportOptions options;
    Garage garage;
};

/// Byte 1: kind, one bike or two, separator. Byte 2: order of dates, decimal mark, encoding, bike.
Wish wish_of(std::uint8_t first, std::uint8_t second) {
    Wish wish;
    wish.kind = static_cast<ImportKind>((first & 7U) % 5U);
    wish.garage = (first & 8U) != 0 ? two_bikes() : one_bike();
    constexpr std::array separators{',', ';', '\t', '|'};
    if ((first & 16U) != 0) wish.options.separator = separators[(first >> 5U) & 3U];
    constexpr std::array orders{DateOrder::day_month_year, DateOrder::month_day_year,
                                DateOrder::year_month_day};
    if ((second & 3U) != 0) wish.options.date_order = orders[(second & 3U) - 1U];
    if ((second & 4U) != 0)
        wish.options.decimal_mark = (second & 8U) != 0 ? DecimalMark::comma : DecimalMark::point;
    constexpr std::array encodings{Encoding::utf8, Encoding::utf16_little, Encoding::utf16_big,
                                   Encoding::windows_1252};
    if ((second & 16U) != 0) wish.options.encoding = encodings[(second >> 5U) & 3U];
    if ((second & 128U) != 0) wish.options.bike = "Tourer";
    return wish;
}

Result<ImportPlan> plan_of(const Wish& wish, std::string_view text) {
    return plan_import(wish.kind, "input.csv", text, wish.options, wish.garage, {}, import_day);
}

void lines_are_lines(const ImportPlan& plan) {
    for (const auto& lines : {layout_lines(plan), entry_lines(plan), doubt_lines(plan), duplicate_lines(plan),
                              kept_out_lines(plan), question_lines(plan)}) {
        for (const auto& line : lines) {
            must(!line.empty() && line.find_first_of("\r\n") == std::string::npos, "a line is one line");
            must(store::is_utf8(line), "a line is UTF-8");
        }
    }
    must(!count_line(plan).empty(), "the counts are said");
}

void counts_add_up(const ImportPlan& plan) {
    if (plan.ready())
        must(plan.entries.size() + plan.duplicates.size() + plan.kept_out.size() == plan.rows,
             "every row is an entry, a duplicate or kept out");
    else
        must(plan.entries.empty() && plan.duplicates.empty() && plan.kept_out.empty(),
             "an open question lets nothing in");
}

/// The entry as the garage gives it back after it was saved.
Entry saved(const Entry& entry) {
    const auto batches = store::encode_records({Record{{}, {}, entry}});
    must(batches.has_value() && batches->size() == 1, "what is planned can be saved");
    const auto& batch = batches->front();
    store::Frame frame;
    frame.header.entry_count = batch.count;
    for (std::size_t slot = 0; slot < batch.parts.size(); ++slot) {
        if (batch.parts[slot].empty()) continue;
        frame.header.parts_exist |= store::bit_of(slot);
        frame.parts[slot] = {.shown = true, .hash = {}, .salt = {}, .body = batch.parts[slot]};
    }
    const auto records = store::decode_records(frame);
    must(records.has_value() && records->size() == 1, "what was saved can be read");
    const auto& again = std::get<Entry>(records->front().content);
    const auto same = store::encode_records({Record{{}, {}, again}});
    must(same.has_value() && same->front().parts == batch.parts, "what was read is what was saved");
    return again;
}

void adds_nothing_again(Wish wish, const ImportPlan& plan, std::string_view text) {
    std::size_t number = 0;
    for (const auto& planned : plan.entries) {
        for (auto& bike : wish.garage.bikes) {
            const auto id = "k7-" + std::to_string(++number);
            if (bike.id == planned.bike) record(bike, saved(planned.entry), id.c_str());
        }
    }
    const auto again = plan_of(wish, text);
    must(again.has_value() && again->ready(), "a file that was imported can be read again");
    must(again->entries.empty(), "a file that was imported adds nothing");
}

} // namespace

void try_import(store::ByteView bytes) {
    if (bytes.size() < 2) return;
    const auto wish = wish_of(bytes[0], bytes[1]);
    const auto rest = bytes.subspan(2);
    const std::string text(rest.begin(), rest.end());
    const auto plan = plan_of(wish, text);
    if (!plan) return must(!plan.error().sentence.empty(), "a refusal has a sentence");
    lines_are_lines(*plan);
    counts_add_up(*plan);
    if (plan->ready()) adds_nothing_again(wish, *plan, text);
}

} // namespace sumpbook::fuzz
