// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/posix_file_layer.h"

#include "tests/catch.h"
#include "tests/model/store/temp_folder.h"

#include <fcntl.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <cerrno>
#include <set>

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

bool can_rename_new = true;
std::set<std::string> not_removable;

} // namespace

// In place of the C library's: a file system without RENAME_NOREPLACE, and names that do not go away.
extern "C" int renameat2(int from_folder, const char* from, int to_folder, const char* to,
                         unsigned flags) noexcept {
    if (can_rename_new) return static_cast<int>(::syscall(SYS_renameat2, from_folder, from, to_folder, to, flags));
    errno = EINVAL;
    return -1;
}
extern "C" int unlink(const char* path) noexcept {
    if (!not_removable.contains(path)) return ::unlinkat(AT_FDCWD, path, 0);
    errno = EACCES;
    return -1;
}

TEST_CASE("Renaming by way of a second name leaves one name, or says that it did not work", "[files]") {
    PosixFileLayer files;
    const Bytes bytes{1, 2, 3};
    for (unsigned stuck = 0; stuck < 4; ++stuck) {
        const TempFolder folder;
        const auto from = folder.file("from"), to = folder.file("to");
        write_file(from, bytes);
        can_rename_new = false;
        if ((stuck & 1U) != 0) not_removable.insert(from);
        if ((stuck & 2U) != 0) not_removable.insert(to);
        const auto renamed = files.rename_new(from, to);
        can_rename_new = true;
        not_removable.clear();
        const bool undone = stuck == 1;
        CHECK(renamed.has_value() == !undone);
        CHECK(std::filesystem::exists(to) == !undone); // an error means that it is not there
        CHECK(std::filesystem::exists(from) == (stuck == 1 || stuck == 3));
        CHECK(bytes_of_file(undone ? from : to) == bytes);
        if (undone) CHECK(renamed.error().fault == IoFault::denied);
    }
}

TEST_CASE("Renaming by way of a second name never replaces a file", "[files]") {
    PosixFileLayer files;
    const TempFolder folder;
    const auto from = folder.file("from"), to = folder.file("to");
    write_file(from, Bytes{1});
    write_file(to, Bytes{2});
    can_rename_new = false;
    const auto renamed = files.rename_new(from, to);
    can_rename_new = true;
    REQUIRE_FALSE(renamed);
    CHECK(renamed.error().fault == IoFault::exists);
    CHECK(bytes_of_file(from) == Bytes{1});
    CHECK(bytes_of_file(to) == Bytes{2});
}
