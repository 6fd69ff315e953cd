// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"

namespace sumpbook::store {

/// A failed read, thrown through the code that takes a file apart and caught where the file's name is
/// known.
struct IoFailure {
    IoError error;
};

/// A file seen through a bounded piece of memory: 512 KiB, more only while one longer frame is looked at.
/// The file is read, not mapped: another program that shortens it gives a sentence and not a bus error.
class Window {
public:
    static constexpr std::size_t usual_bytes = 512 * 1024;

    /// `size`: how much of the file is looked at; what is appended meanwhile stays out of sight.
    Window(const OpenFile& file, std::uint64_t size, std::size_t capacity = usual_bytes)
        : file_(&file)
        , size_(size)
        , capacity_(capacity) {}
    /// Bytes in memory as they will stand in a file from `at` on.
    Window(ByteView bytes, std::uint64_t at)
        : file_(nullptr)
        , size_(at + bytes.size())
        , capacity_(bytes.size())
        , start_(at)
        , bytes_(bytes.begin(), bytes.end()) {}

    [[nodiscard]] std::uint64_t size() const { return size_; }
    /// The bytes from `at`, valid until the next call; at + length <= size(). Throws IoFailure.
    [[nodiscard]] ByteView view(std::uint64_t at, std::size_t length);
    /// Sum of all lengths asked for, a measure of the work done so far.
    [[nodiscard]] std::uint64_t bytes_viewed() const { return viewed_; }

private:
    const OpenFile* file_;
    std::uint64_t size_;
    std::size_t capacity_;
    std::uint64_t start_ = 0;
    Bytes bytes_;
    std::uint64_t viewed_ = 0;
};

} // namespace sumpbook::store
