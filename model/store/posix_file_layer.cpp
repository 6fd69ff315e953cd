// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/posix_file_layer.h"

#include <fmt/format.h>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <thread>

namespace sumpbook::store {
namespace {

IoError error_of(int code) {
    switch (code) {
    case ENOENT:
    case ENOTDIR:
        return {IoFault::not_found, code};
    case EEXIST:
        return {IoFault::exists, code};
    case ENOSPC:
    case EDQUOT:
    case EFBIG:
        return {IoFault::no_space, code};
    case EACCES:
    case EPERM:
        return {IoFault::denied, code};
    case EROFS:
        return {IoFault::read_only, code};
    case EINTR:
        return {IoFault::interrupted, code};
    case EINVAL:
    case ENOSYS:
    case EOPNOTSUPP:
        return {IoFault::not_supported, code};
    case ELOOP:
        return {IoFault::is_link, code};
    default:
        return {IoFault::other, code};
    }
}

tl::unexpected<IoError> last_error() { return tl::unexpected<IoError>(error_of(errno)); }

Io<void> done_if(bool worked) {
    if (!worked) return last_error();
    return {};
}

int flags_of(OpenMode mode) {
    switch (mode) {
    case OpenMode::read:
        return O_RDONLY;
    case OpenMode::read_write:
        return O_RDWR;
    case OpenMode::read_write_or_create:
        return O_RDWR | O_CREAT;
    case OpenMode::read_no_link:
        return O_RDONLY | O_NOFOLLOW;
    case OpenMode::read_write_or_create_no_link:
        return O_RDWR | O_CREAT | O_NOFOLLOW;
    case OpenMode::create_new:
    case OpenMode::create_private:
        break;
    }
    return O_RDWR | O_CREAT | O_EXCL;
}

FileIdentity identity_of(const struct stat& info) {
    return {static_cast<std::uint64_t>(info.st_dev), static_cast<std::uint64_t>(info.st_ino)};
}

/// The end of a renaming by way of a second name: one of the two names goes. Where neither can be taken away
/// again the file does stand under its new name.
Io<void> unlink_old_name(const std::string& from, const std::string& to) {
    if (::unlink(from.c_str()) == 0) return {};
    const int code = errno;
    if (::unlink(to.c_str()) != 0) return {};
    return tl::unexpected<IoError>(error_of(code));
}

} // namespace

Io<FileLayer::Handle> PosixFileLayer::open(const std::string& path, OpenMode mode) {
    const mode_t allowed = mode == OpenMode::create_private ? 0600 : 0666;
    const int handle = ::open(path.c_str(), flags_of(mode) | O_CLOEXEC, allowed);
    if (handle < 0) return last_error();
    return handle;
}

void PosixFileLayer::close(Handle file) { ::close(file); }

Io<std::size_t> PosixFileLayer::read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) {
    const auto got = ::pread(file, into.data(), into.size(), static_cast<off_t>(at));
    if (got < 0) return last_error();
    return static_cast<std::size_t>(got);
}

Io<std::size_t> PosixFileLayer::write(Handle file, std::uint64_t at, ByteView bytes) {
    const auto put = ::pwrite(file, bytes.data(), bytes.size(), static_cast<off_t>(at));
    if (put < 0) return last_error();
    return static_cast<std::size_t>(put);
}

Io<void> PosixFileLayer::sync(Handle file) { return done_if(::fdatasync(file) == 0); }

Io<void> PosixFileLayer::truncate(Handle file, std::uint64_t size) {
    return done_if(::ftruncate(file, static_cast<off_t>(size)) == 0);
}

Io<std::uint64_t> PosixFileLayer::size(Handle file) {
    struct stat info {};
    if (::fstat(file, &info) != 0) return last_error();
    return static_cast<std::uint64_t>(info.st_size);
}

Io<FileIdentity> PosixFileLayer::identity(Handle file) {
    struct stat info {};
    if (::fstat(file, &info) != 0) return last_error();
    return identity_of(info);
}

Io<FileIdentity> PosixFileLayer::identity(const std::string& path) {
    struct stat info {};
    if (::stat(path.c_str(), &info) != 0) return last_error();
    return identity_of(info);
}

