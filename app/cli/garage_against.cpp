// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/garage_against.h"

#include "app/cli/asked_bike.h"
#include "model/store/garage_file.h"

namespace sumpbook::cli {

Result<GarageAgainst> garage_against(Session& session, const store::GarageFile& file,
                                     const store::TypedFingerprint& fingerprint) {
    const auto bike = asked_bike(session);
    if (!bike) return pass_on(bike.error());
    const auto open = session.open();
    if (!open) return pass_on(open.error());
    const auto only = *bike ? std::optional((*bike)->id) : std::nullopt;
    auto check = file.check(fingerprint, only);
    auto names = compose::verified_names(check, (*open)->garage, file.subject(),
                                         *bike ? (*bike)->name : std::string());
    return GarageAgainst{std::move(check), std::move(names)};
}

} // namespace sumpbook::cli
