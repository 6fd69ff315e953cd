// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/settings.h"

namespace sumpbook {

const std::vector<std::string>& default_categories() {
    static const std::vector<std::string> categories{"upkeep",  "repairs",   "fuel",     "oil",
                                                     "tyres",   "insurance", "tax",      "inspection",
                                                     "storage", "gear",      "purchase", "sale"};
    return categories;
}

const std::vector<std::string>& categories_of(const GarageSettings& settings) {
    return settings.categories.empty() ? default_categories() : settings.categories;
}

} // namespace sumpbook
