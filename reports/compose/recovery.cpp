// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/recovery.h"

#include "model/store/action.h"
#include "model/store/frame.h"
#include "reports/compose/file_counts.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Cell;
using document::Document;
using document::Severity;

std::string bytes_words(const store::BrokenStretch& stretch) {
    return std::to_string(stretch.at) + " to " + std::to_string(stretch.until == 0 ? 0 : stretch.until - 1);
}

void add_broken(Document& text, const store::RecoverPlan& plan) {
    if (plan.broken.empty()) return;
    text.heading("What does not verify", 3);
    document::Table table{
        {{"Bytes of the file", {}}, {"What is wrong", {}}, {"What may have stood there", {}}}, {}};
    for (const auto& stretch : plan.broken) {
        table.rows.push_back({Cell{bytes_words(stretch), Severity::danger}, Cell{stretch.what, {}},
                              Cell{stretch.heading.empty() ? "not known" : stretch.heading, {}}});
    }
    text.table(std::move(table));
}

/// "frame 3", "frames 3 to 5": people count from 1.
std::string frames_words(const store::MissingFrames& missing) {
    if (missing.first == missing.last) return "frame " + std::to_string(missing.first + 1);
    return "frames " + std::to_string(missing.first + 1) + " to " + std::to_string(missing.last + 1);
}

void add_missing(Document& text, const store::RecoverPlan& plan) {
    for (const auto& missing : plan.missing) {
        text.sentence("Missing: " + frames_words(missing) + " of the run " + missing.chain + "-..." +
                          (missing.bike.empty() ? "" : " about " + missing.bike) +
                          ", which others here build on.",
                      Severity::caution);
    }
}

void add_left_out(Document& text, const store::RecoverPlan& plan) {
    for (const auto& frame : plan.left_out) {
        text.sentence("Not taken in: a whole frame at byte " + std::to_string(frame.at) + " with " +
                      count_of(frame.entries, "record") + ", because it " + frame.why + ".");
    }
    if (plan.attachments_dropped > 0) {
        text.sentence("The bytes of " + count_of(plan.attachments_dropped, "attachment") +
                          " are damaged and are left out; the entries that name them are kept.",
                      Severity::caution);
    }
    if (plan.search_stopped) {
        text.sentence("From byte " + std::to_string(*plan.search_stopped) +
                          " on the file was not searched: it is made so that searching it takes without end.",
                      Severity::caution);
    }
}

std::string garage_slug(store::GarageKnown known) {
    switch (known) {
    case store::GarageKnown::header:
        return "header";
    case store::GarageKnown::mended:
        return "mended";
    case store::GarageKnown::settings:
        return "settings";
    case store::GarageKnown::nowhere:
        break;
    }
    return "nowhere";
}

void add_garage(Document& text, const store::RecoverPlan& plan) {
    switch (plan.garage) {
    case store::GarageKnown::header:
        return;
    case store::GarageKnown::mended:
        text.sentence(
            "One byte of the file's first 40 was wrong; the rest of them says which, so it is mended.");
        return;
    case store::GarageKnown::settings:
        text.sentence("The file's first 40 bytes are lost. Whose garage it is was read from its settings.");
        return;
    case store::GarageKnown::nowhere:
        text.sentence(
            "The file's first 40 bytes are lost and nothing else says whose garage it is: the new file "
            "becomes a garage of its own. It cannot be merged with other copies, but they can take over its "
            "bikes.",
            Severity::caution);
        return;
    }
}

document::Array broken_json(const store::RecoverPlan& plan) {
    document::Array items;
    for (const auto& stretch : plan.broken) {
        document::Object item;
        item.add("from_byte", stretch.at).add("until_byte", stretch.until).add("what", stretch.what);
        item.add("heading", stretch.heading.empty() ? document::Value() : document::Value(stretch.heading));
        items.emplace_back(std::move(item));
    }
    return items;
}

