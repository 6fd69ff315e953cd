// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/chain_notes.h"

#include <fmt/format.h>

#include <algorithm>
#include <locale>
#include <sstream>

namespace sumpbook::store {
namespace {

constexpr std::size_t notes_limit = 16 * 1024 * 1024;
constexpr std::size_t check_bytes = 8;
constexpr std::string_view check_word = " check ";

std::string text_of(const std::optional<ChainEnd>& end) {
    return fmt::format("{:>10} {:>64}", end ? std::to_string(end->sequence) : "-",
                       end ? hex_text(end->hash) : "-");
}

std::string check_of(std::string_view line) {
    const auto hash = sha256({as_bytes(line)});
    return hex_text(ByteView(hash).first(check_bytes));
}

template <std::size_t N>
bool read_hex(const std::string& text, std::array<std::uint8_t, N>& into) {
    const auto bytes = bytes_of_hex(text);
    if (!bytes || bytes->size() != N) return false;
    std::ranges::copy(*bytes, into.begin());
    return true;
}

/// False when it is neither "- -" nor a number and a hash.
bool read_end(std::istream& words, std::optional<ChainEnd>& into) {
    std::string number, hash;
    words >> number >> hash;
    if (number == "-" && hash == "-") return true;
    ChainEnd end;
    std::istringstream digits(number);
    digits.imbue(std::locale::classic());
    if (!(digits >> end.sequence) || !digits.eof() || !read_hex(hash, end.hash)) return false;
    into = end;
    return true;
}

std::optional<ChainNote> read_note(const std::string& line) {
    const auto end = line.rfind(check_word);
    if (end == std::string::npos) return std::nullopt;
    const std::string checked = line.substr(0, end);
    if (line.substr(end + check_word.size()) != check_of(checked)) return std::nullopt;
    std::istringstream words(checked);
    words.imbue(std::locale::classic());
    ChainNote note;
    std::string word, chain, subject;
    if (!(words >> word >> chain) || word != "chain" || !read_hex(chain, note.chain.bytes))
        return std::nullopt;
    if (!(words >> word >> subject) || word != "subject" || !read_hex(subject, note.subject.bytes))
        return std::nullopt;
    if (!(words >> word) || word != "written" || !read_end(words, note.written)) return std::nullopt;
    if (!(words >> word) || word != "about" || !read_end(words, note.about_to_write)) return std::nullopt;
    return note;
}

bool ends_as_noted(const ChainNote& note, const ChainEnd& end) {
    return end == note.written || end == note.about_to_write;
}

ChainEnd end_of(const IndexedFrame& head) { return {head.sequence, head.hash}; }

/// Why a noted chain is not continued.
std::string reason_against(const ChainNote& note, const Chain* chain, const ChainIndex& index) {
    if (chain == nullptr) return "this file is an older copy, without entries that were written here";
    const auto heads = index.heads(*chain);
    if (heads.size() > 1) return "copies of this installation continued the same entries in different ways";
    const auto end = end_of(*heads.front());
    if (note.written && end.sequence > note.written->sequence)
        return "this file holds entries in this installation's name that it did not write";
    if (note.written && end.sequence < note.written->sequence)
        return "this file is an older copy, without the last entries written here";
    return "the last entry in this installation's name is not the one it wrote";
}

} // namespace

std::string text_of(const std::vector<ChainNote>& notes) {
    std::string text;
    for (const auto& note : notes) {
        const auto line =
            fmt::format("chain {} subject {} written {} about {}", hex_text(note.chain.bytes),
                        hex_text(note.subject.bytes), text_of(note.written), text_of(note.about_to_write));
        text += fmt::format("{}{}{}\n", line, check_word, check_of(line));
    }
    return text;
}

std::vector<ChainNote> read_chain_notes(std::string_view text) {
    std::vector<ChainNote> notes;
    std::istringstream lines{std::string(text)};
    for (std::string line; std::getline(lines, line);) {
        if (const auto note = read_note(line)) notes.push_back(*note);
    }
    return notes;
}

std::string chain_notes_path(const std::string& state_folder, const SubjectId& garage) {
    return fmt::format("{}/{}.chains", state_folder, hex_text(garage.bytes));
}

Io<std::vector<ChainNote>> load_chain_notes(FileLayer& layer, const std::string& path) {
    const auto text = read_text(layer, path, notes_limit);
    if (text) return read_chain_notes(*text);
    if (text.error().fault == IoFault::not_found) return std::vector<ChainNote>{};
    return tl::unexpected<IoError>(text.error());
}

Io<std::vector<ChainNote>> load_chain_notes(const OpenFile& file) {
    const auto text = read_text(file, notes_limit);
    if (!text) return tl::unexpected<IoError>(text.error());
    return read_chain_notes(*text);
}

Io<void> save_chain_notes(const OpenFile& file, const std::vector<ChainNote>& notes) {
    return write_text(file, text_of(notes));
}

ChainPlace choose_chain(const std::vector<ChainNote>& notes, const ChainIndex& index,
                        const SubjectId& subject) {
    ChainPlace place{.is_new = true, .chain = {}, .sequence = 0, .previous = {}, .reason = {}};
    for (const auto& note : notes) {
        if (note.subject != subject || (!note.written && !note.about_to_write)) continue;
        const auto* chain = index.find(note.chain);
        if (chain == nullptr && !note.written) continue; // it was about to be begun and never was
        if (chain != nullptr) {
            const auto heads = index.heads(*chain);
            const auto end = end_of(*heads.back());
            if (heads.size() == 1 && ends_as_noted(note, end) && end.sequence < UINT32_MAX) {
                return {.is_new = false,
                        .chain = note.chain,
                        .sequence = end.sequence + 1,
                        .previous = end.hash,
                        .reason = {}};
            }
        }
        place.reason = reason_against(note, chain, index);
    }
    return place;
}

std::vector<Finding> chain_note_findings(const std::vector<ChainNote>& notes, const ChainIndex& index) {
    std::vector<Finding> findings;
    for (const auto& note : notes) {
        const auto* chain = index.find(note.chain);
        if (chain == nullptr || !note.written) continue;
        const auto foreign = std::ranges::count_if(index.heads(*chain), [&](const IndexedFrame* head) {
            return head->sequence >= note.written->sequence && !ends_as_noted(note, end_of(*head));
        });
        if (foreign == 0) continue;
        findings.push_back(
            {"not-written-here",
             fmt::format(
                 "The entries {}-... carry this installation's name, and the last of them were not written "
                 "by it. A copy of this installation may have written them.",
                 chain->name)});
    }
    return findings;
}

} // namespace sumpbook::store
