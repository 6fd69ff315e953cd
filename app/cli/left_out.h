// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"

namespace sumpbook::cli {

/// What was left out of the garage file when it was handed over.
struct LeftOut {
    bool prices = false;
    bool notes = false; ///< With names, places and what files are called.
};
[[nodiscard]] Result<LeftOut> left_out_of(Session& session);

/// What an answer about one entry says then; empty where nothing was left out.
[[nodiscard]] std::string left_out_words(const LeftOut& left_out);

/// Whether answers are trees and tables for programs, in which a sentence is not seen.
[[nodiscard]] bool sentences_are_not_seen(const Session& session);

} // namespace sumpbook::cli
