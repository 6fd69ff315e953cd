// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace sumpbook::store {

/// A disk in memory, with what a real one keeps apart: what programs see, and what would still be there after
/// a power cut. Writes and cuts are safe once their file was synced, new names, renames and removals once
/// their folder was. A copy is the same disk with no file open. Folders and
/// permissions are safe at once.
class MemoryDisk final : public FileLayer {
public:
    MemoryDisk() = default;
    MemoryDisk(const MemoryDisk& other);
    MemoryDisk& operator=(const MemoryDisk&) = delete;

    Io<Handle> open(const std::string& path, OpenMode mode) override;
    void close(Handle file) override;
    Io<std::size_t> read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) override;
    Io<std::size_t> write(Handle file, std::uint64_t at, ByteView bytes) override;
    Io<void> sync(Handle file) override;
    Io<void> truncate(Handle file, std::uint64_t size) override;
    Io<std::uint64_t> size(Handle file) override;
    Io<FileIdentity> identity(Handle file) override;
    Io<FileIdentity> identity(const std::string& path) override;
    Io<std::string> real_path(const std::string& path) override { return path; }
    Io<void> rename(const std::string& from, const std::string& to) override;
    Io<void> rename_new(const std::string& from, const std::string& to) override;
    Io<void> remove(const std::string& path) override;
    Io<void> sync_folder(const std::string& folder) override;
    Io<void> make_folders(const std::string& folder) override;
    Io<std::vector<std::string>> list(const std::string& folder) override;
    Io<std::uint32_t> mode(Handle file) override;
    Io<void> set_mode(Handle file, std::uint32_t mode) override;
    Io<bool> try_lock(Handle file, LockKind kind) override;
    void unlock(Handle file) override;
    void pause(int /*milliseconds*/) override {}
    std::string boot_id() override { return boot; }
    std::string self() override { return "process 1 on a memory disk"; }

    /// All files, by name.
    [[nodiscard]] std::vector<std::string> names() const;
    /// What programs see; throws where there is no such file.
    [[nodiscard]] Bytes bytes(const std::string& path) const;
    /// A file that is there and safe, without going through a program.
    void put(const std::string& path, ByteView bytes);
    /// Files that somebody has open.
    [[nodiscard]] std::size_t open_files() const { return handles_.size(); }

    /// As Linux does after a sync that failed: what was not safe is still seen, counts as clean, and no later
    /// sync makes it safe.
    void sync_failed(Handle file);

    /// How far a disk reorders what was not safe when the power went.
    enum class PowerCut {
        in_order, ///< Of each file the first so many changes arrived, the next one up to some byte.
        any_order ///< Any pieces of 512 bytes of any changes arrived, or zeros in their place; any names.
    };
    /// What a restart of the machine finds; the boot id is another one. Seed 0: nothing that was not safe;
    /// seed 1: everything.
    [[nodiscard]] MemoryDisk after_power_cut(std::uint64_t seed, PowerCut kind = PowerCut::any_order) const;
    /// True when every change is safe, so that all seeds give the same disk.
    [[nodiscard]] bool all_safe() const;

    std::string boot = "start";

private:
    struct Change {
        bool cut = false; ///< To `at` bytes; else `bytes` written there.
        std::uint64_t at = 0;
        Bytes bytes;
        bool lost = false; ///< No sync makes it safe any more.
    };
    struct Node {
        Bytes now, safe;
        std::vector<Change> unsafe;
        std::uint32_t mode = 0644;
    };
    using Number = std::uint64_t;
    using Names = std::map<std::string, Number>;
    struct NameChange {
        std::string folder;
        std::string gone;  ///< Empty: none.
        std::string added; ///< Empty: none.
        Number number = 0;
    };
    struct Open {
        Number number = 0;
        bool may_write = false;
        bool locked = false;
        LockKind kind = LockKind::shared;
    };
    class Cut; ///< Makes what a power cut leaves.

    static void apply(const Change& change, Bytes& bytes);
    static void apply(const NameChange& change, Names& names);
    void change(NameChange change);
    Io<void> move(const std::string& from, const std::string& to);

    std::map<Number, Node> nodes_;
    Names names_, safe_names_;
    std::vector<NameChange> unsafe_names_;
    std::set<std::string> folders_{"/", "."};
    std::map<Handle, Open> handles_;
    Number last_number_ = 0;
    Handle last_handle_ = 2;
};

} // namespace sumpbook::store
