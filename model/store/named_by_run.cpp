// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/named_by_run.h"

namespace sumpbook::store {

void name_by_run(Garage& garage, const ChainIndex& index) {
    for (auto& bike : garage.bikes) {
        if (!bike.details.value.name.empty()) continue;
        const Chain* first = nullptr;
        for (const auto& [id, chain] : index.chains()) {
            if (chain.subject == bike.id && (first == nullptr || chain.number < first->number)) first = &chain;
        }
        if (first != nullptr) bike.details.value.name = first->name;
    }
}

} // namespace sumpbook::store
