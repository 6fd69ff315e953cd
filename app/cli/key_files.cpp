// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/key_files.h"

#include "app/cli/input_file.h"
#include "app/cli/proof_files.h"
#include "model/store/hash.h"

#include <openssl/crypto.h>

namespace sumpbook::cli {
namespace {

constexpr std::size_t largest_key_bytes = 16 * 1024;
constexpr std::string_view name_label = "Name: ";

std::string with_name(const std::string& name, const std::string& pem) {
    return name.empty() ? pem : std::string(name_label) + name + "\n" + pem;
}

std::string name_in(const std::string& text) {
    if (!text.starts_with(name_label)) return {};
    return text.substr(name_label.size(), text.find_first_of("\r\n") - name_label.size());
}

Result<void> could_not(const std::string& path, const store::IoError& error) {
    if (error.fault == store::IoFault::exists) {
        return refuse(
            "A file of this name is already there, and a key is never written over. Choose another name.",
            {.file = path});
    }
    return fail(ProblemKind::io, "The key could not be written: " + store::reason_of(error) + ".",
                {.file = path});
}

Result<void> write_new(store::FileLayer& files, const std::string& path, const std::string& text,
                       store::OpenMode mode) {
    const auto file = store::open_file(files, path, mode);
    if (!file) return could_not(path, file.error());
    auto written = store::write_fully(*file, 0, store::as_bytes(text));
    if (written) written = files.sync(file->handle());
    if (written) written = files.sync_folder(store::folder_of(path));
    if (written) return {};
    static_cast<void>(files.remove(path));
    return could_not(path, written.error());
}

Result<std::string> key_text(const std::string& path) {
    return bytes_of_input(path, largest_key_bytes, "This is too long to be a key.");
}

} // namespace

Result<void> write_key_files(store::FileLayer& files, const std::string& path, const NamedKey& key) {
    const std::string public_path = path + ".pub";
    std::string secret = with_name(key.name, store::pem_text(key.key));
    auto written = write_new(files, path, secret, store::OpenMode::create_private);
    OPENSSL_cleanse(secret.data(), secret.size());
    if (!written) return written;
    written =
        write_new(files, public_path, with_name(key.name, store::pem_text(store::public_key_of(key.key))),
                  store::OpenMode::create_new);
    if (!written) static_cast<void>(files.remove(path)); // made just now, and nobody has its other half
    return written;
}

Result<NamedKey> read_key_file(const std::string& path) {
    auto text = key_text(path);
    if (!text) return pass_on(text.error());
    const auto key = store::read_private_key(*text);
    const std::string name = name_in(*text);
    OPENSSL_cleanse(text->data(), text->size());
    if (!key) return in_file(key.error(), path);
    return NamedKey{*key, name};
}

Result<store::PublicKey> read_public_key_file(const std::string& path) {
    const auto text = key_text(path);
    if (!text) return pass_on(text.error());
    auto key = store::read_public_key(*text);
    if (!key) return in_file(key.error(), path);
    return key;
}

} // namespace sumpbook::cli
