// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/parallel_load.h"

#include <algorithm>
#include <exception>
#include <map>
#include <memory>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace sumpbook::store {
namespace {

/// A stretch of the file cut at the ends of actions, and what one thread found in it.
struct Turn {
    std::size_t number = 0; ///< Turns count from 0 in file order.
    std::uint64_t from = 0, until = 0;
    GoodActions good; ///< Plain ones, up to the first that is not.
    Piece piece;
};

/// Collects plain actions: good, and holding nothing that a loader would refuse. The first one that is not
/// plain ends the turn.
class PlainActions final : public ScanHandler {
public:
    PlainActions(BodyKeeper& keeper, Turn& turn)
        : keeper_(keeper)
        , turn_(turn) {}

    void frame(const VerifiedFrame& verified, std::uint64_t at) override {
        if (odd_) return;
        odd_ = format_fault(verified.frame.header).has_value() ||
               add_frame(turn_.piece, keeper_, verified, at).has_value();
    }
    void fingerprint_record(ByteView body) override {
        odd_ = odd_ || add_fingerprint(turn_.piece, body).has_value();
    }
    void action_done(bool good) override {
        odd_ = odd_ || !good;
        auto& piece = turn_.piece;
        if (odd_) {
            piece.frames.resize(plain_.frames);
            piece.fingerprints.resize(plain_.fingerprints);
            piece.attachments.resize(plain_.attachments);
            piece.bodies.resize(plain_.runs);
            if (!piece.bodies.empty()) piece.bodies.back() = piece.bodies.back().first(plain_.last_run);
            return;
        }
        if (piece.frames.size() > plain_.frames) piece.frames.back().ends_action = true;
        plain_ = {piece.frames.size(), piece.fingerprints.size(), piece.attachments.size(),
                  piece.bodies.size(), piece.bodies.empty() ? 0 : piece.bodies.back().size()};
    }
    [[nodiscard]] bool odd() const { return odd_; }

private:
    struct Sizes {
        std::size_t frames = 0, fingerprints = 0, attachments = 0, runs = 0, last_run = 0;
    };
    BodyKeeper& keeper_;
    Turn& turn_;
    Sizes plain_;
    bool odd_ = false;
};

/// Several threads at work on one file, from one place up to the first action that is not plain or does not
/// fit into a window.
class Team {
public:
    Team(const OpenFile& file, std::uint64_t size, std::uint64_t from, ScanDepth depth, Readers readers,
         Loader& loader)
        : file_(file)
        , size_(size)
        , depth_(depth)
        , readers_(readers)
        , unread_(from)
        , loader_(loader)
        , loaded_{.end = from, .frames = 0} {}

    /// How far the plain actions reach; the loader has taken them in.
    GoodActions run() {
        start_and_join();
        for (auto& keeper : keepers_)
            loader_.take_memory(std::move(keeper));
        if (failure_) std::rethrow_exception(failure_);
        return loaded_;
    }

private:
    void start_and_join() {
        std::vector<std::jthread> others;
        try {
            for (unsigned i = 1; i < readers_.threads; ++i)
                others.emplace_back([this] { work(); });
        } catch (const std::system_error&) { // the system gives no more: those that run do all of it
        }
        work();
    }

    void work() {
        BodyKeeper keeper = loader_.new_keeper();
        try {
            Window window(file_, size_, readers_.window_bytes);
            while (auto turn = next_turn(window)) {
                verify(window, keeper, *turn);
                hand_in(std::move(turn));
            }
        } catch (...) {
            const std::lock_guard lock(mutex_);
            stopped_ = true;
            if (!failure_) failure_ = std::current_exception();
        }
        const std::lock_guard lock(mutex_);
        keepers_.push_back(std::move(keeper));
    }

    /// Reads the next window and cuts it behind its last whole action; none when there is no more to do.
    std::unique_ptr<Turn> next_turn(Window& window) {
        auto turn = spare_turn();
        const std::lock_guard reading(reading_);
        if (is_stopped() || unread_ >= size_) return nullptr;
        turn->number = turns_++;
        turn->from = unread_;
        unread_ = turn->until = last_cut(window, unread_);
        if (turn->until > turn->from) return turn;
        stop();
        return nullptr;
    }

    /// The end of the last action that is whole in the window which begins at `from`.
    std::uint64_t last_cut(Window& window, std::uint64_t from) {
        const auto length = std::min<std::uint64_t>(readers_.window_bytes, size_ - from);
        const auto bytes = window.view(from, static_cast<std::size_t>(length));
        std::size_t cut = 0;
        while (bytes.size() - cut >= action_header_bytes) {
            const auto header = read_action_header(bytes.subspan(cut, action_header_bytes));
            if (!header || header->length < action_header_bytes || header->length > bytes.size() - cut) break;
            cut += header->length;
        }
        return from + cut;
    }

