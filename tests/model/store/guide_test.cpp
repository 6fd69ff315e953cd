// SPDX-License-Identifier: GPL-3.0-or-later
// Takes the file of format 1 apart by the tables of the guide alone, so that the guide says what the
// program does. Nothing here uses the program's own description of records.
#include "model/store/action.h"
#include "model/store/archive.h"
#include "model/store/scan.h"
#include "tests/catch.h"
#include "tests/model/store/temp_folder.h"

#include <deque>
#include <map>
#include <sstream>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

std::string guide_text() {
    const auto bytes = bytes_of_file(std::string(SUMPBOOK_SOURCE_DIR) + "/app/guide/file-format.md");
    return {bytes.begin(), bytes.end()};
}

struct Field {
    std::string name, type, meaning, part;
};

/// What stands under a heading "### name": a table of fields, or kinds "0 `first`, 1 `second`".
struct Described {
    std::vector<Field> fields;
    std::map<std::size_t, std::string> kinds;
};

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells;
    std::istringstream in(line.substr(1));
    for (std::string cell; std::getline(in, cell, '|');) {
        const auto first = cell.find_first_not_of(' ');
        cells.push_back(
            first == std::string::npos ? "" : cell.substr(first, cell.find_last_not_of(' ') - first + 1));
    }
    return cells;
}

/// "0 `a`, 1 `b`" anywhere in the line.
void add_kinds(const std::string& line, std::map<std::size_t, std::string>& kinds) {
    for (auto at = line.find('`'); at != std::string::npos;) {
        const auto end = line.find('`', at + 1);
        std::size_t number = 0, place = 1, digits = at - 1;
        for (; digits-- > 0 && line[digits] >= '0' && line[digits] <= '9'; place *= 10) {
            number += place * static_cast<std::size_t>(line[digits] - '0');
        }
        kinds[number] = line.substr(at + 1, end - at - 1);
        at = line.find('`', end + 1);
    }
}

std::map<std::string, Described> read_guide() {
    std::map<std::string, Described> all;
    std::istringstream lines(guide_text());
    Described* now = nullptr;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("#")) now = line.starts_with("### ") ? &all[line.substr(4)] : nullptr;
        if (now == nullptr || line.starts_with("#")) continue;
        if (line.starts_with("|")) {
            const auto cells = cells_of(line);
            REQUIRE(cells.size() == 4);
            if (cells[0] != "field" && cells[0] != "---")
                now->fields.push_back({cells[0], cells[1], cells[2], cells[3]});
        } else {
            add_kinds(line, now->kinds);
        }
    }
    return all;
}

/// The numbers a word may have: those listed in the meaning.
std::size_t words_in(const std::string& meaning) {
    std::size_t words = 0;
    while (meaning.find(std::to_string(words) + " ") != std::string::npos)
        ++words;
    return words;
}

/// Reads the fields of one part of one record.
class Walk {
public:
    Walk(const std::map<std::string, Described>& guide, InArchive& in, std::string part,
         std::deque<std::size_t>& shapes)
        : guide_(guide)
        , in_(in)
        , part_(std::move(part))
        , shapes_(shapes) {}

    void walk(const std::string& type) {
        if (type.starts_with("optional ")) {
            if (shape([&] { return read<bool>() ? 1U : 0U; }) == 1) walk(type.substr(9));
        } else if (type.starts_with("list of ")) {
            for (auto left = shape([&] { return in_.load_length(max_list_elements); }); left > 0; --left)
                walk(type.substr(8));
        } else if (!guide_.at(type).kinds.empty()) {
            const auto kind = shape([&] { return std::size_t{read<std::uint8_t>()}; });
            REQUIRE(guide_.at(type).kinds.contains(kind));
            walk(guide_.at(type).kinds.at(kind));
        } else {
            for (const auto& field : guide_.at(type).fields)
                walk(field);
        }
    }

private:
    void walk(const Field& field) {
        INFO(field.name << ": " << field.type);
        if (field.part == "mixed") return walk(field.type);
        if (field.part != part_ && field.part != "own") return;
        value(field.type, field.meaning);
        REQUIRE(in_.ok());
    }

    /// Read in the open part, remembered for the others.
    template <class Read>
    std::size_t shape(Read read) {
        if (part_ == "open") {
            const std::size_t found = read();
            shapes_.push_back(found);
            return found;
        }
        REQUIRE_FALSE(shapes_.empty());
        const auto found = shapes_.front();
        shapes_.pop_front();
        shapes_.push_back(found); // once round for each part
        return found;
    }

