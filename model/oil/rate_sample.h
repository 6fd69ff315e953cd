// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/oil/history.h"
#include "model/oil/rate_value.h"

#include <vector>

namespace sumpbook::oil {

/// What the values of a sample are judged by: the profile, the bike, the fill's grade and new oil.
[[nodiscard]] RatingBasis rating_basis(const OilRecord& record, const FilledSample& sample,
                                       const Profile& profile);

/// All values of a sample, each on the ladder, with its rate since the sample before in the same fill; a
/// rated rate that reaches the set's trend limit is `act`. Of two viscosities the GRADE rule judges the one
/// at 100 C, or the one at 40 C where only that has a reference. Values in the order of quantities.csv.
[[nodiscard]] std::vector<RatedValue> rate_sample(const OilRecord& record, const FilledSample& sample,
                                                  const SampleHistory& history, const RatingBasis& basis);

} // namespace sumpbook::oil
