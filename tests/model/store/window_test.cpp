// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/window.h"

#include "tests/catch.h"
#include "tests/model/store/failing_files.h"
#include "tests/model/store/temp_folder.h"

using namespace sumpbook::store;

namespace {

Bytes counted(std::size_t size) {
    Bytes bytes(size);
    for (std::size_t i = 0; i < size; ++i)
        bytes[i] = static_cast<std::uint8_t>(i * 7);
    return bytes;
}

bool shows(Window& window, std::uint64_t at, std::size_t length, const Bytes& all) {
    const auto view = window.view(at, length);
    return view.size() == length &&
           std::equal(view.begin(), view.end(), all.begin() + static_cast<std::ptrdiff_t>(at));
}

} // namespace

TEST_CASE("Any piece of a file is seen through a small window", "[window]") {
    const TempFolder folder;
    const auto all = counted(1000);
    write_file(folder.file("a"), all);
    FailingFiles files({.most_at_once = 7, .only = {}});
    const auto file = open_file(files, folder.file("a"), OpenMode::read);
    REQUIRE(file);
    Window window(*file, 1000, 64);
    for (const std::size_t length : {1U, 12U, 64U, 65U, 500U}) {
        for (std::uint64_t at = 0; at + length <= 1000; at += 61)
            CHECK(shows(window, at, length, all));
    }
    CHECK(shows(window, 0, 1000, all));
    CHECK(shows(window, 1000, 0, all));
    CHECK(window.bytes_viewed() > 1000);
}

TEST_CASE("A file that was cut meanwhile is a failure and not a guess", "[window]") {
    const TempFolder folder;
    write_file(folder.file("a"), counted(100));
    FailingFiles files({.only = {}});
    const auto file = open_file(files, folder.file("a"), OpenMode::read);
    REQUIRE(file);
    Window window(*file, 200, 64);
    CHECK_NOTHROW(window.view(0, 64));
    CHECK_THROWS_AS(window.view(90, 20), IoFailure);
    FailingFiles broken({.fail_at = 1, .only = "read"});
    const auto unreadable = open_file(broken, folder.file("a"), OpenMode::read);
    REQUIRE(unreadable);
    Window dark(*unreadable, 100);
    CHECK_THROWS_AS(dark.view(0, 10), IoFailure);
}

TEST_CASE("Bytes in memory are seen where they will stand", "[window]") {
    const auto all = counted(50);
    Window window(ByteView(all), 1000);
    CHECK(window.size() == 1050);
    const auto view = window.view(1010, 5);
    CHECK(std::equal(view.begin(), view.end(), all.begin() + 10));
}
