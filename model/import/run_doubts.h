// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/import/plan.h"

namespace sumpbook::import {

/// Doubts odometer readings of the file that fall out of the run of their neighbours in date order, those
/// of the garage included. The reading stays as typed. The entries of the plan stand in the order of days.
void add_run_doubts(ImportPlan& plan, const Garage& garage);

} // namespace sumpbook::import
