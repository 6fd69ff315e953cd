// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/kept_files.h"

#include "tests/catch.h"

using namespace sumpbook;
using namespace sumpbook::compose;

namespace {

AttachmentRef named(const std::string& name, std::uint8_t hash, std::uint64_t bytes) {
    AttachmentRef file{name, "application/pdf", bytes, {}};
    file.part_hash.fill(hash);
    return file;
}

store::AttachmentSpot spot(std::uint8_t hash, bool shown, bool checked) {
    store::AttachmentSpot spot;
    spot.hash.fill(hash);
    spot.shown = shown;
    spot.checked = checked;
    return spot;
}

} // namespace

TEST_CASE("A file is called not yet checked only where its bytes are here and were not read") {
    Entry entry;
    entry.attachments = {named("a.pdf", 1, 1), named("b.pdf", 2, 12'345), named("c.pdf", 3, 3),
                         named("d.pdf", 4, 4)};
    const auto files =
        kept_files(entry, {spot(3, false, false), spot(2, true, false), spot(1, true, true)});
    REQUIRE(files.size() == 4);
    CHECK(kept_file_words(files[0]) == "a.pdf, 1 byte, checked");
    CHECK(files[1].state == FileState::not_checked);
    CHECK(kept_file_words(files[1]).ends_with(" bytes, not yet checked"));
    CHECK(kept_file_words(files[2]) == "c.pdf, 3 bytes, left out of this garage file");
    CHECK(kept_file_words(files[3]) == "d.pdf, 4 bytes, not in this garage file");
    CHECK(kept_files_json(files).size() == 4);
}