document::Array missing_json(const store::RecoverPlan& plan) {
    document::Array items;
    for (const auto& missing : plan.missing) {
        document::Object item;
        item.add("chain", missing.chain);
        item.add("bike", missing.bike.empty() ? document::Value() : document::Value(missing.bike));
        item.add("first_frame", missing.first).add("last_frame", missing.last);
        items.emplace_back(std::move(item));
    }
    return items;
}

document::Array left_out_json(const store::RecoverPlan& plan) {
    document::Array items;
    for (const auto& frame : plan.left_out) {
        document::Object item;
        item.add("at_byte", frame.at).add("records", frame.entries).add("why", frame.why);
        items.emplace_back(std::move(item));
    }
    return items;
}

/// Too short for a frame, as the heading of a save is; or the file's own header, its first bytes.
bool held_nothing(const store::BrokenStretch& stretch) {
    const auto from = stretch.at == 0 ? std::min<std::uint64_t>(store::file_header_bytes, stretch.until) : stretch.at;
    return stretch.until - from < store::frame_unhashed_bytes + store::frame_header_bytes + store::seal_bytes;
}

/// Whether the file may have held something that is not kept.
bool something_lost(const store::RecoverPlan& plan) {
    return !plan.missing.empty() || !plan.left_out.empty() || plan.attachments_dropped > 0 || plan.search_stopped ||
           !std::ranges::all_of(plan.broken, &held_nothing);
}

/// One way only: a file that became a garage of its own can be adopted from and not merged.
std::string what_next(const store::RecoverPlan& plan, const std::string& file) {
    const bool own = plan.garage == store::GarageKnown::nowhere;
    const std::string way = own ? "sumpbook merge COPY " + file + " --adopt BIKE --to OUT, with the bikes that \"sumpbook -g " +
                                      file + " bike list\" names."
                                : "sumpbook merge " + file + " COPY --to OUT.";
    if (something_lost(plan))
        return "Another copy or a backup, however old, may hold what is missing: " + way;
    const std::string kept = "Every record that the file held is kept.";
    return own ? kept + " To take them into another copy: " + way : kept;
}

} // namespace

Document recovery_plan_text(const std::string& path, const store::RecoverPlan& plan) {
    Document text;
    const auto kept = count_of(plan.entries, "record") + " in " + count_of(plan.set.frames().size(), "frame");
    if (plan.whole() && plan.missing.empty() && plan.attachments_dropped == 0) {
        text.sentence(path + " is whole: " + kept + ", every byte verifies. There is nothing to recover: a copy of the whole file is made.",
                      Severity::good);
    } else {
        text.sentence("What verifies in " + path + " can be kept: " + kept +
                      ", exactly as they were written.");
    }
    add_garage(text, plan);
    add_broken(text, plan);
    add_missing(text, plan);
    add_left_out(text, plan);
    return text;
}

Document recovered_text(const std::string& path, const store::RecoverPlan& plan,
                        const store::WrittenOut& written) {
    Document text;
    const bool nothing_lost = plan.whole() && plan.missing.empty() && plan.attachments_dropped == 0;
    text.sentence(written_words(written) + " " + path + " is as it was" +
                      (nothing_lost ? "." : "; keep it until you miss nothing."),
                  Severity::good);
    if (nothing_lost) return text;
    return text.sentence(what_next(plan, typed_name(written.path)) +
                         " And test the disk: a changed byte comes from somewhere.");
}

document::Value recovered_json(const std::string& path, const store::RecoverPlan& plan,
                               const store::WrittenOut& written) {
    document::Object json = document::result();
    json.add("from", path).add("whole", plan.whole()).add("garage", garage_slug(plan.garage));
    json.add("records", plan.entries).add("frames", plan.set.frames().size());
    json.add("broken", broken_json(plan)).add("missing", missing_json(plan));
    json.add("left_out", left_out_json(plan)).add("attachments_dropped", plan.attachments_dropped);
    json.add("search_stopped_at_byte",
             plan.search_stopped ? document::Value(*plan.search_stopped) : document::Value());
    return json.add("written", written_json(written));
}

} // namespace sumpbook::compose
