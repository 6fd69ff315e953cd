// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/model/store/fault_loop.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>

namespace sumpbook::store {
namespace {

struct Kind {
    std::string name;
    FailingFiles::Plan plan;
};

const IoError eio{IoFault::other, EIO};
const IoError enospc{IoFault::no_space, ENOSPC};
const IoError eintr{IoFault::interrupted, EINTR};

/// Once and from then on.
void add_both(std::vector<Kind>& all, const std::string& name, FailingFiles::Plan plan) {
    all.push_back({name + " once", plan});
    plan.from_then_on = true;
    all.push_back({name + " from then on", plan});
}

std::vector<Kind> kinds() {
    std::vector<Kind> all;
    const auto plan = [](const IoError& error, const std::string& only = {}) {
        return FailingFiles::Plan{.fault = error.fault, .code = error.code, .only = only};
    };
    for (const auto& [name, error] :
         {std::pair("EIO", eio), std::pair("ENOSPC", enospc), std::pair("EINTR", eintr)}) {
        add_both(all, name, plan(error));
        auto in_pieces = plan(error);
        in_pieces.most_at_once = 50;
        in_pieces.interrupt_first = true;
        add_both(all, std::string("in short and interrupted pieces, ") + name, in_pieces);
    }
    add_both(all, "EIO of syncs", plan(eio, "sync"));
    add_both(all, "ENOSPC of writes", plan(enospc, "write"));
    add_both(all, "EINTR of writes", plan(eintr, "write"));
    for (const auto& [name, error] : {std::pair("ENOSPC", enospc), std::pair("EIO", eio)}) {
        auto half = plan(error, "write");
        half.half_before = true;
        add_both(all, std::string("half a write, then for writes ") + name, half);
    }
    auto worse = plan(enospc, "write");
    worse.half_before = true;
    worse.then_all = eio;
    all.push_back({"half a write, then ENOSPC, then EIO of everything", worse});
    return all;
}

bool suspect(const MemoryDisk& disk, const std::string& path) {
    for (const auto& name : disk.names()) {
        if (name != path + ".lock") continue;
        const auto bytes = disk.bytes(name);
        return std::string(bytes.begin(), bytes.end()).find(" suspect from ") != std::string::npos;
    }
    return false;
}

/// Files that an operation leaves behind and that nobody would clean up.
std::string leftovers(const MemoryDisk& disk) {
    std::string found;
    for (const auto& name : disk.names()) {
        if (name.find(".new-") != std::string::npos) found += " " + name;
    }
    return found;
}

Bytes bytes_or_none(const MemoryDisk& disk, const std::string& path) {
    for (const auto& name : disk.names()) {
        if (name == path) return disk.bytes(name);
    }
    return {};
}

/// Another program that saves one more entry.
Result<void> save_one_more(FileLayer& files, const std::string& path) {
    SeededRandom random("one more");
    auto garage = GarageFile::open(surroundings(files, random), path);
    if (!garage) return pass_on(garage.error());
    const auto ids = garage->append({{subject_of(1), fuel_record(999)}});
    if (!ids) return pass_on(ids.error());
    return {};
}

/// One point of the loop.
class Point {
public:
    Point(const StoreOperation& operation, const Kind& kind, int number, FaultLoop& loop,
          const std::string& old_state, const std::string& new_state)
        : operation_(operation)
        , kind_(kind)
        , number_(number)
        , loop_(loop)
        , old_(old_state)
        , new_(new_state)
        , disk_(operation.before) {}

    /// False when the operation ended without meeting the failure.
    bool run() {
        auto plan = kind_.plan;
        plan.fail_at = number_;
        FailingFiles failing(plan, disk_);
        const auto done = operation_.run(failing);
        if (failing.failures() == 0) {
            if (!done) wrong("failed although nothing did: " + done.error().sentence);
            return false;
        }
        failed_ = failing.first_failed();
        ++loop_.points;
        const auto state = state_text(disk_, operation_.path);
        look_beside(disk_, state);
        look_for_erased(disk_, state);
        if (done) {
            saved();
        } else {
            not_saved(done.error());
        }
        return true;
    }

private:
    void wrong(const std::string& what) {
        if (loop_.wrong.size() < 20)
            loop_.wrong.push_back(fmt::format("{}, {}, operation {} ({} of {}): {}", operation_.name,
                                              kind_.name, number_, failed_.name, failed_.path, what));
    }
    void expect(const std::string& what, const std::string& found, const std::string& wanted) {
        if (found != wanted) wrong(fmt::format("{}\n{}\ninstead of\n{}", what, found, wanted));
    }

    /// What else is on the disk, where the file that is written reads like this.
    void look_beside(const MemoryDisk& disk, const std::string& found) {
        const bool is_new = found == new_;
        for (const auto& name : changed_beside(operation_.before, disk, operation_.path)) {
            const bool may_go = is_new && std::ranges::count(operation_.removes, name) == 1;
            if (!may_go || bytes_or_none(disk, name) != Bytes{}) wrong(name + " is not as it was");
        }
        const auto names = disk.names();
        const auto is_there = [&](const auto& name) { return std::ranges::count(names, name) == 1; };
        if (!std::ranges::all_of(operation_.removes, is_there)) ++loop_.removed;
    }

    /// Nothing on the disk shows what was to be erased, once it is.
    void look_for_erased(const MemoryDisk& disk, const std::string& found) {
        if (found != new_) return;
        for (const auto& name : disk.names()) {
            const auto bytes = disk.bytes(name);
            for (const auto& text : operation_.erases) {
                if (!std::ranges::search(bytes, text).empty()) wrong(name + " still holds " + text);
            }
        }
    }

