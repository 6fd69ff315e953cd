// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"
#include "model/store/fingerprint.h"
#include "reports/compose/integrity.h"

namespace sumpbook::cli {

/// The garage held against a fingerprint: all of it, or the bike of -b alone.
struct GarageAgainst {
    store::FingerprintCheck check;
    compose::VerifiedNames names;
};
/// Refused with near misses where there is no such bike.
[[nodiscard]] Result<GarageAgainst> garage_against(Session& session, const store::GarageFile& file,
                                                   const store::TypedFingerprint& fingerprint);

} // namespace sumpbook::cli
