// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/model/store/files_around.h"

#include <functional>
#include <stdexcept>
#include <utility>

namespace sumpbook::store {

/// Another program that does something once, right after an operation that a test picks.
class MeddlingFiles final : public FilesAround {
public:
    using Moment = std::function<bool(const FileOperation&)>;

    MeddlingFiles(FileLayer& inner, Moment moment, std::function<void()> what)
        : FilesAround(inner)
        , moment_(std::move(moment))
        , what_(std::move(what)) {}
    [[nodiscard]] bool done() const { return !what_; }

protected:
    void after(const FileOperation& operation, bool /*worked*/) override {
        if (!what_ || !moment_(operation)) return;
        std::exchange(what_, nullptr)();
    }

private:
    Moment moment_;
    std::function<void()> what_;
};

/// Writes over a file as it stands: it stays the same file.
inline void write_in_place(FileLayer& files, const std::string& path, ByteView bytes) {
    const auto file = open_file(files, path, OpenMode::read_write).value();
    if (!write_fully(file, 0, bytes) || !files.truncate(file.handle(), bytes.size()))
        throw std::runtime_error("cannot write to " + path);
}

} // namespace sumpbook::store