    /// Reported as saved: it is there, and still there when nothing is left that was not synced.
    void saved() {
        expect("it reads", state_text(disk_, operation_.path), new_);
        auto restarted = disk_.after_power_cut(0);
        expect("after a power cut it reads", state_text(restarted, operation_.path), new_);
        for (std::uint64_t seed = 0; !operation_.removes.empty() && seed < 8; ++seed) {
            auto disk = disk_.after_power_cut(seed);
            const auto found = state_text(disk, operation_.path);
            expect("after a power cut it reads", found, new_);
            look_beside(disk, found);
        }
        if (!leftovers(disk_).empty()) wrong("left behind:" + leftovers(disk_));
    }

    void not_saved(const Problem& problem) {
        ++loop_.errors;
        if (problem.sentence.empty()) wrong("no sentence");
        const bool sync_of_it = failed_.name == "sync" && failed_.path == operation_.path;
        if (sync_of_it) ++loop_.doubts;
        const auto& plan = kind_.plan;
        const bool disk_is_gone = plan.then_all || (plan.from_then_on && plan.only.empty());
        if (!disk_is_gone && !leftovers(disk_).empty()) wrong("left behind:" + leftovers(disk_));
        if (sync_of_it && !disk_is_gone) while_in_doubt(problem);
        const bool unconfirmed = !operation_.unconfirmed.empty() &&
                                 problem.sentence.find(operation_.unconfirmed) != std::string::npos;
        if (unconfirmed) ++loop_.unconfirmed;
        if (!sync_of_it && !disk_is_gone) {
            const auto& state = unconfirmed ? new_ : old_;
            expect("it reads", state_text(disk_, operation_.path), state);
            if (!unconfirmed && bytes_or_none(disk_, operation_.path).size() >
                                    bytes_or_none(operation_.before, operation_.path).size())
                wrong("a part of the save was left at its end");
            MemoryDisk same(disk_);
            goes_on(same, state);
        }
        restart(sync_of_it || disk_is_gone || unconfirmed);
    }

    /// A sync said no: nobody writes any more until the machine was restarted.
    void while_in_doubt(const Problem& problem) {
        if (problem.sentence.find("not keep") == std::string::npos) wrong("said: " + problem.sentence);
        if (!suspect(disk_, operation_.path)) wrong("no suspicion was noted");
        const auto before = bytes_or_none(disk_, operation_.path);
        const auto more = save_one_more(disk_, operation_.path);
        if (more) wrong("another program saved while the file was in doubt");
        if (bytes_or_none(disk_, operation_.path) != before) wrong("another program wrote while in doubt");
    }

    /// What was not reported as saved may be there all the same once its bytes were on their way.
    void restart(bool may_be_new) {
        for (std::uint64_t seed = 0; seed < 4; ++seed) {
            ++loop_.restarts;
            auto disk = disk_.after_power_cut(seed, MemoryDisk::PowerCut::in_order);
            const auto found = state_text(disk, operation_.path);
            if (found != old_ && !(may_be_new && found == new_)) wrong("after a restart it reads\n" + found);
            look_beside(disk, found);
            look_for_erased(disk, found);
            goes_on(disk, found);
        }
    }

    /// The next save works and nothing else has changed.
    void goes_on(MemoryDisk& disk, const std::string& state) {
        if (state == "no file") return;
        if (const auto more = save_one_more(disk, operation_.path); !more) {
            wrong("the next save said: " + more.error().sentence);
            return;
        }
        expect("after the next save it reads", state_text(disk, operation_.path),
               with_record(state, subject_of(1), fuel_record(999)));
    }

    const StoreOperation& operation_;
    const Kind& kind_;
    int number_;
    FaultLoop& loop_;
    const std::string& old_;
    const std::string& new_;
    MemoryDisk disk_;
    FileOperation failed_;
};

bool removed_all(const MemoryDisk& disk, const StoreOperation& operation) {
    const auto names = disk.names();
    return std::ranges::none_of(operation.removes,
                                [&](const auto& name) { return std::ranges::count(names, name) > 0; });
}

} // namespace

void FaultLoop::run(const StoreOperation& operation) {
    MemoryDisk before(operation.before);
    MemoryDisk after(operation.before);
    const auto old_state = state_text(before, operation.path);
    const auto done = operation.run(after);
    const auto new_state = state_text(after, operation.path);
    if (!done) wrong.push_back(operation.name + " does not work at all: " + done.error().sentence);
    if (old_state == new_state) wrong.push_back(operation.name + " changes nothing");
    if (!removed_all(after, operation)) wrong.push_back(operation.name + " does not remove what it should");
    const auto all = kinds();
    for (const auto& kind : all) {
        int number = 1;
        while (Point(operation, kind, number, *this, old_state, new_state).run())
            ++number;
    }
}

std::string FaultLoop::text(const StoreOperation& operation) const {
    const auto removals =
        operation.removes.empty() ? "" : fmt::format(", older files gone on {} disks", removed);
    const auto doubtful =
        operation.unconfirmed.empty() ? "" : fmt::format(", {} times done and not confirmed", unconfirmed);
    return fmt::format("fault loop, {}: {} fault points, {} told as errors, {} failed syncs of the file, "
                       "{} restarts{}{}",
                       operation.name, points, errors, doubts, restarts, removals, doubtful);
}

} // namespace sumpbook::store
