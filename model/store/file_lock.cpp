// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/file_lock.h"

#include "model/store/hash.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace sumpbook::store {
namespace {

constexpr int longest_step_milliseconds = 20;
constexpr std::size_t lock_text_limit = 1024;
constexpr std::string_view first_word = "boot ";
constexpr std::string_view holder_word = " holder ";

Io<OpenFile> open_lock_file(FileLayer& layer, const std::string& path, LockKind kind) {
    auto file = open_file(layer, path, OpenMode::read_write_or_create_no_link);
    if (!file && kind == LockKind::shared) file = open_file(layer, path, OpenMode::read_no_link);
    return file;
}

/// The text of a lock file is one line: "boot ID holder NAME", or "boot ID suspect from PLACE file DEVICE
/// NUMBER end". The second is written over the first, so that the start it belongs to is known however little
/// of it arrived; what is neither was half written over.
std::optional<Suspicion> read_suspicion(const std::string& text) {
    const auto behind_boot = text.find(' ', first_word.size());
    if (text.compare(std::min(behind_boot, text.size()), holder_word.size(), holder_word) == 0)
        return std::nullopt; // as nearly always
    std::istringstream words(text);
    words.imbue(std::locale::classic());
    std::string boot, word, from, file, end;
    Suspicion suspicion;
    if (!(words >> boot >> suspicion.boot_id >> word) || boot != "boot" || word == "holder")
        return std::nullopt;
    words >> from >> suspicion.from >> file >> suspicion.file.device >> suspicion.file.number >> end;
    suspicion.whole = word == "suspect" && !words.fail() && end == "end";
    return suspicion;
}

/// Empty: nobody has held it.
std::string holder_in(const std::string& text) {
    const auto at = text.find(holder_word);
    if (at == std::string::npos) return {};
    const auto name = at + holder_word.size();
    return text.substr(name, text.find('\n', name) - name);
}

std::string boot_text(FileLayer& layer) {
    const std::string boot = layer.boot_id();
    return "boot " + (boot.empty() ? std::string("unknown") : boot);
}

std::string holder_text(FileLayer& layer) {
    return fmt::format("{}{}{}\n", boot_text(layer), holder_word, layer.self());
}

/// Who keeps others from it. The text is of the last writer: it holds the lock only if no reader can have it.
std::string holder_of(const OpenFile& file) {
    if (file.layer().try_lock(file.handle(), LockKind::shared).value_or(false))
        return "another program, which is reading it";
    const auto name = holder_in(read_text(file, lock_text_limit).value_or(std::string()));
    return name.empty() ? "another program" : name;
}

Io<bool> try_lock(const OpenFile& file, LockKind kind) {
    return repeat_interrupted([&] { return file.layer().try_lock(file.handle(), kind); });
}

Problem no_lock(const std::string& path, const IoError& error) {
    return io_problem(path, "locked for writing", error);
}

Problem not_a_lock(const std::string& lock_path, const std::string& what) {
    return {ProblemKind::refused,
            fmt::format("{} should be the lock of this garage file, but it is {}. Nothing was changed; move it "
                        "away or give it another name, and try again.",
                        lock_path, what),
            file_place(lock_path)};
}

Problem not_opened(const std::string& path, const std::string& lock_path, const IoError& error) {
    if (error.fault == IoFault::is_link) return not_a_lock(lock_path, "a link to another file");
    return no_lock(path, error);
}

/// Whether a text is one that this program left, or what a power cut made of it: nothing, its start, zeros.
bool is_lock_text(const std::string& text) {
    const auto start = text.substr(0, std::min(text.find('\0'), first_word.size()));
    return first_word.starts_with(start);
}

} // namespace

Result<FileLock> FileLock::take(FileLayer& layer, const std::string& path, LockKind kind, Patience patience,
                                std::optional<OpenFile>* keep) {
    const std::string lock_path = path + ".lock";
    std::optional<OpenFile> file;
    if (keep != nullptr) file = std::exchange(*keep, std::nullopt);
    if (file) {
        const auto kept = keep_open(layer, lock_path, OpenMode::read_write_or_create_no_link, file);
        if (!kept) return pass_on(not_opened(path, lock_path, kept.error()));
    } else {
        auto opened = open_lock_file(layer, lock_path, kind);
        if (!opened && kind == LockKind::shared) return FileLock(std::nullopt, nullptr);
        if (!opened) return pass_on(not_opened(path, lock_path, opened.error()));
        file.emplace(std::move(*opened));
    }
    int step = 1;
    for (int waited = 0;; waited += step, step = std::min(2 * step, longest_step_milliseconds)) {
        const auto locked = try_lock(*file, kind);
        if (!locked && kind == LockKind::shared) return FileLock(std::nullopt, nullptr);
        if (!locked) return pass_on(no_lock(path, locked.error()));
        if (*locked) break;
        if (waited >= patience.milliseconds) {
            return fail(ProblemKind::locked,
                        fmt::format("The garage file is in use by {}. Nothing was changed; close the other "
                                    "program or try again.",
                                    holder_of(*file)),
                        file_place(path));
        }
        layer.pause(step);
    }
    FileLock lock(std::move(file), keep);
    const auto text = read_text(*lock.file_, lock_text_limit);
    if (!text && kind == LockKind::exclusive) return pass_on(no_lock(path, text.error()));
    if (kind == LockKind::exclusive && !is_lock_text(*text))
        return pass_on(not_a_lock(lock_path, "a file of another kind"));
    if (text) lock.suspicion_ = read_suspicion(*text);
    const bool to_be_named = kind == LockKind::exclusive && !lock.suspicion_;
    if (to_be_named && holder_in(*text) != layer.self()) lock.write(holder_text(layer));
    return lock;
}

FileLock::~FileLock() {
    if (!file_) return;
    file_->layer().unlock(file_->handle());
    if (keep_ != nullptr) *keep_ = std::move(file_);
}

void FileLock::write(const std::string& text) {
    if (file_) static_cast<void>(write_text(*file_, text));
}

void FileLock::note_suspicion(const Suspicion& suspicion) {
    suspicion_ = suspicion;
    if (!file_) return;
    write(fmt::format("{} suspect from {} file {} {} end\n", boot_text(file_->layer()), suspicion.from,
                      suspicion.file.device, suspicion.file.number));
    static_cast<void>(file_->layer().sync(file_->handle()));
}

void FileLock::clear_suspicion() {
    suspicion_.reset();
    if (file_) write(holder_text(file_->layer()));
}

Result<LockedFile> open_locked(FileLayer& layer, const std::string& path, Patience patience) {
    const auto problem = [&](const IoError& error) { return pass_on(io_problem(path, "read", error)); };
    auto opened = open_file(layer, path, OpenMode::read);
    if (!opened) return problem(opened.error()); // without a lock file beside what is not there
    auto lock = FileLock::take(layer, path, LockKind::shared, patience);
    if (!lock) return pass_on(lock.error());
    // A writer may have put another file in its place before the lock was to be had.
    std::optional<OpenFile> file(std::move(*opened));
    if (const auto kept = keep_open(layer, path, OpenMode::read, file); !kept) return problem(kept.error());
    return LockedFile{std::move(*file), *std::move(lock)};
}

} // namespace sumpbook::store
