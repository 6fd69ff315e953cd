// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/compose/pictures.h"

#include <algorithm>

namespace sumpbook::compose {

const std::vector<Picture>& pictures() {
    static const std::vector<Picture> all{};
    return all;
}

const Picture* find_picture(std::string_view name) {
    const auto found = std::ranges::find(pictures(), name, &Picture::name);
    return found == pictures().end() ? nullptr : &*found;
}

} // namespace sumpbook::compose
