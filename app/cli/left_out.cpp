// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/left_out.h"

#include "model/store/garage_file.h"
#include "model/store/left_out.h"

namespace sumpbook::cli {

Result<LeftOut> left_out_of(Session& session) {
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    const auto left_out = store::left_out_of((*file)->index()); // erased saves do not count: nothing of them shows
    return LeftOut{left_out.money, left_out.personal};
}

std::string left_out_words(const LeftOut& left_out) {
    if (!left_out.prices && !left_out.notes) return {};
    const std::string what = left_out.prices && left_out.notes
                                 ? "Prices, notes, names, places and what files are called"
                             : left_out.prices ? "Prices"
                                               : "Notes, names, places and what files are called";
    return what + " were left out of this file when it was handed over. Where this entry had some, they are "
                  "not shown.";
}

bool sentences_are_not_seen(const Session& session) {
    return session.options().json || session.options().plain;
}

} // namespace sumpbook::cli
