// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/backup.h"

#include "reports/compose/file_counts.h"

namespace sumpbook::compose {
namespace {

std::string listed(const std::vector<std::string>& things) {
    std::string text;
    for (const auto& thing : things)
        text += (text.empty() ? "" : ", ") + thing;
    return text;
}

document::Array texts_json(const std::vector<std::string>& texts) { return {texts.begin(), texts.end()}; }

} // namespace

document::Document backup_text(const store::Backup& backup, const std::string& folder) {
    document::Document text;
    text.sentence(written_words(backup.written), document::Severity::good);
    document::Facts facts;
    facts.lines.emplace_back("Backups in " + folder, listed(backup.kept));
    if (!backup.removed.empty()) facts.lines.emplace_back("Removed", listed(backup.removed));
    text.facts(std::move(facts));
    return text.sentence("A backup on the same disk goes with the disk: keep one elsewhere.");
}

document::Value backup_json(const store::Backup& backup) {
    document::Object json = document::result();
    json.add("written", written_json(backup.written));
    json.add("kept", texts_json(backup.kept)).add("removed", texts_json(backup.removed));
    return json;
}

} // namespace sumpbook::compose
