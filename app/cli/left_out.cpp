// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/left_out.h"

#include "model/store/garage_file.h"

namespace sumpbook::cli {

Result<LeftOut> left_out_of(Session& session) {
    const auto file = session.file();
    if (!file) return pass_on(file.error());
    return LeftOut{(*file)->left_out(Part::money) > 0, (*file)->left_out(Part::personal) > 0};
}

bool sentences_are_not_seen(const Session& session) {
    return session.options().json || session.options().plain;
}

} // namespace sumpbook::cli
