// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/chain_notes.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace sumpbook::store {
namespace {

constexpr std::size_t notes_limit = 16 * 1024 * 1024;
constexpr std::size_t check_bytes = 8;
constexpr std::size_t number_width = 10;
constexpr std::string_view check_word = " check ";

std::string check_of(std::string_view line) {
    const auto hash = sha256({as_bytes(line)});
    return hex_text(ByteView(hash).first(check_bytes));
}

/// In a column as wide as this, at its right.
void add_column(std::string& line, std::string_view text, std::size_t width) {
    line.append(width - text.size(), ' ');
    line += text;
}

void add_end(std::string& line, const std::optional<ChainEnd>& end) {
    add_column(line, end ? std::to_string(end->sequence) : "-", number_width);
    line += ' ';
    add_column(line, end ? hex_text(end->hash) : "-", 2 * hash_bytes);
}

std::string line_of(const ChainNote& note) {
    std::string line;
    line.append("chain ").append(hex_text(note.chain.bytes));
    line.append(" subject ").append(hex_text(note.subject.bytes));
    add_end(line.append(" written "), note.written);
    add_end(line.append(" about "), note.about_to_write);
    const auto check = check_of(line);
    return line.append(check_word).append(check).append("\n");
}

/// Reads a line from its beginning on. After something else than was expected it reads nothing more.
class Columns {
public:
    explicit Columns(std::string_view line)
        : rest_(line) {}
    [[nodiscard]] bool all_read() const { return good_ && rest_.empty(); }

    Columns& word(std::string_view expected) {
        good_ = good_ && next(expected.size()) == expected;
        return *this;
    }
    template <std::size_t N>
    Columns& hex(std::array<std::uint8_t, N>& into) {
        const auto bytes = bytes_of_hex(next(2 * N));
        good_ = good_ && bytes && bytes->size() == N;
        if (good_) std::ranges::copy(*bytes, into.begin());
        return *this;
    }
    Columns& end(std::optional<ChainEnd>& into) {
        const auto number = trimmed(next(number_width));
        word(" ");
        if (number == "-") return none();
        ChainEnd end;
        const auto* last = number.data() + number.size();
        const auto read = std::from_chars(number.data(), last, end.sequence);
        good_ = good_ && read.ec == std::errc{} && read.ptr == last;
        hex(end.hash);
        if (good_) into = end;
        return *this;
    }

private:
    Columns& none() {
        good_ = good_ && trimmed(next(2 * hash_bytes)) == "-";
        return *this;
    }
    /// Shorter where the line ends before.
    std::string_view next(std::size_t width) {
        const auto column = rest_.substr(0, width);
        rest_.remove_prefix(column.size());
        return column;
    }
    static std::string_view trimmed(std::string_view column) {
        return column.substr(std::min(column.find_first_not_of(' '), column.size()));
    }

    std::string_view rest_;
    bool good_ = true;
};

std::optional<ChainNote> read_note(std::string_view line) {
    const auto end = line.rfind(check_word);
    if (end == std::string_view::npos) return std::nullopt;
    const auto checked = line.substr(0, end);
    if (line.substr(end + check_word.size()) != check_of(checked)) return std::nullopt;
    ChainNote note;
    Columns columns(checked);
    columns.word("chain ").hex(note.chain.bytes).word(" subject ").hex(note.subject.bytes);
    columns.word(" written ").end(note.written).word(" about ").end(note.about_to_write);
    if (!columns.all_read()) return std::nullopt;
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
    for (const auto& note : notes)
        text += line_of(note);
    return text;
}

std::vector<ChainNote> read_chain_notes(std::string_view text) {
    std::vector<ChainNote> notes;
    while (!text.empty()) {
        const auto line = text.substr(0, text.find('\n'));
        if (const auto note = read_note(line)) notes.push_back(*note);
        text.remove_prefix(std::min(line.size() + 1, text.size()));
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

Io<void> save_changed_notes(const OpenFile& file, const std::vector<ChainNote>& before,
                            const std::vector<ChainNote>& notes) {
    static const std::size_t line_bytes = line_of({}).size(); // as all of them
    const auto size = file.layer().size(file.handle());
    if (!size) return tl::unexpected<IoError>(size.error());
    // Otherwise there are lines that could not be read: all are written anew.
    if (*size != before.size() * line_bytes || notes.size() < before.size())
        return save_chain_notes(file, notes);
    for (std::size_t i = 0; i < notes.size(); ++i) {
        if (i < before.size() && notes[i] == before[i]) continue;
        const auto line = line_of(notes[i]);
        if (const auto put = write_fully(file, i * line_bytes, as_bytes(line)); !put) return put;
    }
    return {};
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