    void value(const std::string& type, const std::string& meaning) {
        if (type.starts_with("optional ")) {
            if (read<bool>()) value(type.substr(9), meaning);
        } else if (type.starts_with("list of ")) {
            for (auto left = in_.load_length(max_list_elements); left > 0; --left)
                value(type.substr(8), meaning);
        } else if (type.starts_with("table of ")) {
            for (auto left = in_.load_length(max_list_elements); left > 0; --left) {
                read<std::string>();
                value(type.substr(9), meaning);
            }
        } else if (type == "word") {
            CHECK(read<std::uint8_t>() < words_in(meaning));
        } else if (guide_.contains(type)) {
            for (const auto& field : guide_.at(type).fields)
                value(field.type, field.meaning);
        } else {
            scalar(type);
        }
    }

    void scalar(const std::string& type) {
        const std::map<std::string, std::vector<std::string>> made_of{
            {"money", {"i64", "currency"}},  {"time", {"i64"}},
            {"distance", {"decimal", "u8"}}, {"volume", {"decimal", "u8"}},
            {"torque", {"decimal", "u8"}},   {"unit price", {"decimal", "currency", "u8"}},
            {"decimal", {"i64", "u8"}},      {"date", {"i32"}}};
        if (made_of.contains(type)) {
            for (const auto& piece : made_of.at(type))
                scalar(piece);
        } else if (type == "text") {
            read<std::string>();
        } else if (type == "yes-or-no") {
            read<bool>();
        } else if (type == "currency") {
            read<std::array<std::uint8_t, 3>>();
        } else if (type == "hash") {
            read<std::array<std::uint8_t, 32>>();
        } else if (type == "u8") {
            read<std::uint8_t>();
        } else if (type == "u32" || type == "i32") {
            read<std::uint32_t>();
        } else if (type == "u64" || type == "i64") {
            read<std::uint64_t>();
        } else {
            FAIL("the guide names a type it does not explain: " << type);
        }
    }

    template <class T>
    T read() {
        T value{};
        in_ >> value;
        return value;
    }

    const std::map<std::string, Described>& guide_;
    InArchive& in_;
    std::string part_;
    std::deque<std::size_t>& shapes_;
};

struct ByGuide final : ScanHandler {
    std::map<std::string, Described> guide = read_guide();
    std::size_t records = 0;

    void frame(const VerifiedFrame& verified, std::uint64_t /*at*/) override {
        const auto& frame = verified.frame;
        if (frame.header.kind != FrameKind::records) return;
        std::vector<std::deque<std::size_t>> shapes(frame.header.entry_count);
        const std::array<std::string, 3> parts{"open", "money", "private"};
        for (std::size_t slot = 0; slot < 3; ++slot) {
            if (!frame.exists(slot)) continue;
            InArchive in(frame.parts[slot].body);
            for (auto& of_record : shapes) {
                bool there = true;
                if (slot != 0) in >> there;
                if (there) Walk(guide, in, parts[slot], of_record).walk("record");
            }
            in.finish();
            CHECK(std::string(in.ok() ? "" : in.fault()).empty());
        }
        records += frame.header.entry_count;
    }
    void fingerprint_record(ByteView /*body*/) override {}
    void action_done(bool /*good*/) override {}
};

} // namespace

TEST_CASE("The tables of the guide take a garage file apart to the last byte", "[guide]") {
    const auto bytes =
        bytes_of_file(std::string(SUMPBOOK_SOURCE_DIR) + "/tests/model/store/golden/format-1.sumpbook");
    ByGuide reader;
    Window window(ByteView(bytes), 0);
    const auto scan = scan_actions(window, file_header_bytes, 0, ScanDepth::everything, reader);
    CHECK(scan.tail == Tail::whole);
    CHECK(reader.records == 6 + 21 + 21);
    CHECK(reader.guide.at("kind of content").kinds.size() == 7);
    CHECK(reader.guide.at("kind of entry").kinds.size() == 15);
}

TEST_CASE("The guide states the limits of the program", "[guide]") {
    const auto text = guide_text();
    const auto states = [&](const std::string& what, std::size_t most) {
        return text.find("| " + what + " | " + std::to_string(most)) != std::string::npos;
    };
    CHECK(states("a text", max_string_bytes));
    CHECK(states("elements of a list or table", max_list_elements));
    CHECK(states("a part", max_part_bytes));
    CHECK(states("an attachment", max_attachment_bytes));
    CHECK(states("an action", max_action_bytes));
    CHECK(text.find(std::to_string(max_frames_in_action) + " frames") != std::string::npos);
    CHECK(states("a fingerprint record", max_fingerprint_record_bytes));
    CHECK(states("records in a file", max_entries));
    CHECK(states("an amount of money", std::size_t{most_minor}));
    CHECK(states("a distance", static_cast<std::size_t>(most_distance.km())));
    CHECK(states("a volume", static_cast<std::size_t>(most_volume.litres())));
    CHECK(text.find("at least " + std::to_string(min_entry_bytes) + " bytes of its open part") !=
          std::string::npos);
}
