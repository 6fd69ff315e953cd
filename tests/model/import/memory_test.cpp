// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/import/encoding.h"
#include "model/import/plan.h"
#include "model/import/plan_text.h"

#include "tests/catch.h"
#include "tests/model/import/import_garage.h"
#include "tests/peak_memory.h"

#include <chrono>

using namespace sumpbook;
using namespace sumpbook::import;

// The limit that holds for garage files holds for files to import: 64 times the size and 64 MB.

namespace {

constexpr std::size_t mebibyte = 1024 * 1024;

std::string repeated(const std::string& piece, std::size_t bytes) {
    std::string text;
    text.reserve(bytes + piece.size());
    while (text.size() + piece.size() <= bytes)
        text += piece;
    return text;
}

/// Rows that differ in their last cell.
std::string numbered(const std::string& row, std::size_t bytes) {
    std::string text;
    text.reserve(bytes + 100);
    for (std::size_t number = 0; text.size() < bytes; ++number)
        text += row + std::to_string(number) + "\n";
    return text;
}

/// A plan or a refusal, and every line said about it.
bool import_whole(ImportKind kind, const std::string& bytes, bool& refused) {
    const auto plan = plan_import(kind, "hostile.csv", bytes, {}, one_bike(), {}, import_day);
    refused = !plan;
    if (!plan) return !plan.error().sentence.empty();
    std::size_t lines = 0;
    for (const auto& of : {layout_lines(*plan), doubt_lines(*plan), kept_out_lines(*plan)})
        lines += of.size();
    return lines > 0;
}

void check(const std::string& what, ImportKind kind, const std::string& bytes) {
    INFO(what);
    const auto from = std::chrono::steady_clock::now();
    const auto peak = peak_memory([&] {
        bool refused = false;
        return import_whole(kind, bytes, refused);
    });
    const auto took = std::chrono::duration<double>(std::chrono::steady_clock::now() - from).count();
    const auto nothing = peak_memory([] { return true; }); // what a child has from this process
    REQUIRE(nothing > 0);
    REQUIRE(peak >= nothing);
    WARN(what << ": " << bytes.size() << " bytes, peak " << (peak - nothing) / mebibyte << " MiB");
#ifndef __SANITIZE_ADDRESS__ // which takes memory of its own
    CHECK(peak - nothing <= 64 * bytes.size() + 64 * mebibyte);
#endif
    CHECK(took < 60);
}

} // namespace

TEST_CASE("No file to import takes more memory than 64 times its size and 64 MB", "[hostile]") {
    const std::size_t small = mebibyte;
    check("one cell", ImportKind::fuel, "date,volume,note\n2024-01-01,5," + std::string(small, 'x') + "\n");
    check("a million columns", ImportKind::fuel, "date" + std::string(1'000'000, ',') + "\n");
    check("a million headings", ImportKind::fuel, repeated("date,", 5'000'000) + "\n");
    check("a thousand columns, rows of them", ImportKind::fuel,
          "date,volume" + std::string(990, ',') + "\n" + repeated(std::string(991, ',') + "x\n", small));
    check("quotes in quotes", ImportKind::fuel, "date,volume\n\"" + std::string(small, '"') + "\n");
    check("a quote that is never closed", ImportKind::fuel, "date,volume\n\"" + std::string(small, 'x'));
    check("cells that open and close quotes", ImportKind::fuel, "date,volume\n" + repeated("\"a\"b,\"\n", small));
    check("zero bytes", ImportKind::fuel, std::string(small, '\0'));
    check("UTF-16 of nothing", ImportKind::fuel, "\xFF\xFE" + repeated("\xD8\x00\xDC", small));
    check("UTF-16 of characters that take three bytes", ImportKind::fuel, "\xFE\xFF" + repeated("\x20\xAC", small));
    check("shortest rows", ImportKind::fuel, "date,volume\n" + repeated("x\n", small));
    check("shortest cells", ImportKind::fuel,
          "date,volume,note,place,who,odometer,total\n" + repeated(",,,,,x,\n", small));
    check("shortest readings", ImportKind::readings, "date,odometer\n" + numbered("2024-01-01,", small));
    check("shortest fills", ImportKind::fuel, "date,volume\n" + numbered("2024-01-01,", small));
    check("shortest work", ImportKind::work, "date,text\n" + numbered("2024-01-01,", small));
    check("doubtful cells", ImportKind::fuel,
          "date,volume,odometer,total,octane,trip,hours,full,note\n" + numbered("2024-01-01,a,a,a,a,a,a,a,", small));
    check("doubtful samples", ImportKind::samples,
          "date,Fe,Cu,Al,Cr,Pb,Sn,Si,Na,K,Ca,Mg,Zn,P,note\n" +
              numbered("2024-01-01,a,a,a,a,a,a,a,a,a,a,a,a,a,", small));
    check("lists of short pieces", ImportKind::work,
          "date,text,parts\n" + numbered("2024-01-01,x," + repeated("a|", 60'000), 4 * small));
    check("doubtful cells of a large file", ImportKind::fuel,
          "date,volume,odometer,total,octane,trip,hours,full,note\n" +
              numbered("2024-01-01,a,a,a,a,a,a,a,", 8 * small));
    check("changes of the clock", ImportKind::readings,
          "date,odometer,old last,new first,note\n" + numbered("2024-01-01,1,9,1,", small));
}
