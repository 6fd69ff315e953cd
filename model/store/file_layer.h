// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"
#include "model/store/bytes.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace sumpbook::store {

/// Why an operation on a file failed, as far as it changes what is done next.
enum class IoFault {
    not_found,
    exists,
    no_space,
    denied,
    read_only, ///< The whole disk or share.
    interrupted,
    not_supported,
    is_link,
    ended,
    other
};

struct IoError {
    IoFault fault = IoFault::other;
    int code = 0; ///< The operating system's number, for the sentence.
};

template <class T>
using Io = tl::expected<T, IoError>;

[[nodiscard]] inline tl::unexpected<IoError> io_fail(IoFault fault, int code) {
    return tl::unexpected<IoError>(IoError{fault, code});
}

enum class OpenMode {
    read,
    read_write,
    read_write_or_create,
    create_new,     ///< Fails with `exists` if it exists.
    create_private, ///< The same, for its owner's eyes only.
    read_no_link,                 ///< As without `no_link`; fails with `is_link` where the name is a link.
    read_write_or_create_no_link,
};
enum class LockKind { shared, exclusive };

/// Which file a path or a descriptor means, whatever its name.
struct FileIdentity {
    std::uint64_t device = 0;
    std::uint64_t number = 0;
    bool operator==(const FileIdentity&) const = default;
};

/// Every operation the store does on files, one system call each. The only implementation that touches
/// the system is PosixFileLayer; tests pass one that fails where they want. An operation may be
/// interrupted or do less than asked: the functions below take care of that.
class FileLayer {
public:
    using Handle = int;

    virtual ~FileLayer() = default;
    [[nodiscard]] virtual Io<Handle> open(const std::string& path, OpenMode mode) = 0;
    virtual void close(Handle file) = 0;
    /// Bytes read or written; fewer than asked is possible, 0 read means the end.
    [[nodiscard]] virtual Io<std::size_t> read(Handle file, std::uint64_t at,
                                               std::span<std::uint8_t> into) = 0;
    [[nodiscard]] virtual Io<std::size_t> write(Handle file, std::uint64_t at, ByteView bytes) = 0;
    [[nodiscard]] virtual Io<void> sync(Handle file) = 0;
    [[nodiscard]] virtual Io<void> truncate(Handle file, std::uint64_t size) = 0;
    [[nodiscard]] virtual Io<std::uint64_t> size(Handle file) = 0;
    [[nodiscard]] virtual Io<FileIdentity> identity(Handle file) = 0;
    [[nodiscard]] virtual Io<FileIdentity> identity(const std::string& path) = 0;
    /// The name that the file itself has: `path`, or where the links end if its last name is one. Fails
    /// where a link leads nowhere; whether the file exists is not looked at otherwise.
    [[nodiscard]] virtual Io<std::string> real_path(const std::string& path) = 0;
    /// Replaces `to` if it exists.
    [[nodiscard]] virtual Io<void> rename(const std::string& from, const std::string& to) = 0;
    /// Fails with `exists` if `to` exists.
    [[nodiscard]] virtual Io<void> rename_new(const std::string& from, const std::string& to) = 0;
    [[nodiscard]] virtual Io<void> remove(const std::string& path) = 0;
    [[nodiscard]] virtual Io<void> sync_folder(const std::string& folder) = 0;
    [[nodiscard]] virtual Io<void> make_folders(const std::string& folder) = 0;
    /// Names of what is in the folder, sorted, without "." and "..".
    [[nodiscard]] virtual Io<std::vector<std::string>> list(const std::string& folder) = 0;
    /// Who may read and write it: the system's permission bits.
    [[nodiscard]] virtual Io<std::uint32_t> mode(Handle file) = 0;
    [[nodiscard]] virtual Io<void> set_mode(Handle file, std::uint32_t mode) = 0;
    /// False: another descriptor holds it. Dropped when the descriptor is closed or its process ends.
    [[nodiscard]] virtual Io<bool> try_lock(Handle file, LockKind kind) = 0;
    virtual void unlock(Handle file) = 0;
    virtual void pause(int milliseconds) = 0;
    /// Changes with every start of the machine; empty if unknown.
    [[nodiscard]] virtual std::string boot_id() = 0;
    /// That a long piece of memory is about to be filled from end to end: a system may serve it with large
    /// pages. Nothing depends on it.
    virtual void will_fill(ByteView /*memory*/) {}
    /// "process 4711 on garage-pc": what other programs are told while this one holds the lock.
    [[nodiscard]] virtual std::string self() = 0;
};

/// An open file that closes itself.
class OpenFile {
public:
    OpenFile(FileLayer& layer, FileLayer::Handle handle)
        : layer_(&layer)
        , handle_(handle) {}
    OpenFile(OpenFile&& other) noexcept
        : layer_(std::exchange(other.layer_, nullptr))
        , handle_(other.handle_) {}
    OpenFile& operator=(OpenFile&& other) noexcept {
        std::swap(layer_, other.layer_);
        std::swap(handle_, other.handle_);
        return *this;
    }
    ~OpenFile() {
        if (layer_ != nullptr) layer_->close(handle_);
    }
    [[nodiscard]] FileLayer& layer() const { return *layer_; }
    [[nodiscard]] FileLayer::Handle handle() const { return handle_; }

private:
    FileLayer* layer_;
    FileLayer::Handle handle_;
};

/// An operation that a signal interrupts is done again; so many interruptions in a row are an error.
inline constexpr int most_interruptions = 100;
template <class Operation>
[[nodiscard]] auto repeat_interrupted(const Operation& operation) -> decltype(operation()) {
    auto result = operation();
    for (int n = 1; n < most_interruptions && !result && result.error().fault == IoFault::interrupted; ++n)
        result = operation();
    return result;
}

[[nodiscard]] Io<OpenFile> open_file(FileLayer& layer, const std::string& path, OpenMode mode);
/// Keeps `kept` where `path` still means that file; else opens what stands there now. After an error nothing
/// is kept.
[[nodiscard]] Io<void> keep_open(FileLayer& layer, const std::string& path, OpenMode mode,
                                 std::optional<OpenFile>& kept);
/// Reads until `into` is full or the file ends; returns the bytes read.
[[nodiscard]] Io<std::size_t> read_fully(const OpenFile& file, std::uint64_t at,
                                         std::span<std::uint8_t> into);
/// Writes everything or fails; what was written before the failure stays.
[[nodiscard]] Io<void> write_fully(const OpenFile& file, std::uint64_t at, ByteView bytes);
/// Writes over the whole of a small file in place. What follows the end of a shorter text is cut off last.
[[nodiscard]] Io<void> write_text(const OpenFile& file, const std::string& text);
/// The whole of a small file: at most `limit` bytes are read, the rest is left out.
[[nodiscard]] Io<std::string> read_text(const OpenFile& file, std::size_t limit);
[[nodiscard]] Io<std::string> read_text(FileLayer& layer, const std::string& path, std::size_t limit);

/// "." for a bare name.
[[nodiscard]] std::string folder_of(const std::string& path);
/// Makes names in the folder of `path` survive a power cut, where the disk or share can do that at all.
[[nodiscard]] Io<void> sync_folder_of(FileLayer& layer, const std::string& path);
/// A file as a whole, as the place of a problem.
[[nodiscard]] Place file_place(const std::string& path);
/// "the disk is full", "permission is missing", ...
[[nodiscard]] std::string reason_of(const IoError& error);
/// "The garage file could not be <done>: <reason>." with the file as place.
[[nodiscard]] Problem io_problem(const std::string& path, const std::string& done, const IoError& error);

} // namespace sumpbook::store
