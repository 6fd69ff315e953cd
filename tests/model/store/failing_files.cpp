// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/failing_files.h"

#include <algorithm>
#include <optional>

namespace sumpbook::store {
namespace {

tl::unexpected<IoError> fails(const IoError& error) { return tl::unexpected<IoError>(error); }

} // namespace

std::optional<IoError> FailingFiles::next(const std::string& name) {
    if (!plan_.only.empty() && name != plan_.only) return std::nullopt;
    if (plan_.interrupt_first && interrupted(name)) return IoError{IoFault::interrupted, 4};
    ++count_;
    if (plan_.fail_at == 0 || count_ < plan_.fail_at || (count_ > plan_.fail_at && !plan_.from_then_on))
        return std::nullopt;
    ++failures_;
    return IoError{plan_.fault, plan_.code};
}

/// True every second time, for the operations that a signal can interrupt and that may be repeated.
bool FailingFiles::interrupted(const std::string& name) {
    if (name != "open" && name != "read" && name != "write" && name != "lock") return false;
    if (interrupted_now_.erase(name) != 0) return false;
    interrupted_now_.insert(name);
    return true;
}

Io<FileLayer::Handle> FailingFiles::open(const std::string& path, OpenMode mode) {
    if (const auto error = next("open")) return fails(*error);
    return real_.open(path, mode);
}
Io<std::size_t> FailingFiles::read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) {
    if (const auto error = next("read")) return fails(*error);
    return real_.read(file, at, into.first(std::min(into.size(), plan_.most_at_once)));
}
Io<std::size_t> FailingFiles::write(Handle file, std::uint64_t at, ByteView bytes) {
    if (const auto error = next("write")) return fails(*error);
    return real_.write(file, at, bytes.first(std::min(bytes.size(), plan_.most_at_once)));
}
Io<void> FailingFiles::sync(Handle file) {
    if (const auto error = next("sync")) return fails(*error);
    return real_.sync(file);
}
Io<void> FailingFiles::truncate(Handle file, std::uint64_t size) {
    if (const auto error = next("truncate")) return fails(*error);
    return real_.truncate(file, size);
}
Io<std::uint64_t> FailingFiles::size(Handle file) {
    if (const auto error = next("size")) return fails(*error);
    return real_.size(file);
}
Io<FileIdentity> FailingFiles::identity(Handle file) {
    if (const auto error = next("identity")) return fails(*error);
    return real_.identity(file);
}
Io<FileIdentity> FailingFiles::identity(const std::string& path) {
    if (const auto error = next("identity")) return fails(*error);
    return real_.identity(path);
}
Io<void> FailingFiles::rename(const std::string& from, const std::string& to) {
    if (const auto error = next("rename")) return fails(*error);
    return real_.rename(from, to);
}
Io<void> FailingFiles::rename_new(const std::string& from, const std::string& to) {
    if (const auto error = next("rename")) return fails(*error);
    return real_.rename_new(from, to);
}
Io<void> FailingFiles::remove(const std::string& path) {
    if (const auto error = next("remove")) return fails(*error);
    return real_.remove(path);
}
Io<void> FailingFiles::sync_folder(const std::string& folder) {
    if (const auto error = next("sync folder")) return fails(*error);
    return real_.sync_folder(folder);
}
Io<void> FailingFiles::make_folders(const std::string& folder) {
    if (const auto error = next("make folders")) return fails(*error);
    return real_.make_folders(folder);
}
Io<std::vector<std::string>> FailingFiles::list(const std::string& folder) {
    if (const auto error = next("list")) return fails(*error);
    return real_.list(folder);
}
Io<std::uint32_t> FailingFiles::mode(Handle file) {
    if (const auto error = next("mode")) return fails(*error);
    return real_.mode(file);
}
Io<void> FailingFiles::set_mode(Handle file, std::uint32_t mode) {
    if (const auto error = next("set mode")) return fails(*error);
    return real_.set_mode(file, mode);
}
Io<bool> FailingFiles::try_lock(Handle file, LockKind kind) {
    if (const auto error = next("lock")) return fails(*error);
    return real_.try_lock(file, kind);
}

} // namespace sumpbook::store
