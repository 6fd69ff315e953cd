// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/quantity/problem.h"
#include "model/store/file_layer.h"
#include "model/store/signature.h"

#include <string>

namespace sumpbook::cli {

/// A key and the name that its owner goes by on stamps; may be empty.
struct NamedKey {
    store::PrivateKey key;
    std::string name;
};

/// Both keys as PEM, under a line with the name, into `path` (for its owner's eyes only) and `path`.pub, on
/// the disk when this returns. Refused where either stands already; nothing is left behind when it fails.
[[nodiscard]] Result<void> write_key_files(store::FileLayer& files, const std::string& path,
                                           const NamedKey& key);

/// Problems: io, refused (no Ed25519 key in it).
[[nodiscard]] Result<NamedKey> read_key_file(const std::string& path);
[[nodiscard]] Result<store::PublicKey> read_public_key_file(const std::string& path);

} // namespace sumpbook::cli
