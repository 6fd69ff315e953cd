// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/merge.h"

#include "reports/compose/file_counts.h"

#include <algorithm>

namespace sumpbook::compose {
namespace {

using document::Cell;
using document::Document;
using document::Severity;

std::string bike_words(const store::MergedChain& chain, const store::MergePlan& plan) {
    if (!chain.bike.empty()) return chain.bike;
    return chain.subject == plan.set.garage() ? "the garage itself" : "a bike without a name here";
}

/// "12", or "12, 2 new".
std::string with_new(std::size_t all, std::size_t fresh) {
    return std::to_string(all) + (fresh > 0 ? ", " + std::to_string(fresh) + " new" : "");
}

Cell remark(const store::MergedChain& chain) {
    if (chain.gap) return {"frames are missing in all files", Severity::danger};
    if (chain.forked) return {"continued in different ways, all kept", Severity::caution};
    return {};
}

document::Table chain_table(const store::MergePlan& plan) {
    document::Table table{
        {{"Run", {}}, {"About", {}}, {"Records", {}}, {"Frames", {}}, {"Parts filled in", {}}, {"", {}}}, {}};
    for (const auto& chain : plan.chains) {
        table.rows.push_back({Cell{chain.name + "-...", {}}, Cell{bike_words(chain, plan), {}},
                              Cell{with_new(chain.entries, chain.new_entries), {}},
                              Cell{with_new(chain.frames, chain.new_frames), {}},
                              Cell{chain.filled_parts == 0 ? "-" : std::to_string(chain.filled_parts), {}},
                              remark(chain)});
    }
    return table;
}

std::string listed(const std::vector<std::string>& things) {
    std::string text;
    for (std::size_t i = 0; i < things.size(); ++i) {
        const bool last = i + 1 == things.size();
        text += (i == 0 ? "" : last ? " and " : ", ") + things[i];
    }
    return text;
}

document::Array texts_json(const std::vector<std::string>& texts) { return {texts.begin(), texts.end()}; }

std::size_t filled_parts(const store::MergePlan& plan) {
    std::size_t filled = 0;
    for (const auto& chain : plan.chains)
        filled += chain.filled_parts;
    return filled;
}

std::size_t filled_files(const store::MergePlan& plan) {
    std::size_t filled = 0;
    for (const auto& chain : plan.chains)
        filled += chain.filled_files;
    return filled;
}

std::string news_words(const Merge& merge) {
    const auto& plan = *merge.plan;
    if (!plan.brings_news())
        return "Nothing is new to " + merge.from.front() + ": it holds all that the others hold.";
    std::string words = "New to " + merge.from.front() + ": " + count_of(plan.new_entries(), "record") +
                        " in " + count_of(plan.new_frames(), "frame");
    const auto files = filled_files(plan);
    if (files > 0)
        words += ", " + count_of(files, "file") + " kept with an entry, which " + (files == 1 ? "was" : "were") +
                 " missing there";
    if (const auto filled = filled_parts(plan) - files; filled > 0)
        words += ", " + count_of(filled, "part") + " that it was handed over without";
    if (plan.new_fingerprints > 0) words += ", " + count_of(plan.new_fingerprints, "fingerprint");
    return words + ".";
}

std::string bike_words(const store::LostToErasing& lost, const store::MergePlan& plan) {
    if (!lost.bike.empty()) return lost.bike;
    return lost.subject == plan.set.garage() ? "the garage itself" : "a bike without a name here";
}

/// The first of many, and how many more there are.
std::string some_of(const std::vector<std::string>& ids) {
    constexpr std::size_t most = 12;
    if (ids.size() <= most) return listed(ids);
    std::vector<std::string> first(ids.begin(), ids.begin() + most);
    first.push_back(std::to_string(ids.size() - most) + " more");
    return listed(first);
}

/// What goes because it was erased in one of the files, bike by bike.
void add_lost(Document& text, const store::MergePlan& plan) {
    if (plan.lost.empty()) return;
    document::Table table{{{"Erased, and not in the result", {}}, {"Records", {}}, {"Files", {}}, {"Said by", {}}}, {}};
    for (const auto& lost : plan.lost) {
        table.rows.push_back({Cell{bike_words(lost, plan), {}}, Cell{std::to_string(lost.entries), {}},
                              Cell{std::to_string(lost.attachments), {}},
                              Cell{lost.by.empty() ? "-" : some_of(lost.by), {}}});
    }
    text.table(table);
    for (const auto& lost : plan.lost) {
        if (lost.unaccounted.empty()) continue;
        text.sentence("Of " + bike_words(lost, plan) + " " + count_of(lost.unaccounted.size(), "record") +
                          " would go that nobody erased by name and that stands nowhere else: " +
                          some_of(lost.unaccounted) + ". Sumpbook writes no such file: " +
                          (lost.by.empty() ? "a record" : some_of(lost.by)) +
                          " was made up, or is not whole. Do not merge before you know why.",
                      Severity::danger);
    }
}

/// What was erased in one file and is here all the same; `garage`: the file it is in.
void add_still_here(Document& text, const store::MergePlan& plan, const std::string& garage) {
    for (const auto& thing : plan.still_here) {
        const auto where = thing.erased_in == thing.held_in
                               ? "An entry that was erased is in " + thing.held_in + " in a version"
                               : "An entry that was erased in " + thing.erased_in + " is in " + thing.held_in +
                                     " in a version";
        text.sentence(where + " that the erasing did not know: " + listed(thing.ids) +
                          ". What it says there is still here. Erase it again: sumpbook -g " + typed_name(garage) +
                          " log erase " + thing.ids.back(),
                      Severity::caution);
    }
}

document::Array lost_json(const store::MergePlan& plan) {
    document::Array items;
    for (const auto& lost : plan.lost) {
        document::Object item;
        item.add("bike", lost.bike.empty() ? document::Value() : document::Value(lost.bike));
        item.add("records", lost.entries).add("files", lost.attachments).add("said_by", texts_json(lost.by));
        item.add("unaccounted", texts_json(lost.unaccounted));
        items.emplace_back(std::move(item));
    }
    return items;
}

document::Array still_here_json(const store::MergePlan& plan) {
    document::Array items;
    for (const auto& thing : plan.still_here) {
        document::Object item;
        item.add("bike", thing.bike.empty() ? document::Value() : document::Value(thing.bike));
        item.add("ids", texts_json(thing.ids));
        item.add("erased_in", thing.erased_in).add("held_in", thing.held_in);
        items.emplace_back(std::move(item));
    }
    return items;
}

document::Array still_open_json(const std::vector<OpenConflict>& conflicts) {
    document::Array items;
    for (const auto& conflict : conflicts) {
        document::Object item;
        item.add("bike", conflict.bike.empty() ? document::Value() : document::Value(conflict.bike));
        item.add("id", conflict.used().record->id).add("about", conflict_title(conflict));
        items.emplace_back(std::move(item));
    }
    return items;
}

document::Array chains_json(const store::MergePlan& plan) {
    document::Array items;
    for (const auto& chain : plan.chains) {
        document::Object item;
        item.add("chain", chain.name);
        item.add("bike", chain.bike.empty() ? document::Value() : document::Value(chain.bike));
        item.add("records", chain.entries).add("new_records", chain.new_entries);
        item.add("frames", chain.frames).add("new_frames", chain.new_frames);
        item.add("filled_parts", chain.filled_parts).add("forked", chain.forked).add("gap", chain.gap);
        items.emplace_back(std::move(item));
    }
    return items;
}

} // namespace

Document merge_plan_text(const Merge& merge) {
    Document text;
    if (merge.adopted.empty()) {
        text.sentence(listed(merge.from) + " are copies of one garage, and every byte of them verifies.");
    } else {
        text.sentence("Every byte of " + listed(merge.from) + " verifies. " + listed(merge.adopted) + " of " +
                      merge.from.back() + " would be taken over with the whole history.");
    }
    text.table(chain_table(*merge.plan));
    add_lost(text, *merge.plan);
    return text.sentence(news_words(merge));
}

Document merged_text(const Merge& merge, const store::WrittenOut& written,
                     const std::vector<OpenConflict>& conflicts) {
    Document text;
    text.sentence(written_words(written) + " " + listed(merge.from) + " are as they were.", Severity::good);
    add_still_here(text, *merge.plan, written.path);
    if (conflicts.empty()) return text.sentence("Nothing was changed in two places.");
    std::vector<std::string> which;
    for (const auto& conflict : conflicts)
        which.push_back(conflict_title(conflict) + " (" + conflict.used().record->id + ")");
    text.sentence("Changed in two places, and kept in every version: " + listed(which) +
                      ". Until you say which one stands, the one recorded last is used.",
                  Severity::caution);
    const auto garage = "sumpbook -g " + typed_name(written.path);
    return text.sentence("Look at them: " + garage + " log conflicts. Then say which one stands: " + garage +
                         " log settle " + conflicts.front().used().record->id);
}

document::Value merged_json(const Merge& merge, const store::WrittenOut& written,
                            const std::vector<OpenConflict>& conflicts) {
    document::Object json = document::result();
    json.add("from", texts_json(merge.from)).add("adopted", texts_json(merge.adopted));
    json.add("chains", chains_json(*merge.plan)).add("new_records", merge.plan->new_entries());
    json.add("new_frames", merge.plan->new_frames()).add("filled_parts", filled_parts(*merge.plan));
    json.add("new_fingerprints", merge.plan->new_fingerprints);
    json.add("written", written_json(written)).add("conflicts", still_open_json(conflicts));
    json.add("erased", lost_json(*merge.plan)).add("erased_and_still_here", still_here_json(*merge.plan));
    return json;
}

} // namespace sumpbook::compose
