// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/oil_name.h"

namespace sumpbook::oil {

std::optional<std::string> oil_name_of(const FilledSample& sample) {
    if (sample.oil_change != nullptr && sample.oil_change->oil_name) return sample.oil_change->oil_name;
    return sample.sample->oil_name;
}

} // namespace sumpbook::oil
