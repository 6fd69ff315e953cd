// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/import/fuel_file_generator.h"

#include <algorithm>
#include <array>
#include <random>
#include <string_view>

namespace sumpbook::import {
namespace {

/// Draws that are the same with every library: no std distribution is used.
class Dice {
public:
    explicit Dice(std::uint64_t seed)
        : engine_(seed) {}
    std::int64_t from_to(std::int64_t low, std::int64_t high) {
        return low + static_cast<std::int64_t>(engine_() % static_cast<std::uint64_t>(high - low + 1));
    }
    bool chance(int percent) { return from_to(1, 100) <= percent; }
    template <class List>
    const auto& one_of(const List& list) {
        return list[static_cast<std::size_t>(from_to(0, static_cast<std::int64_t>(list.size()) - 1))];
    }

private:
    std::mt19937_64 engine_;
};

struct Language {
    std::string date, odometer, volume, price, total, full, missed, octane, note;
    std::string yes, no;
};

const std::vector<Language>& languages() {
    static const std::vector<Language> all = {{"Date", "Odometer", "Volume", "Unit price", "Total",
                                               "Full tank", "Missed fill", "Octane", "Notes", "yes", "no"},
                                              {"Datum", "Kilometerstand", "Menge", "Einzelpreis", "Gesamt",
                                               "voll", "ausgelassen", "Oktan", "Notiz", "ja", "nein"},
                                              {"Date", "Compteur", "Quantité", "Prix unitaire", "Montant",
                                               "Plein", "oublié", "Indice d'octane", "Commentaire", "oui",
                                               "non"},
                                              {"Fecha", "Odómetro", "Cantidad", "Precio unitario", "Importe",
                                               "Lleno", "omitido", "Octanaje", "Notas", "sí", "no"},
                                              {"Data", "Odometro", "Quantità", "Prezzo unitario", "Totale",
                                               "Pieno", "saltato", "Ottani", "Nota", "sì", "no"}};
    return all;
}

enum class FullMarking { yes_no, cross, only_no };
enum class DateForm { iso, iso_time, dotted_dmy, slashed_dmy, slashed_mdy, dashed_dmy, spelled };
enum class Bytes { utf8, utf8_mark, utf16_little, utf16_big, windows_1252 };

struct Manner {
    Language words;
    char separator = ',';
    bool comma = false;
    std::string group;
    DateForm dates = DateForm::iso;
    Bytes bytes = Bytes::utf8;
    FullMarking full = FullMarking::yes_no;
    bool units_in_brackets = true;
    bool currency_sign = false;
    bool crlf = false;
    bool newest_first = false;
    bool preamble = false;
    int odometer_scale = 0;
    int volume_scale = 2;
    std::vector<std::size_t> column_order;
};

Manner draw_manner(Dice& dice) {
    Manner manner;
    manner.words = dice.one_of(languages());
    manner.separator = dice.one_of(std::string_view(",;\t|"));
    manner.comma = dice.chance(50);
    const std::vector<std::string> groups = {"", "", "", manner.comma ? "." : ",", " ", "\xC2\xA0", "'"};
    manner.group = dice.one_of(groups);
    manner.dates = static_cast<DateForm>(dice.from_to(0, 6));
    manner.bytes = static_cast<Bytes>(dice.from_to(0, 4));
    manner.full = static_cast<FullMarking>(dice.from_to(0, 2));
    manner.units_in_brackets = dice.chance(70);
    manner.currency_sign = dice.chance(20);
    manner.crlf = dice.chance(50);
    manner.newest_first = dice.chance(20);
    manner.preamble = dice.chance(20);
    manner.odometer_scale = dice.chance(20) ? 1 : 0;
    manner.volume_scale = dice.chance(15) ? 3 : 2;
    manner.column_order = {0, 1, 2, 3, 4, 5, 6, 7, 8};
    for (std::size_t i = manner.column_order.size(); i-- > 1;)
        std::swap(
            manner.column_order[i],
            manner.column_order[static_cast<std::size_t>(dice.from_to(0, static_cast<std::int64_t>(i)))]);
    return manner;
}

std::int64_t power_of_ten(int exponent) {
    std::int64_t power = 1;
    while (exponent-- > 0)
        power *= 10;
    return power;
}

double real(const TrueNumber& number) {
    return static_cast<double>(number.steps) / static_cast<double>(power_of_ten(number.scale));
}

std::string written(const TrueNumber& number, const Manner& manner, bool grouped) {
    std::string whole = std::to_string(number.steps / power_of_ten(number.scale));
    if (grouped)
        for (std::size_t at = whole.size(); at > 3; at -= 3)
            whole.insert(at - 3, manner.group);
    if (number.scale == 0) return whole;
    std::string decimals = std::to_string(number.steps % power_of_ten(number.scale));
    decimals.insert(0, static_cast<std::size_t>(number.scale) - decimals.size(), '0');
    return whole + (manner.comma ? "," : ".") + decimals;
}

std::string two(unsigned number) { return (number < 10 ? "0" : "") + std::to_string(number); }

std::string written(const Date& date, DateForm form) {
    const auto day = static_cast<unsigned>(date.day());
    const auto month = static_cast<unsigned>(date.month());
    const std::string year = std::to_string(static_cast<int>(date.year()));
    switch (form) {
    case DateForm::iso:
        return iso_text(date);
    case DateForm::iso_time:
        return iso_text(date) + " 14:05";
    case DateForm::dotted_dmy:
        return two(day) + "." + two(month) + "." + year;
    case DateForm::slashed_dmy:
        return two(day) + "/" + two(month) + "/" + year;
    case DateForm::slashed_mdy:
        return std::to_string(month) + "/" + std::to_string(day) + "/" + year;
    case DateForm::dashed_dmy:
        return two(day) + "-" + two(month) + "-" + year;
    case DateForm::spelled:
        return spelled_text(date);
    }
    return {};
}

double litres_in(VolumeUnit unit) {
    // 231 cubic inches of 2.54 cm; the imperial gallon is 4.54609 L by definition.
    return unit == VolumeUnit::us_gal    ? 231 * 2.54 * 2.54 * 2.54 / 1000
           : unit == VolumeUnit::imp_gal ? 4.54609
                                         : 1;
}

double kilometres_in(DistanceUnit unit) { return unit == DistanceUnit::mi ? 1.609344 : 1; }

/// Rides and fills, in the units of the file.
void ride(FuelFile& file, const Manner& manner, Dice& dice) {
    const auto count = dice.from_to(40, 120);
    Date date = plus_days(Date{std::chrono::year{2012} / 1 / 1}, static_cast<int>(dice.from_to(0, 2500)));
    const std::int64_t odometer_step = power_of_ten(manner.odometer_scale);
    std::int64_t odometer = dice.from_to(1500, 60000) * odometer_step;
    const double litres_per_km = static_cast<double>(dice.from_to(400, 700)) / 10000;
    for (std::int64_t i = 0; i < count; ++i) {
        TrueFill fill;
        fill.missed = i > 0 && dice.chance(4);
        const auto distance =
            dice.from_to(90, 330) * odometer_step + (odometer_step > 1 ? dice.from_to(0, 9) : 0);
        const double km = static_cast<double>(distance) / static_cast<double>(odometer_step) *
                          kilometres_in(file.distance_unit);
        odometer += fill.missed ? 2 * distance : distance;
        date = plus_days(date, dice.chance(3) ? 0 : static_cast<int>(dice.from_to(2, 20)));
        fill.date = date;
        fill.full = i == 0 || !dice.chance(15);
        const double wobble = static_cast<double>(dice.from_to(90, 110)) / 100 * (fill.full ? 1.0 : 0.5);
        const double amount = km * litres_per_km * wobble / litres_in(file.volume_unit);
        fill.volume = {
            static_cast<std::int64_t>(amount * static_cast<double>(power_of_ten(manner.volume_scale))) + 1,
            manner.volume_scale};
        fill.price = {dice.from_to(1200, 2200), 3};
        const std::int64_t unit = power_of_ten(manner.volume_scale + 3 - 2); // to cents
        fill.total = {(fill.volume.steps * fill.price.steps + unit / 2) / unit, 2};
        fill.odometer = fill.right_odometer = {odometer, manner.odometer_scale};
        file.fills.push_back(fill);
    }
}

std::string slipped(std::string digits, Dice& dice) {
    const auto at = static_cast<std::size_t>(dice.from_to(0, static_cast<std::int64_t>(digits.size()) - 1));
    const char digit = static_cast<char>('0' + dice.from_to(0, 9));
    switch (dice.from_to(0, 3)) {
    case 0:
        if (at + 1 < digits.size()) std::swap(digits[at], digits[at + 1]);
        return digits;
    case 1:
        return digits.erase(at, 1);
    case 2:
        return digits.insert(at, 1, digit);
    default:
        digits[at] = digit;
        return digits;
    }
}

/// One slip of the hand that makes a reading fall out of the run of its neighbours.
std::size_t slip(FuelFile& file, Dice& dice) {
    while (true) {
        const auto at =
            static_cast<std::size_t>(dice.from_to(1, static_cast<std::int64_t>(file.fills.size()) - 2));
        const std::string digits = slipped(std::to_string(file.fills[at].odometer.steps), dice);
        if (digits.empty() || digits.front() == '0') continue;
        const std::int64_t steps = std::stoll(digits);
        if (steps >= file.fills[at - 1].odometer.steps && steps <= file.fills[at + 1].odometer.steps)
            continue;
        file.fills[at].odometer.steps = steps;
        return at;
    }
}

/// Full to full: what was filled after one full fill up to and including the next, over the distance.
void work_out_spans(FuelFile& file) {
    std::optional<double> from;
    double litres = 0;
    bool sound = true;
    for (const auto& fill : file.fills) {
        const double at = real(fill.right_odometer) * kilometres_in(file.distance_unit);
        litres += real(fill.volume) * litres_in(file.volume_unit);
        sound = sound && !fill.missed;
        if (!fill.full) continue;
        if (from && sound && at > *from) file.spans.push_back({fill.line, litres / (at - *from) * 100});
        from = at;
        litres = 0;
        sound = true;
    }
}

std::string mark_of(const TrueFill& fill, const Manner& manner) {
    switch (manner.full) {
    case FullMarking::yes_no:
        return fill.full ? manner.words.yes : manner.words.no;
    case FullMarking::cross:
        return fill.full ? "x" : "";
    case FullMarking::only_no:
        return fill.full ? "" : manner.words.no;
    }
    return {};
}

std::vector<std::string> headings_of(const FuelFile& file, const Manner& manner) {
    const auto& words = manner.words;
    const auto with = [&](const std::string& word, std::string_view unit) {
        return word + (manner.units_in_brackets ? " (" : " [") + std::string(unit) +
               (manner.units_in_brackets ? ")" : "]");
    };
    return {words.date,
            with(words.odometer, symbol(file.distance_unit)),
            with(words.volume, symbol(file.volume_unit)),
            words.price,
            with(words.total, "EUR"),
            words.full,
            words.missed,
            words.octane,
            words.note};
}

std::vector<std::string> cells_of(const TrueFill& fill, const Manner& manner, bool unreadable) {
    return {written(fill.date, manner.dates),
            written(fill.odometer, manner, true),
            written(fill.volume, manner, false),
            written(fill.price, manner, false),
            (manner.currency_sign ? "€ " : "") + written(fill.total, manner, true),
            mark_of(fill, manner),
            fill.missed ? manner.words.yes : "",
            unreadable ? "9S" : "95",
            fill.missed ? "a \"long\" ride" + std::string(1, manner.separator) + "\nno receipt" : ""};
}

std::string quoted(const std::string& cell, char separator) {
    if (cell.find_first_of(std::string("\"\r\n") + separator) == std::string::npos) return cell;
    std::string out = "\"";
    for (const char c : cell)
        out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + "\"";
}

/// Writes rows and keeps count of the lines.
class Writer {
public:
    Writer(const Manner& manner)
        : manner_(manner) {}
    /// Returns the line on which the row stands.
    std::size_t row(const std::vector<std::string>& cells) {
        const std::size_t line = line_;
        std::string text;
        for (std::size_t i = 0; i < manner_.column_order.size(); ++i)
            text += (i == 0 ? "" : std::string(1, manner_.separator)) +
                    quoted(cells[manner_.column_order[i]], manner_.separator);
        this->line(text);
        return line;
    }
    void line(const std::string& text) {
        text_ += text + (manner_.crlf ? "\r\n" : "\n");
        line_ += 1 + static_cast<std::size_t>(std::ranges::count(text, '\n'));
    }
    [[nodiscard]] const std::string& text() const { return text_; }

private:
    const Manner& manner_;
    std::string text_;
    std::size_t line_ = 1;
};

struct RowToWrite {
    std::size_t fill = 0;
    bool duplicate = false;
};

/// All fills in file order, and up to three copies somewhere below their original.
std::vector<RowToWrite> rows_of(const FuelFile& file, const Manner& manner, std::size_t typo, Dice& dice) {
    std::vector<RowToWrite> rows;
    for (std::size_t i = 0; i < file.fills.size(); ++i)
        rows.push_back({manner.newest_first ? file.fills.size() - 1 - i : i, false});
    for (auto left = dice.from_to(0, 3); left > 0; --left) {
        const auto from =
            static_cast<std::size_t>(dice.from_to(0, static_cast<std::int64_t>(rows.size()) - 1));
        if (rows[from].fill == typo || rows[from].duplicate) continue;
        const auto to =
            dice.from_to(static_cast<std::int64_t>(from) + 1, static_cast<std::int64_t>(rows.size()));
        rows.insert(rows.begin() + to, {rows[from].fill, true});
    }
    return rows;
}

char32_t next_letter(std::string_view text, std::size_t& at) {
    const auto byte = [&](std::size_t i) {
        return static_cast<char32_t>(static_cast<unsigned char>(text[i]));
    };
    const char32_t lead = byte(at++);
    if (lead < 0x80) return lead;
    const int more = lead >= 0xE0 ? 2 : 1; // the generator writes nothing beyond 16 bits
    char32_t letter = lead & (more == 2 ? 0x0F : 0x1F);
    for (int i = 0; i < more; ++i)
        letter = (letter << 6) | (byte(at++) & 0x3F);
    return letter;
}

std::string encoded(const std::string& text, Bytes bytes) {
    if (bytes == Bytes::utf8) return text;
    if (bytes == Bytes::utf8_mark) return "\xEF\xBB\xBF" + text;
    std::string out = bytes == Bytes::utf16_little ? "\xFF\xFE" : bytes == Bytes::utf16_big ? "\xFE\xFF" : "";
    for (std::size_t at = 0; at < text.size();) {
        const char32_t letter = next_letter(text, at);
        const char low = static_cast<char>(letter & 0xFF);
        const char high = static_cast<char>(letter >> 8);
        if (bytes == Bytes::windows_1252)
            out += letter == 0x20AC ? '\x80' : low;
        else if (bytes == Bytes::utf16_little)
            out.append({low, high});
        else
            out.append({high, low});
    }
    return out;
}

void write(FuelFile& file, const Manner& manner, std::size_t typo, Dice& dice) {
    Writer writer(manner);
    if (manner.preamble) {
        writer.line("My fuel, all of it");
        writer.line("");
    }
    writer.row(headings_of(file, manner));
    for (const auto& [index, duplicate] : rows_of(file, manner, typo, dice)) {
        TrueFill& fill = file.fills[index];
        const bool unreadable = !duplicate && index != typo && dice.chance(1);
        const bool copied_unreadable = duplicate && file.unreadable_lines.contains(fill.line);
        const std::size_t line = writer.row(cells_of(fill, manner, unreadable || copied_unreadable));
        if (duplicate)
            file.duplicate_lines.insert(line);
        else
            fill.line = line;
        if (unreadable) file.unreadable_lines.insert(line);
        ++file.rows;
    }
    if (dice.chance(30)) writer.line("");
    file.typo_line = file.fills[typo].line;
    file.bytes = encoded(writer.text(), manner.bytes);
}

bool day_shows_order(const FuelFile& file) {
    return std::ranges::any_of(
        file.fills, [](const TrueFill& fill) { return static_cast<unsigned>(fill.date.day()) > 12; });
}

} // namespace

FuelFile generate_fuel_file(std::uint64_t seed) {
    Dice dice(seed);
    const Manner manner = draw_manner(dice);
    FuelFile file;
    file.distance_unit = dice.chance(30) ? DistanceUnit::mi : DistanceUnit::km;
    file.volume_unit =
        dice.one_of(std::array{VolumeUnit::l, VolumeUnit::l, VolumeUnit::us_gal, VolumeUnit::imp_gal});
    file.manner = "separator " + std::string(1, manner.separator) + ", " +
                  (manner.comma ? "decimal comma" : "decimal point") + ", group '" + manner.group +
                  "', dates " + std::to_string(static_cast<int>(manner.dates)) + ", bytes " +
                  std::to_string(static_cast<int>(manner.bytes));
    ride(file, manner, dice);
    const std::size_t typo = slip(file, dice);
    write(file, manner, typo, dice);
    work_out_spans(file);
    if (!day_shows_order(file))
        file.options.date_order =
            manner.dates == DateForm::slashed_mdy ? DateOrder::month_day_year : DateOrder::day_month_year;
    return file;
}

} // namespace sumpbook::import
