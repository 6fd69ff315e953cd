// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/review/workshop_findings.h"

#include "model/review/fasteners.h"

#include <algorithm>
#include <array>

namespace sumpbook::review {
namespace {

Finding about(std::string_view id, const Bike& bike, const LogEntry& entry, std::string sentence) {
    Finding finding = make_finding(id, bike.details.value.name, std::move(sentence));
    finding.entry_ids = {entry.id};
    return finding;
}

std::string torque_sentence(const Fastener& fastener) {
    const auto band = torque_band(*fastener.thread);
    const bool high = fastener.plausibility == TorquePlausibility::too_high;
    const Decimal limit = decimal_from_double((high ? band->highest_nm : band->lowest_nm).to_double(), 1);
    return fastener.applied.fastener + ": " + text_of(fastener.applied.torque) + " is far " +
           (high ? "above" : "below") + " what a bolt of that thread is tightened to (" +
           (high ? "more than " : "less than ") + limit.text() +
           " N m). Read the handbook and the entry again; a slip of the pen is likely.";
}

void add_torques(const Bike& bike, const LogEntry& entry, std::vector<Finding>& findings) {
    for (const auto& fastener : fasteners_of(bike, entry)) {
        if (fastener.plausibility == TorquePlausibility::too_high ||
            fastener.plausibility == TorquePlausibility::too_low)
            findings.push_back(about("torque-unusual", bike, entry, torque_sentence(fastener)));
    }
}

void add_marks(const Bike& bike, const LogEntry& entry, std::vector<Finding>& findings) {
    for (const auto& mark : marks_seen_in(bike, entry)) {
        if (mark.still_aligned || mark.redone) continue;
        Finding finding = about("paint-mark-moved", bike, entry,
                                "The paint mark of " + mark.fastener + " no longer lined up on " +
                                    spelled_text(entry.value.date) +
                                    ": it has turned. Tighten it to the handbook's torque, mark it again "
                                    "and record the job; if unsure, ask a qualified mechanic.");
        if (mark.drawn) finding.entry_ids.push_back(mark.drawn->entry_id);
        findings.push_back(std::move(finding));
    }
}

void add_clutch(const Bike& bike, std::vector<Finding>& findings) {
    const LogEntry* last = nullptr;
    for (const auto* entry : entries_of<Measure>(bike)) {
        const auto& measure = std::get<Measure>(entry->value.body);
        if (measure.quantity == "clutch-free-play" && measure.value) last = entry;
    }
    if (last == nullptr || *std::get<Measure>(last->value.body).value > Decimal{0}) return;
    findings.push_back(about("clutch-no-free-play", bike, *last,
                             "The clutch lever had no free play when it was last measured: the clutch can "
                             "slip and wear. Set it as the handbook says, then measure again."));
}

std::string lowered(std::string text) {
    std::ranges::transform(text, text.begin(), [](char c) {
        return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    });
    return text;
}

template <std::size_t N>
bool names_one(const std::string& text, const std::array<std::string_view, N>& words) {
    return std::ranges::any_of(words, [&](auto word) { return text.find(word) != std::string::npos; });
}

bool is_run_in_limit(const std::string& what) {
    constexpr std::array<std::string_view, 4> run_in{"run-in", "running in", "run in", "break-in"};
    return what.find("limit") != std::string::npos && names_one(what, run_in);
}

bool is_lifted(const std::string& what) {
    constexpr std::array<std::string_view, 4> lifted{"lifted", "removed", "taken off", "cancelled"};
    return names_one(what, lifted);
}

/// The last rev limit set for running in that nobody lifted, once the first service is done.
void add_run_in_limit(const Bike& bike, std::vector<Finding>& findings) {
    const LogEntry* limit = nullptr;
    bool served = false;
    for (const auto& entry : bike.log) {
        if (std::ranges::find(entry.value.does, "first-service") != entry.value.does.end()) served = true;
        const auto* modification = std::get_if<Modification>(&entry.value.body);
        if (modification == nullptr || !is_run_in_limit(lowered(modification->what))) continue;
        limit = is_lifted(lowered(modification->what)) ? nullptr : &entry;
    }
    if (limit == nullptr || !served) return;
    findings.push_back(about("run-in-limit-kept", bike, *limit,
                             "A rev limit was set for running in, and the first service is done. If it was "
                             "lifted then, record that as a modification; if not, ask for it."));
}

} // namespace

std::vector<Finding> workshop_findings(const Bike& bike) {
    std::vector<Finding> findings;
    for (const auto& entry : bike.log) {
        add_torques(bike, entry, findings);
        add_marks(bike, entry, findings);
    }
    add_clutch(bike, findings);
    add_run_in_limit(bike, findings);
    return findings;
}

} // namespace sumpbook::review
