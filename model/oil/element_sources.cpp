// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/element_sources.h"

#include "embedded/element_sources_csv.h"
#include "model/oil/words.h"
#include "model/quantity/data_table.h"

namespace sumpbook::oil {

std::vector<ElementSource> element_sources(std::string_view element) {
    std::vector<ElementSource> found;
    for (const DataRow& row : read_data_table(data::element_sources_csv())) {
        if (!contains_word(split_words(row["element"]), element)) continue;
        found.push_back(
            {row["role"], row["sources_in_engine"], row["motorcycle_note"], row["evidence"], row["source"]});
    }
    return found;
}

} // namespace sumpbook::oil
