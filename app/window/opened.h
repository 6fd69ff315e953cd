// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/session.h"

#include <memory>
#include <string>
#include <vector>

namespace sumpbook::window {

/// A garage as it was read and verified. Nothing is written by the window.
struct Opened {
    std::unique_ptr<cli::Session> session;    ///< Owns all the rest points to.
    const cli::OpenGarage* content = nullptr; ///< Never null.
    Date today;                               ///< The day asked for, else the computer's.
    std::vector<std::string> notices;         ///< What the store wants said once.
};

/// Problems are those of the store, with the same exit statuses as the command line's: missing or
/// unreadable (io), damaged, newer_format, locked; wrong_usage for a day that is none.
[[nodiscard]] Result<Opened> open_garage(const cli::World& world, const cli::GlobalOptions& options);

/// What the pages are about: the bikes chosen at the side. Points into the garage that is open.
struct Selection {
    const Garage* garage = nullptr;
    const std::vector<NamedRecord>* records = nullptr;
    std::vector<const Bike*> bikes;
    Date today;
    const std::vector<store::AttachmentSpot>* attachments = nullptr;
};

/// `row` 0 is all bikes, others one bike each, in the garage's order.
[[nodiscard]] Selection selection_of(const Opened& opened, std::size_t row);

} // namespace sumpbook::window
