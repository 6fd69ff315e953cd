// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/memory_disk.h"

#include <algorithm>
#include <cerrno>
#include <random>

namespace sumpbook::store {

class MemoryDisk::Cut {
public:
    Cut(std::uint64_t seed, PowerCut kind)
        : seed_(seed)
        , kind_(kind)
        , random_(seed) {}

    /// The bytes of a file.
    Bytes bytes(const Node& node) {
        if (seed_ == 1) return node.now;
        if (seed_ == 0 || node.unsafe.empty()) return node.safe;
        if (kind_ == PowerCut::in_order) return first_changes(node);
        switch (below(4)) {
        case 0:
            return first_changes(node);
        case 1:
            return pieces(node);
        case 2:
            return as_zeros(node);
        default:
            return below(2) == 0 ? node.now : node.safe;
        }
    }

    Names names(const Names& safe, const std::vector<NameChange>& unsafe) {
        Names names = safe;
        const auto arrived = below(unsafe.size() + 1);
        for (std::size_t i = 0; i < unsafe.size(); ++i) {
            const bool here = kind_ == PowerCut::in_order ? i < arrived : below(2) == 0;
            if (seed_ == 1 || (seed_ > 1 && here)) apply(unsafe[i], names);
        }
        return names;
    }

private:
    std::uint64_t below(std::uint64_t limit) { return random_() % limit; }

    /// Some changes in order, the last one cut short at any byte.
    Bytes first_changes(const Node& node) {
        Bytes bytes = node.safe;
        const auto whole = below(node.unsafe.size());
        for (std::size_t i = 0; i < whole; ++i)
            apply(node.unsafe[i], bytes);
        Change last = node.unsafe[whole];
        if (!last.cut) last.bytes.resize(below(last.bytes.size() + 1));
        apply(last, bytes);
        return bytes;
    }

    /// Any sectors of any changes; the file as long as it was at some time.
    Bytes pieces(const Node& node) {
        Bytes bytes = node.safe;
        bytes.resize(below(2) == 0 ? node.now.size() : node.safe.size());
        for (const auto& change : node.unsafe) {
            for (std::uint64_t at = change.at; at < change.at + change.bytes.size(); ++at) {
                if (at == change.at || at % sector == 0) kept_ = below(2) == 0;
                if (kept_ && at < bytes.size()) bytes[at] = change.bytes[at - change.at];
            }
        }
        return bytes;
    }

    /// The length arrived, the bytes only up to somewhere.
    Bytes as_zeros(const Node& node) {
        Bytes bytes = node.now;
        const auto from = std::min(node.safe.size(), bytes.size());
        const auto arrived = from + below(bytes.size() - from + 1);
        std::fill(bytes.begin() + static_cast<std::ptrdiff_t>(arrived), bytes.end(), std::uint8_t{0});
        return bytes;
    }

