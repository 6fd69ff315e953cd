// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/made_words.h"

namespace sumpbook::compose {

std::string made_words(const BikeDetails& details) {
    std::string made = details.maker.value_or("");
    if (details.model) made += (made.empty() ? "" : " ") + *details.model;
    if (details.year) made += (made.empty() ? "" : ", ") + std::to_string(*details.year);
    return made;
}

} // namespace sumpbook::compose
