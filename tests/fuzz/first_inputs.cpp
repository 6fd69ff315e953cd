// SPDX-License-Identifier: GPL-3.0-or-later
// first_inputs FOLDER: what a search starts from when there is nothing kept. Small garages with every kind of
// record, with forks, gaps, withheld parts, attachments and fingerprints; and the files of the import cases.
#include "tests/fuzz/garage_draft.h"
#include "tests/fuzz/targets.h"
#include "tests/model/store/example_records.h"
#include "tests/model/store/memory_disk.h"
#include "tests/model/store/temp_folder.h"

#include <iostream>

using namespace sumpbook;
using namespace sumpbook::store;
using namespace sumpbook::fuzz;

namespace {

namespace fs = std::filesystem;

void put(const fs::path& folder, const std::string& name, ByteView bytes) {
    fs::create_directories(folder);
    write_file((folder / name).string(), bytes);
}

/// A garage in memory with an action for each list.
class SmallGarage {
public:
    SmallGarage()
        : garage_(GarageFile::create(around(), "/g/a", GarageSettings{}, {1'700'000'000}).value()) {}

    void append(const std::vector<Record>& records, std::uint8_t subject = 1) {
        std::vector<NewRecord> all;
        for (const auto& record : records)
            all.push_back({subject_of(subject), record});
        static_cast<void>(garage_.append(all).value());
    }
    void attach() {
        auto paper = new_attachment(subject_of(1), Bytes{'p', 'a', 'p', 'e', 'r'}, random_).value();
        Entry entry = full_entry(Attach{});
        entry.attachments = {{"paper.txt", "text/plain", 5, paper.hash}};
        static_cast<void>(
            garage_.append({{subject_of(1), Record{{1'700'000'100}, {}, entry}}}, {paper}).value());
    }
    void fingerprint() { static_cast<void>(garage_.take_fingerprint({1'700'000'200}).value()); }
    [[nodiscard]] const GarageFile& file() const { return garage_; }
    [[nodiscard]] Bytes bytes() const { return disk_.bytes("/g/a"); }

private:
    Surroundings around() {
        static_cast<void>(disk_.make_folders("/g"));
        return {disk_, random_, "/state", Patience{0}};
    }

    MemoryDisk disk_;
    SeededRandom random_{"first inputs"};
    GarageFile garage_;
};

Bytes garage_of(const std::vector<Record>& records) {
    SmallGarage garage;
    garage.append(records);
    return garage.bytes();
}

/// A correction, another of the same entry, and a withdrawal of both.
Bytes corrected() {
    SmallGarage garage;
    garage.append({fuel_record(1)});
    auto correction = fuel_record(2);
    correction.replaces = {garage.file().records().back().name};
    garage.append({correction});
    correction.recorded.seconds_since_1970 += 5;
    garage.append({correction});
    const auto& all = garage.file().records();
    Record withdrawal{{1'700'000'500}, {}, Withdrawal{}};
    withdrawal.replaces = {all[all.size() - 2].name, all.back().name};
    garage.append({withdrawal});
    garage.fingerprint();
    return garage.bytes();
}

/// A chain of three frames with the middle one told twice, left out, or shown in part.
Bytes chain_of_three(const std::string& what) {
    SmallGarage garage;
    for (int number = 1; number <= 3; ++number)
        garage.append({fuel_record(number)});
    garage.fingerprint();
    auto draft = read_draft(garage.bytes());
    auto& frame = draft.actions[2].frames[0];
    if (what == "fork") {
        auto other = frame;
        other.parts[0].salt[0] ^= 1;
        other.was = {};
        frame.was = {};
        draft.actions[2].frames.push_back(other);
    } else if (what == "gap") {
        draft.actions.erase(draft.actions.begin() + 2);
    } else {
        auto& money = frame.parts[slot_of(Part::money)];
        money.hash = part_hash(slot_of(Part::money), money.salt, money.body);
        money.shown = false;
    }
    return write_draft(draft);
}

void write_garages(const fs::path& folder) {
    std::size_t number = 0;
    for (const auto& records : {full_records(), bare_records()}) {
        for (const auto& record : records) {
            if (!record.replaces.empty()) continue; // names nothing that is there
            put(folder, "record-" + std::to_string(++number), garage_of({record}));
        }
    }
    put(folder, "three", garage_of({fuel_record(1), fuel_record(2), fuel_record(3)}));
    put(folder, "corrected", corrected());
    for (const auto* what : {"fork", "gap", "withheld"})
        put(folder, what, chain_of_three(what));
    SmallGarage attached;
    attached.attach();
    attached.fingerprint();
    put(folder, "attached", attached.bytes());
    SmallGarage empty;
    put(folder, "empty", empty.bytes());
    put(folder, "cut", ByteView(empty.bytes()).first(100));
}

/// Two copies of one garage: the same, one behind the other, apart, and with parts withheld.
void write_merges(const fs::path& folder) {
    SmallGarage garage;
    garage.append({fuel_record(1)});
    garage.attach();
    const auto before = garage.bytes();
    garage.append({fuel_record(2)}, 2);
    garage.fingerprint();
    const auto after = garage.bytes();
    auto apart = read_draft(after);
    for (auto& frame : apart.actions[3].frames) {
        frame.header.chain.bytes[0] ^= 1;
        frame.parts[0].salt[0] ^= 1;
    }
    auto withheld = read_draft(after);
    for (auto* frame : frames_of(withheld)) {
        for (std::size_t slot = 1; slot < part_slots; ++slot) {
            auto& part = frame->parts[slot];
            if (part.shown) part.hash = part_hash(slot, part.salt, part.body);
            part.shown = false;
        }
    }
    put(folder, "same", bytes_of_merge(after, after, 0));
    put(folder, "behind", bytes_of_merge(before, after, 2));
    put(folder, "apart", bytes_of_merge(write_draft(apart), after, 4));
    put(folder, "withheld", bytes_of_merge(write_draft(withheld), after, 8));
    put(folder, "fork", bytes_of_merge(chain_of_three("fork"), chain_of_three("gap"), 14));
    put(folder, "corrected", bytes_of_merge(corrected(), garage_of({fuel_record(3)}), 14));
    put(folder, "other", bytes_of_merge(chain_of_three("withheld"), corrected(), 0));
}

/// With both bytes that try_import takes off the front.
void write_imports(const fs::path& folder) {
    const std::vector<std::string> kinds{"fuel", "work", "costs", "readings", "samples"};
    const fs::path cases = fs::path(SUMPBOOK_SOURCE_DIR) / "tests/model/import/cases";
    for (const auto& item : fs::directory_iterator(cases)) {
        const auto name = item.path().filename().string();
        for (std::size_t kind = 0; kind < kinds.size(); ++kind) {
            if (!name.starts_with(kinds[kind])) continue;
            Bytes bytes{static_cast<std::uint8_t>(kind), static_cast<std::uint8_t>(0x85)}; // Tourer, d-m-y, point
            put_bytes(bytes, bytes_of_file((item.path() / "input.csv").string()));
            put(folder, name, bytes);
            bytes[1] = 0;
            put(folder, name + "-unsaid", bytes);
        }
    }
}

} // namespace

int main(int argc, char* argv[]) {
    if (argc != 2) {
        std::cerr << "usage: first_inputs FOLDER\n";
        return 2;
    }
    const fs::path folder = argv[1]; // NOLINT: an argument
    write_garages(folder / "reader");
    write_merges(folder / "merge");
    write_imports(folder / "import");
    return 0;
}
