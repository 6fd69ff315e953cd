// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"
#include "model/store/chain_index.h"

namespace sumpbook::store {

/// Bikes whose details are not in the file have no name: they get the name of their first run of entries, "k7",
/// so that they can be shown, chosen and adopted.
void name_by_run(Garage& garage, const ChainIndex& index);

} // namespace sumpbook::store
