// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/fasteners.h"

#include <algorithm>
#include <array>

namespace sumpbook::review {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
char lowered(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

/// Owners write "Axle nut" one day and "axle nut" the next.
bool same_fastener(std::string_view a, std::string_view b) {
    return std::ranges::equal(a, b, {}, lowered, lowered);
}

bool is_thread(std::string_view word) {
    if (word.size() < 2 || lowered(word.front()) != 'm' || !is_digit(word[1])) return false;
    return std::ranges::all_of(
        word.substr(1), [](char c) { return is_digit(c) || lowered(c) == 'x' || c == '.' || c == ','; });
}

FastenerEvent event_of(const LogEntry& entry) { return {entry.id, entry.value.date}; }

const TorqueApplied* torque_of(const LogEntry& entry, std::string_view fastener) {
    const auto* work = std::get_if<Work>(&entry.value.body);
    if (work == nullptr) return nullptr;
    const auto found = std::ranges::find_if(
        work->torques, [&](const auto& torque) { return same_fastener(torque.fastener, fastener); });
    return found == work->torques.end() ? nullptr : &*found;
}

const PaintMarkSeen* look_at(const LogEntry& entry, std::string_view fastener) {
    const auto* work = std::get_if<Work>(&entry.value.body);
    if (work == nullptr) return nullptr;
    const auto found = std::ranges::find_if(
        work->paint_marks_seen, [&](const auto& seen) { return same_fastener(seen.fastener, fastener); });
    return found == work->paint_marks_seen.end() ? nullptr : &*found;
}

PaintMark as_drawn(const std::optional<bool>& paint_mark) {
    if (!paint_mark) return PaintMark::not_stated;
    return *paint_mark ? PaintMark::drawn : PaintMark::none;
}

std::size_t place_of(const Bike& bike, const LogEntry& job) {
    const auto found = std::ranges::find(bike.log, job.id, &LogEntry::id);
    return static_cast<std::size_t>(found - bike.log.begin());
}

/// What later entries say, until the fastener is tightened again.
void follow(Fastener& fastener, const Bike& bike, std::size_t after) {
    for (std::size_t at = after + 1; at < bike.log.size(); ++at) {
        const auto& entry = bike.log[at];
        if (const auto* seen = look_at(entry, fastener.applied.fastener)) {
            fastener.looked_at = event_of(entry);
            fastener.mark = seen->still_aligned ? PaintMark::aligned : PaintMark::moved;
        }
        if (torque_of(entry, fastener.applied.fastener) == nullptr) continue;
        fastener.redone = event_of(entry);
        return;
    }
}

} // namespace

std::string_view slug(PaintMark mark) {
    constexpr std::array<std::string_view, 5> words{"not-stated", "none", "drawn", "aligned", "moved"};
    return words.at(static_cast<std::size_t>(mark));
}

std::optional<std::string> thread_in(std::string_view fastener) {
    while (!fastener.empty()) {
        const auto end = fastener.find_first_of(" ()/");
        const auto word = fastener.substr(0, end);
        if (is_thread(word)) return std::string(word);
        if (end == std::string_view::npos) break;
        fastener.remove_prefix(end + 1);
    }
    return std::nullopt;
}

std::vector<Fastener> fasteners_of(const Bike& bike, const LogEntry& job) {
    std::vector<Fastener> fasteners;
    const auto* work = std::get_if<Work>(&job.value.body);
    if (work == nullptr) return fasteners;
    for (const auto& applied : work->torques) {
        Fastener fastener{.applied = applied, .thread = thread_in(applied.fastener)};
        if (fastener.thread) fastener.plausibility = judge_torque(*fastener.thread, applied.torque);
        fastener.mark = as_drawn(applied.paint_mark);
        follow(fastener, bike, place_of(bike, job));
        fasteners.push_back(std::move(fastener));
    }
    return fasteners;
}

std::vector<MarkSeen> marks_seen_in(const Bike& bike, const LogEntry& job) {
    std::vector<MarkSeen> marks;
    const auto* work = std::get_if<Work>(&job.value.body);
    if (work == nullptr) return marks;
    const auto here = place_of(bike, job);
    for (const auto& seen : work->paint_marks_seen) {
        MarkSeen mark{.fastener = seen.fastener, .still_aligned = seen.still_aligned};
        for (std::size_t at = 0; at < bike.log.size() && !mark.redone; ++at) {
            if (torque_of(bike.log[at], seen.fastener) == nullptr) continue;
            (at < here ? mark.drawn : mark.redone) = event_of(bike.log[at]);
        }
        marks.push_back(std::move(mark));
    }
    return marks;
}

} // namespace sumpbook::review