    static constexpr std::uint64_t sector = 512;
    std::uint64_t seed_;
    PowerCut kind_;
    std::mt19937_64 random_;
    bool kept_ = false;
};

MemoryDisk::MemoryDisk(const MemoryDisk& other)
    : boot(other.boot)
    , nodes_(other.nodes_)
    , names_(other.names_)
    , safe_names_(other.safe_names_)
    , unsafe_names_(other.unsafe_names_)
    , folders_(other.folders_)
    , last_number_(other.last_number_) {}

void MemoryDisk::apply(const Change& change, Bytes& bytes) {
    if (change.cut) {
        bytes.resize(change.at);
        return;
    }
    if (change.bytes.empty()) return;
    if (bytes.size() < change.at + change.bytes.size()) bytes.resize(change.at + change.bytes.size());
    std::ranges::copy(change.bytes, bytes.begin() + static_cast<std::ptrdiff_t>(change.at));
}

void MemoryDisk::apply(const NameChange& change, Names& names) {
    if (!change.gone.empty()) names.erase(change.gone);
    if (!change.added.empty()) names[change.added] = change.number;
}

void MemoryDisk::change(NameChange change) {
    apply(change, names_);
    unsafe_names_.push_back(std::move(change));
}

Io<FileLayer::Handle> MemoryDisk::open(const std::string& path, OpenMode mode) {
    const bool must_make = mode == OpenMode::create_new || mode == OpenMode::create_private;
    const bool may_make = must_make || mode == OpenMode::read_write_or_create ||
                          mode == OpenMode::read_write_or_create_no_link;
    const auto found = names_.find(path);
    if (found != names_.end() && must_make) return io_fail(IoFault::exists, EEXIST);
    if (found == names_.end()) {
        if (!may_make || !folders_.contains(folder_of(path))) return io_fail(IoFault::not_found, ENOENT);
        nodes_[++last_number_].mode = mode == OpenMode::create_private ? 0600 : 0644;
        change({.folder = folder_of(path), .gone = {}, .added = path, .number = last_number_});
    }
    handles_[++last_handle_] = {.number = names_.at(path), .may_write = mode != OpenMode::read && mode != OpenMode::read_no_link};
    return last_handle_;
}

void MemoryDisk::close(Handle file) { handles_.erase(file); }

Io<std::size_t> MemoryDisk::read(Handle file, std::uint64_t at, std::span<std::uint8_t> into) {
    const auto& bytes = nodes_.at(handles_.at(file).number).now;
    if (at >= bytes.size()) return 0;
    const auto count = std::min<std::size_t>(into.size(), bytes.size() - at);
    std::copy_n(bytes.begin() + static_cast<std::ptrdiff_t>(at), count, into.begin());
    return count;
}

Io<std::size_t> MemoryDisk::write(Handle file, std::uint64_t at, ByteView bytes) {
    if (!handles_.at(file).may_write) return io_fail(IoFault::denied, EBADF);
    auto& node = nodes_.at(handles_.at(file).number);
    node.unsafe.push_back({.cut = false, .at = at, .bytes = {bytes.begin(), bytes.end()}, .lost = false});
    apply(node.unsafe.back(), node.now);
    return bytes.size();
}

Io<void> MemoryDisk::truncate(Handle file, std::uint64_t size) {
    if (!handles_.at(file).may_write) return io_fail(IoFault::denied, EBADF);
    auto& node = nodes_.at(handles_.at(file).number);
    node.unsafe.push_back({.cut = true, .at = size, .bytes = {}, .lost = false});
    apply(node.unsafe.back(), node.now);
    return {};
}

Io<void> MemoryDisk::sync(Handle file) {
    auto& node = nodes_.at(handles_.at(file).number);
    for (const auto& change : node.unsafe) {
        if (!change.lost) apply(change, node.safe);
    }
    std::erase_if(node.unsafe, [](const Change& change) { return !change.lost; });
    return {};
}

void MemoryDisk::sync_failed(Handle file) {
    for (auto& change : nodes_.at(handles_.at(file).number).unsafe)
        change.lost = true;
}

Io<std::uint64_t> MemoryDisk::size(Handle file) {
    return std::uint64_t{nodes_.at(handles_.at(file).number).now.size()};
}

Io<FileIdentity> MemoryDisk::identity(Handle file) { return FileIdentity{1, handles_.at(file).number}; }

Io<FileIdentity> MemoryDisk::identity(const std::string& path) {
    const auto found = names_.find(path);
    if (found == names_.end()) return io_fail(IoFault::not_found, ENOENT);
    return FileIdentity{1, found->second};
}

Io<void> MemoryDisk::move(const std::string& from, const std::string& to) {
    const auto found = names_.find(from);
    if (found == names_.end() || !folders_.contains(folder_of(to)))
        return io_fail(IoFault::not_found, ENOENT);
    change({.folder = folder_of(to), .gone = from, .added = to, .number = found->second});
    return {};
}

Io<void> MemoryDisk::rename(const std::string& from, const std::string& to) { return move(from, to); }

Io<void> MemoryDisk::rename_new(const std::string& from, const std::string& to) {
    if (names_.contains(to)) return io_fail(IoFault::exists, EEXIST);
    return move(from, to);
}

Io<void> MemoryDisk::remove(const std::string& path) {
    if (!names_.contains(path)) return io_fail(IoFault::not_found, ENOENT);
    change({.folder = folder_of(path), .gone = path, .added = {}, .number = 0});
    return {};
}

Io<void> MemoryDisk::sync_folder(const std::string& folder) {
    if (!folders_.contains(folder)) return io_fail(IoFault::not_found, ENOENT);
    for (const auto& change : unsafe_names_) {
        if (change.folder == folder) apply(change, safe_names_);
    }
    std::erase_if(unsafe_names_, [&](const NameChange& change) { return change.folder == folder; });
    return {};
}

Io<void> MemoryDisk::make_folders(const std::string& folder) {
    for (std::string path = folder; path != "/" && path != "."; path = folder_of(path))
        folders_.insert(path);
    return {};
}

Io<std::vector<std::string>> MemoryDisk::list(const std::string& folder) {
    if (!folders_.contains(folder)) return io_fail(IoFault::not_found, ENOENT);
    const std::string in = folder.ends_with('/') ? folder : folder + "/";
    std::vector<std::string> found;
    const auto take = [&](const std::string& path) {
        if (path.size() > in.size() && path.starts_with(in) && path.find('/', in.size()) == std::string::npos)
            found.push_back(path.substr(in.size()));
    };
    for (const auto& [name, number] : names_)
        take(name);
    for (const auto& name : folders_)
        take(name);
    std::ranges::sort(found);
    return found;
}

Io<std::uint32_t> MemoryDisk::mode(Handle file) { return nodes_.at(handles_.at(file).number).mode; }

Io<void> MemoryDisk::set_mode(Handle file, std::uint32_t mode) {
    nodes_.at(handles_.at(file).number).mode = mode;
    return {};
}

/// As flock: a lock belongs to what was opened, not to the program.
Io<bool> MemoryDisk::try_lock(Handle file, LockKind kind) {
    auto& mine = handles_.at(file);
    for (const auto& [handle, other] : handles_) {
        const bool against = kind == LockKind::exclusive || other.kind == LockKind::exclusive;
        if (handle != file && other.number == mine.number && other.locked && against) return false;
    }
    mine.locked = true;
    mine.kind = kind;
    return true;
}

void MemoryDisk::unlock(Handle file) { handles_.at(file).locked = false; }

std::vector<std::string> MemoryDisk::names() const {
    std::vector<std::string> names;
    for (const auto& [name, number] : names_)
        names.push_back(name);
    return names;
}

Bytes MemoryDisk::bytes(const std::string& path) const { return nodes_.at(names_.at(path)).now; }

void MemoryDisk::put(const std::string& path, ByteView bytes) {
    static_cast<void>(make_folders(folder_of(path)));
    auto& node = nodes_[++last_number_];
    node.now.assign(bytes.begin(), bytes.end());
    node.safe = node.now;
    names_[path] = last_number_;
    safe_names_[path] = last_number_;
}

bool MemoryDisk::all_safe() const {
    return unsafe_names_.empty() &&
           std::ranges::all_of(nodes_, [](const auto& node) { return node.second.unsafe.empty(); });
}

MemoryDisk MemoryDisk::after_power_cut(std::uint64_t seed, PowerCut kind) const {
    Cut cut(seed, kind);
    MemoryDisk found;
    found.boot = boot + "-later";
    found.folders_ = folders_;
    found.last_number_ = last_number_;
    found.names_ = cut.names(safe_names_, unsafe_names_);
    found.safe_names_ = found.names_;
    for (const auto& [name, number] : found.names_) {
        auto& node = found.nodes_[number];
        if (!node.now.empty()) continue;
        node.now = cut.bytes(nodes_.at(number));
        node.mode = nodes_.at(number).mode;
        node.safe = node.now;
    }
    return found;
}

} // namespace sumpbook::store