    void verify(Window& window, BodyKeeper& keeper, Turn& turn) {
        PlainActions plain(keeper, turn);
        turn.good = {.end = turn.from, .frames = 0};
        while (turn.good.end < turn.until) { // one by one: what is good may still not be plain
            const auto one = walk_good_actions(window, turn.good.end, turn.good.end + 1, depth_, plain);
            if (plain.odd()) return stop();
            turn.good = {.end = one.end, .frames = turn.good.frames + one.frames};
        }
    }

    /// Turns go to the loader in file order, through one thread at a time; the others read on.
    void hand_in(std::unique_ptr<Turn> done) {
        std::unique_lock lock(mutex_);
        const auto number = done->number;
        waiting_.emplace(number, std::move(done));
        if (taking_) return;
        taking_ = true;
        while (!waiting_.empty() && waiting_.begin()->first == taken_) {
            auto turn = std::move(waiting_.begin()->second);
            waiting_.erase(waiting_.begin());
            lock.unlock();
            take(*turn);
            lock.lock();
            ++taken_;
            spare_.push_back(std::move(turn));
        }
        taking_ = false;
    }

    void take(const Turn& turn) {
        if (ended_) return;
        loader_.take(turn.piece);
        loaded_ = {.end = turn.good.end, .frames = loaded_.frames + turn.good.frames};
        ended_ = turn.good.end < turn.until;
    }

    /// One that was used before, if there is: fresh memory is slow.
    std::unique_ptr<Turn> spare_turn() {
        const std::lock_guard lock(mutex_);
        if (spare_.empty()) return std::make_unique<Turn>();
        auto turn = std::move(spare_.back());
        spare_.pop_back();
        turn->piece.clear();
        return turn;
    }

    void stop() {
        const std::lock_guard lock(mutex_);
        stopped_ = true;
    }
    bool is_stopped() {
        const std::lock_guard lock(mutex_);
        return stopped_;
    }

    const OpenFile& file_;
    const std::uint64_t size_;
    const ScanDepth depth_;
    const Readers readers_;

    std::mutex reading_; ///< Of the file, and of these:
    std::uint64_t unread_;
    std::size_t turns_ = 0;

    std::mutex mutex_; ///< Of these:
    bool stopped_ = false;
    std::exception_ptr failure_;
    std::map<std::size_t, std::unique_ptr<Turn>> waiting_;
    std::vector<std::unique_ptr<Turn>> spare_;
    std::vector<BodyKeeper> keepers_;
    std::size_t taken_ = 0;
    bool taking_ = false; ///< Whoever set it has the rest:

    Loader& loader_;
    GoodActions loaded_;
    bool ended_ = false; ///< What comes behind is not taken: it stands behind an action that is not plain.
};

bool is_longer_than(std::size_t limit, Window& window, std::uint64_t at) {
    if (window.size() - at < action_header_bytes) return false;
    const auto header = read_action_header(window.view(at, action_header_bytes));
    return header && header->length > limit;
}

/// Plain actions, together, and long ones alone.
GoodActions load_plain(const OpenFile& file, Window& window, std::uint64_t from, ScanDepth depth,
                       Readers readers, Loader& loader) {
    GoodActions good{.end = from, .frames = 0};
    const auto add = [&](const GoodActions& more) {
        const bool went_on = more.end > good.end;
        good = {.end = more.end, .frames = good.frames + more.frames};
        return went_on;
    };
    bool goes_on = true;
    while (goes_on && good.end < window.size() && !loader.fault()) {
        add(Team(file, window.size(), good.end, depth, readers, loader).run());
        goes_on = is_longer_than(readers.window_bytes, window, good.end) &&
                  add(walk_good_actions(window, good.end, good.end + 1, depth, loader));
    }
    return good;
}

} // namespace

Scan load_actions(const OpenFile& file, std::uint64_t size, std::uint64_t from, ScanDepth depth,
                  Readers readers, Loader& loader) {
    const std::size_t frames_before = loader.index().frames().size();
    Window window(file, size, readers.window_bytes);
    readers.threads = std::min(readers.threads, most_threads);
    GoodActions good{.end = from, .frames = 0};
    if (readers.threads > 1 && size - from > readers.window_bytes)
        good = load_plain(file, window, from, depth, readers, loader);
    // The rest, or all of it: what is wrong is judged in one place.
    Scan scan = scan_actions(window, good.end, frames_before + good.frames, depth, loader);
    scan.frames += good.frames;
    return scan;
}

} // namespace sumpbook::store
