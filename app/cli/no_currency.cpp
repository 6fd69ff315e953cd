// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/no_currency.h"

namespace sumpbook::cli {

Problem no_currency(const std::string& field, const std::string& text) {
    return placed({ProblemKind::refused,
                   "This file has no currency of its own: the garage's settings are not in it. Write the "
                   "currency with the amount, as in \"" +
                       text +
                       " EUR\", or take the bike into a garage of yours: sumpbook merge MINE THIS --adopt BIKE "
                       "--to OUT",
                   {}},
                  field, {});
}

} // namespace sumpbook::cli
