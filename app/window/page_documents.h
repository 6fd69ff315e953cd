// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/opened.h"
#include "model/oil/assess.h"
#include "reports/document/document.h"

#include <deque>
#include <initializer_list>
#include <optional>
#include <string_view>
#include <vector>

namespace sumpbook::window {

/// The first table of a document, and everything else of it in order.
struct TableAndRest {
    std::optional<document::Table> table;
    document::Document rest;
};
[[nodiscard]] TableAndRest table_and_rest(document::Document document);

/// The pictures of these names about the chosen bikes, those of one bike once for each; in place of one
/// with nothing to draw the sentence that says why.
[[nodiscard]] document::Document pictures_document(const Selection& selection,
                                                   std::initializer_list<std::string_view> names);

/// Samples of used oil with everything there is to say of them, newest first.
struct OilSamples {
    std::deque<Bike> as_they_stood; ///< By the end of the day looked from; the samples point into them.
    std::vector<oil::SampleAssessment> samples;
    std::vector<Problem> problems; ///< Of bikes whose profile is not known.
};
[[nodiscard]] OilSamples oil_samples(const Selection& selection);

/// One row a sample: day, bike, number, verdict, what to do.
[[nodiscard]] document::Table samples_table(const std::vector<oil::SampleAssessment>& samples);

/// The trends of the sample's bike, then what there is to say of the sample.
[[nodiscard]] document::Document sample_document(const Selection& selection,
                                                 const oil::SampleAssessment& sample);

/// What was spent, what will be, and what the engines use, with their pictures.
[[nodiscard]] document::Document costs_document(const Selection& selection);

} // namespace sumpbook::window
