// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/file_layer.h"
#include "model/store/frame.h"

#include <memory>
#include <new>
#include <vector>

namespace sumpbook::store {

// The bodies of verified frames are kept as they stand in the file, a tenth of the memory that records take,
// until somebody asks for the records. One frame: which parts are shown 1, the length of each of them 4,
// their bodies.

/// Kept frames that stand one behind the other in memory.
using Run = ByteView;
/// Frames in file order, in one or more runs.
using Runs = std::vector<Run>;
/// Adds a run, as part of the last one if it stands directly behind it.
void add_run(Runs& runs, Run run);

/// Keeps bodies in large blocks, which never move.
class BodyKeeper {
public:
    static constexpr std::size_t usual_block = 1024 * 1024;
    /// For one action.
    static constexpr std::size_t small_block = 16 * 1024;
    /// Where a whole long file is kept; a multiple of the largest pages.
    static constexpr std::size_t large_block = 8 * usual_block;

    /// `files` is told of large blocks before they are filled.
    explicit BodyKeeper(std::size_t block = usual_block, FileLayer* files = nullptr)
        : block_(block)
        , files_(files) {}

    /// Keeps the shown parts and adds them to `runs`, at the end of its last run if that is where they stand.
    void keep(const Frame& frame, Runs& runs);

    struct Mark {
        std::size_t blocks = 0, left = 0;
    };
    [[nodiscard]] Mark mark() const { return {blocks_.size(), free_.size()}; }
    /// Forgets everything kept since then; the caller forgets the runs.
    void back_to(const Mark& mark);

private:
    [[nodiscard]] std::span<std::uint8_t> take(std::size_t size);

    struct Free {
        std::align_val_t alignment;
        void operator()(void* bytes) const { operator delete(bytes, alignment); }
    };
    struct Block {
        std::unique_ptr<void, Free> bytes; ///< Not filled with zeros: pages are touched when bodies come.
        std::size_t size = 0;
    };
    [[nodiscard]] static Block new_block(std::size_t size);
    [[nodiscard]] static std::span<std::uint8_t> bytes_of(const Block& block) {
        return {static_cast<std::uint8_t*>(block.bytes.get()), block.size};
    }
    std::size_t block_;
    FileLayer* files_;
    std::vector<Block> blocks_;
    std::span<std::uint8_t> free_; ///< Of the last block.
};

/// Walks over kept frames in order.
class BodyReader {
public:
    /// The next frame as `decode_records` takes it; `runs` may have grown since the last call. There is one.
    [[nodiscard]] Frame next(const Runs& runs, std::uint32_t entry_count);

private:
    std::size_t run_ = 0;
    std::size_t at_ = 0; ///< In that run.
};

} // namespace sumpbook::store