Io<std::string> PosixFileLayer::real_path(const std::string& path) {
    struct stat info {};
    if (::lstat(path.c_str(), &info) != 0 || !S_ISLNK(info.st_mode)) return path;
    const std::unique_ptr<char, decltype(&std::free)> resolved(::realpath(path.c_str(), nullptr), &std::free);
    if (!resolved) return last_error();
    return std::string(resolved.get());
}

Io<void> PosixFileLayer::rename(const std::string& from, const std::string& to) {
    return done_if(::rename(from.c_str(), to.c_str()) == 0);
}

Io<void> PosixFileLayer::rename_new(const std::string& from, const std::string& to) {
    if (::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return {};
    if (errno != EINVAL && errno != ENOSYS) return last_error();
    // Some file systems cannot rename without replacing; a second name does the same there, and where
    // there are no second names either, looking first is the best that can be done.
    if (::link(from.c_str(), to.c_str()) == 0) return unlink_old_name(from, to);
    if (errno == EEXIST || ::access(to.c_str(), F_OK) == 0) return io_fail(IoFault::exists, EEXIST);
    return rename(from, to);
}

Io<void> PosixFileLayer::remove(const std::string& path) { return done_if(::unlink(path.c_str()) == 0); }

Io<void> PosixFileLayer::sync_folder(const std::string& folder) {
    const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0) return last_error();
    const bool worked = ::fsync(handle) == 0;
    const int code = errno;
    ::close(handle);
    if (worked) return {};
    return tl::unexpected<IoError>(error_of(code));
}

Io<void> PosixFileLayer::make_folders(const std::string& folder) {
    std::error_code code;
    std::filesystem::create_directories(folder, code);
    if (code) return tl::unexpected<IoError>(error_of(code.value()));
    return {};
}

Io<std::vector<std::string>> PosixFileLayer::list(const std::string& folder) {
    std::error_code code;
    std::vector<std::string> names;
    std::filesystem::directory_iterator entry(folder, code);
    for (; !code && entry != std::filesystem::directory_iterator(); entry.increment(code))
        names.push_back(entry->path().filename().string());
    if (code) return tl::unexpected<IoError>(error_of(code.value()));
    std::ranges::sort(names);
    return names;
}

Io<std::uint32_t> PosixFileLayer::mode(Handle file) {
    struct stat info {};
    if (::fstat(file, &info) != 0) return last_error();
    return static_cast<std::uint32_t>(info.st_mode) & 07777U;
}

Io<void> PosixFileLayer::set_mode(Handle file, std::uint32_t mode) {
    return done_if(::fchmod(file, static_cast<mode_t>(mode)) == 0);
}

Io<bool> PosixFileLayer::try_lock(Handle file, LockKind kind) {
    if (::flock(file, (kind == LockKind::shared ? LOCK_SH : LOCK_EX) | LOCK_NB) == 0) return true;
    if (errno == EWOULDBLOCK) return false;
    return last_error();
}

void PosixFileLayer::unlock(Handle file) { ::flock(file, LOCK_UN); }

void PosixFileLayer::pause(int milliseconds) {
    std::this_thread::sleep_for(std::chrono::milliseconds(milliseconds));
}

void PosixFileLayer::will_fill(ByteView memory) {
#ifdef MADV_HUGEPAGE
    constexpr std::size_t large = 2 * 1024 * 1024;
    const auto start = reinterpret_cast<std::uintptr_t>(memory.data()); // NOLINT: an address
    const auto first = (start + large - 1) / large * large;
    const auto last = (start + memory.size()) / large * large;
    // Advice: a system that does not take it is as right as one that does.
    if (first < last) ::madvise(reinterpret_cast<void*>(first), last - first, MADV_HUGEPAGE); // NOLINT
#endif
}

std::string PosixFileLayer::boot_id() {
    const auto file = open_file(*this, "/proc/sys/kernel/random/boot_id", OpenMode::read);
    if (!file) return {};
    Bytes bytes(64);
    const auto got = read_fully(*file, 0, bytes);
    const std::string text(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(got.value_or(0)));
    return text.substr(0, text.find('\n'));
}

std::string PosixFileLayer::self() {
    std::array<char, 256> host{};
    if (::gethostname(host.data(), host.size() - 1) != 0) return fmt::format("process {}", ::getpid());
    return fmt::format("process {} on {}", ::getpid(), host.data());
}

} // namespace sumpbook::store
