// SPDX-License-Identifier: GPL-3.0-or-later
// save_lines GARAGE STATE-FOLDER: keeps a garage file open and saves each line of its input as a note of the
// first bike, answering each with one line: "saved ID", or "not saved: " and the sentence. For tests that need
// a program that goes on saving while something happens to the disk.
#include "model/store/garage_file.h"
#include "model/store/posix_file_layer.h"
#include "tests/model/store/example_records.h"

#include <algorithm>
#include <iostream>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

NewRecord note_of(const SubjectId& bike, std::string text) {
    Entry entry;
    entry.date = day(2026, 4, 2);
    entry.note = std::move(text);
    entry.body = Note{};
    return {bike, {{1'770'000'000}, {}, entry}};
}

int save_lines(GarageFile garage) {
    const auto bike = std::ranges::find_if(
        garage.records(), [&](const NamedRecord& record) { return record.subject != garage.subject(); });
    if (bike == garage.records().end()) {
        std::cerr << "There is no bike in it.\n";
        return 3;
    }
    const SubjectId subject = bike->subject;
    for (std::string line; std::getline(std::cin, line);) {
        const auto saved = garage.append({note_of(subject, line)});
        if (saved)
            std::cout << "saved " << saved->front() << std::endl;
        else
            std::cout << "not saved: " << saved.error().sentence << std::endl;
    }
    return 0;
}

} // namespace

int main(int count, char** words) {
    if (count != 3) {
        std::cerr << "save_lines GARAGE STATE-FOLDER\n";
        return 2;
    }
    PosixFileLayer files;
    SystemRandom random;
    auto garage = GarageFile::open({files, random, words[2], Patience{}}, words[1]);
    if (!garage) {
        std::cerr << garage.error().sentence << '\n';
        return 5;
    }
    return save_lines(std::move(*garage));
}
