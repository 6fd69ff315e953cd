// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/file_lock.h"

#include "model/store/hash.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace sumpbook::store {
namespace {

constexpr int step_milliseconds = 20;
constexpr std::size_t lock_text_limit = 1024;
constexpr std::string_view holder_word = "holder ";

Io<OpenFile> open_lock_file(FileLayer& layer, const std::string& path, LockKind kind) {
    auto file = open_file(layer, path, OpenMode::read_write_or_create);
    if (!file && kind == LockKind::shared) file = open_file(layer, path, OpenMode::read);
    return file;
}

std::string holder_of(FileLayer& layer, const std::string& lock_path) {
    const auto text = read_text(layer, lock_path, lock_text_limit);
    if (!text || !text->starts_with(holder_word)) return "another program, which is reading it";
    return text->substr(holder_word.size(), text->find('\n') - holder_word.size());
}

/// "suspect from 4711 boot ID file DEVICE NUMBER"
std::optional<Suspicion> read_suspicion(const std::string& text) {
    std::istringstream words(text);
    words.imbue(std::locale::classic());
    std::string suspect, from, boot, file;
    Suspicion suspicion;
    words >> suspect >> from >> suspicion.from >> boot >> suspicion.boot_id >> file >>
        suspicion.file.device >> suspicion.file.number;
    if (suspect != "suspect") return std::nullopt;
    return suspicion; // also when the rest cannot be read: the doubt is what matters
}

} // namespace

Result<FileLock> FileLock::take(FileLayer& layer, const std::string& path, LockKind kind, Patience patience) {
    const std::string lock_path = path + ".lock";
    auto file = open_lock_file(layer, lock_path, kind);
    if (!file && kind == LockKind::shared) return FileLock(std::nullopt, kind);
    if (!file) return pass_on(io_problem(path, "locked for writing", file.error()));
    for (int waited = 0;; waited += step_milliseconds) {
        auto locked = layer.try_lock(file->handle(), kind);
        while (!locked && locked.error().fault == IoFault::interrupted)
            locked = layer.try_lock(file->handle(), kind);
        if (!locked && kind == LockKind::shared) return FileLock(std::nullopt, kind);
        if (!locked) return pass_on(io_problem(path, "locked for writing", locked.error()));
        if (*locked) break;
        if (waited >= patience.milliseconds) {
            return fail(ProblemKind::locked,
                        fmt::format("The garage file is in use by {}. Nothing was changed; close the other "
                                    "program or try again.",
                                    holder_of(layer, lock_path)),
                        Place{.file = path, .line = {}, .column = {}, .text = {}});
        }
        layer.pause(step_milliseconds);
    }
    FileLock lock(std::move(*file), kind);
    lock.suspicion_ = read_suspicion(read_text(layer, lock_path, lock_text_limit).value_or(std::string()));
    if (kind == LockKind::exclusive && !lock.suspicion_)
        lock.write(fmt::format("{}{}\n", holder_word, layer.self()));
    return lock;
}

FileLock::~FileLock() {
    if (!file_) return;
    if (kind_ == LockKind::exclusive && !suspicion_)
        static_cast<void>(file_->layer().truncate(file_->handle(), 0));
    file_->layer().unlock(file_->handle());
}

void FileLock::write(const std::string& text) {
    if (!file_) return;
    static_cast<void>(file_->layer().truncate(file_->handle(), 0));
    static_cast<void>(write_fully(*file_, 0, as_bytes(text)));
}

void FileLock::note_suspicion(const Suspicion& suspicion) {
    suspicion_ = suspicion;
    write(fmt::format("suspect from {} boot {} file {} {}\n", suspicion.from,
                      suspicion.boot_id.empty() ? "unknown" : suspicion.boot_id, suspicion.file.device,
                      suspicion.file.number));
    if (file_) static_cast<void>(file_->layer().sync(file_->handle()));
}

void FileLock::clear_suspicion() {
    suspicion_.reset();
    if (file_) write(fmt::format("{}{}\n", holder_word, file_->layer().self()));
}

} // namespace sumpbook::store
