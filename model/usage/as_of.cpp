// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/usage/as_of.h"

namespace sumpbook::usage {

Bike as_of(const Bike& bike, const Date& day) {
    Bike then = bike;
    std::erase_if(then.log, [&](const LogEntry& entry) { return entry.value.date > day; });
    return then;
}

} // namespace sumpbook::usage
