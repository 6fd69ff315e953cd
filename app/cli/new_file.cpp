// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/new_file.h"

#include "model/store/garage_file.h"

#include <filesystem>

namespace sumpbook::cli {

Result<void> refuse_where_taken(const std::string& path) {
    std::error_code unknown; // a path that cannot be looked at is refused when it is written
    if (!std::filesystem::exists(std::filesystem::symlink_status(path, unknown))) return {};
    return refuse("There is already a file of this name. Choose another, or remove it yourself first.",
                  {.file = path});
}

void show_first(Session& session, const document::Document& text) {
    if (session.options().json) return;
    session.show({}, text);
    if (!session.options().plain) session.print("\n");
}

Result<OpenGarage> opened_garage(Session& session, const std::string& path) {
    const auto file =
        store::GarageFile::open({session.files(), session.random(), session.world().state_folder, {}}, path);
    if (!file) return pass_on(file.error());
    return OpenGarage{fold(file->subject(), file->records()), file->records(), file->attachments()};
}

} // namespace sumpbook::cli
