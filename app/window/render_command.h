// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/window/opened.h"
#include "app/window/options.h"

#include <QByteArray>

namespace sumpbook::window {

/// Bytes of the picture or document that was asked for, in the form the name of its file asks for. Refused
/// for an unknown name, with near misses and the list, and where there is nothing to draw.
[[nodiscard]] Result<QByteArray> rendered(const Opened& opened, const DeskOptions& options);

/// A page of the window as it looks. Refused for an unknown page.
[[nodiscard]] Result<QByteArray> screenshot(const cli::World& world, const DeskOptions& options);

/// Unconfirmed where a file stands there already and is not to be written over; of kind io where the file
/// cannot be written whole. What stood there is then unchanged.
[[nodiscard]] Result<void> write_file(const std::string& path, const QByteArray& bytes, bool write_over);

} // namespace sumpbook::window
