// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/stamp.h"

#include "model/store/archive.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>

namespace sumpbook::store {
namespace {

constexpr std::string_view title = "Sumpbook stamp 1";
constexpr std::string_view signed_title =
    "sumpbook stamp 1"; ///< Keeps these signatures apart from all others.
constexpr std::string_view blanks = " \t\r";
constexpr std::size_t label_columns = 13;
constexpr std::size_t hex_columns = 64;

// The labels, in the order they are written. Those of name and note are left out where these are empty.
constexpr std::string_view fingerprint_label = "Fingerprint";
constexpr std::string_view date_label = "Signed on";
constexpr std::string_view name_label = "Signed by";
constexpr std::string_view note_label = "Note";
constexpr std::string_view key_label = "Key";
constexpr std::string_view signature_label = "Signature";

/// Every run of blanks as one, none at the ends.
std::string with_single_blanks(std::string_view text) {
    std::string out;
    for (const char c : text) {
        const bool blank = blanks.find(c) != std::string_view::npos;
        if (blank && (out.empty() || out.back() == ' ')) continue;
        out += blank ? ' ' : c;
    }
    if (!out.empty() && out.back() == ' ') out.pop_back();
    return out;
}

std::string without_blanks(std::string_view text) {
    std::string out(text);
    std::erase(out, ' ');
    return out;
}

Result<std::string> free_text(std::string_view typed, std::string_view what) {
    const std::string text = with_single_blanks(typed);
    const bool control =
        std::ranges::any_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
    if (text.size() > max_stamp_text_bytes)
        return refuse(fmt::format("The {} of a stamp has at most {} bytes.", what, max_stamp_text_bytes));
    if (control || !is_utf8(text))
        return refuse(fmt::format("The {} of a stamp is one line of plain text.", what));
    return text;
}

/// "Label        text", hex digits 64 a line.
std::string line(std::string_view label, std::string_view text,
                 std::size_t at_most = std::string_view::npos) {
    std::string lines;
    for (std::size_t at = 0; at == 0 || at < text.size(); at += at_most) {
        lines += fmt::format("{:<{}}{}\n", at == 0 ? label : std::string_view{}, label_columns,
                             text.substr(at, at_most));
        if (at_most == std::string_view::npos) break;
    }
    return lines;
}

/// The text behind each label. Lines that begin with a blank go on with the one before.
Result<std::map<std::string_view, std::string>> fields_of(std::string_view text) {
    constexpr std::array labels{fingerprint_label, date_label, name_label,
                                note_label,        key_label,  signature_label};
    std::map<std::string_view, std::string> fields;
    std::string* last = nullptr;
    std::size_t number = 0;
    bool titled = false;
    while (!text.empty()) {
        const auto end = text.find('\n');
        const auto whole = text.substr(0, end);
        text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
        ++number;
        const Place place{.file = {}, .line = number, .column = {}, .text = {}};
        const std::string words = with_single_blanks(whole);
        if (words.empty()) continue;
        if (!titled) {
            if (words != title)
                return refuse("This is no stamp: it does not begin with \"Sumpbook stamp 1\".", place);
            titled = true;
            continue;
        }
        if (blanks.find(whole.front()) != std::string_view::npos) {
            if (last == nullptr) return refuse("This line of the stamp has no label.", place);
            *last += (last->empty() ? "" : " ") + words;
            continue;
        }
        const auto label = std::ranges::find_if(labels, [&](std::string_view one) {
            return words == one || words.starts_with(std::string(one) + ' ');
        });
        if (label == labels.end()) return refuse("This line of the stamp has no label that is known.", place);
        const auto [field, is_new] = fields.try_emplace(*label);
        if (!is_new) return refuse(fmt::format("\"{}\" stands in the stamp twice.", *label), place);
        last = &field->second;
        *last = with_single_blanks(std::string_view(words).substr(label->size()));
    }
    if (!titled) return refuse("This is no stamp: it is empty.");
    return fields;
}

template <std::size_t N>
Result<std::array<std::uint8_t, N>> hex_field(const std::string& text, std::string_view label) {
    const auto bytes = bytes_of_hex(without_blanks(text));
    if (!bytes || bytes->size() != N)
        return refuse(fmt::format("\"{}\" of this stamp is not {} hexadecimal digits.", label, 2 * N));
    return get_array<N>(*bytes, 0);
}

} // namespace

std::string signed_text(const Stamp& stamp) {
    return fmt::format("{}\n{}\n{}\n{}\n{}\n{}\n", signed_title, stamp.fingerprint.text(),
                       iso_text(stamp.date), stamp.name, stamp.note, hex_text(stamp.key));
}

Result<Stamp> sign_stamp(const PrivateKey& key, TypedFingerprint fingerprint, const Date& date,
                         std::string_view name, std::string_view note) {
    auto clean_name = free_text(name, "name");
    if (!clean_name) return pass_on(clean_name.error());
    auto clean_note = free_text(note, "note");
    if (!clean_note) return pass_on(clean_note.error());
    Stamp stamp{.fingerprint = std::move(fingerprint),
                .date = date,
                .name = *std::move(clean_name),
                .note = *std::move(clean_note),
                .key = public_key_of(key)};
    stamp.signature = signature_of(key, as_bytes(signed_text(stamp)));
    return stamp;
}

bool is_signed(const Stamp& stamp) {
    return signature_fits(stamp.key, as_bytes(signed_text(stamp)), stamp.signature);
}

std::string stamp_text(const Stamp& stamp) {
    std::string text(title);
    text += '\n';
    text += line(fingerprint_label, stamp.fingerprint.text());
    text += line(date_label, iso_text(stamp.date));
    if (!stamp.name.empty()) text += line(name_label, stamp.name);
    if (!stamp.note.empty()) text += line(note_label, stamp.note);
    text += line(key_label, hex_text(stamp.key));
    text += line(signature_label, hex_text(stamp.signature), hex_columns);
    return text;
}

Result<Stamp> read_stamp(std::string_view text) {
    auto fields = fields_of(text);
    if (!fields) return pass_on(fields.error());
    for (const auto label : {fingerprint_label, date_label, key_label, signature_label}) {
        if (!fields->contains(label)) return refuse(fmt::format("This stamp has no line \"{}\".", label));
    }
    Stamp stamp;
    auto fingerprint = TypedFingerprint::read((*fields)[fingerprint_label]);
    if (!fingerprint) return pass_on(fingerprint.error());
    stamp.fingerprint = *std::move(fingerprint);
    const auto date = parse_iso_date((*fields)[date_label]);
    if (!date) return pass_on(date.error());
    stamp.date = *date;
    auto name = free_text((*fields)[name_label], "name");
    if (!name) return pass_on(name.error());
    stamp.name = *std::move(name);
    auto note = free_text((*fields)[note_label], "note");
    if (!note) return pass_on(note.error());
    stamp.note = *std::move(note);
    const auto key = hex_field<32>((*fields)[key_label], key_label);
    if (!key) return pass_on(key.error());
    stamp.key = *key;
    const auto signature = hex_field<64>((*fields)[signature_label], signature_label);
    if (!signature) return pass_on(signature.error());
    stamp.signature = *signature;
    return stamp;
}

} // namespace sumpbook::store
