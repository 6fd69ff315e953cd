// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window/opened.h"

#include "model/store/garage_file.h"

namespace sumpbook::window {

Result<Opened> open_garage(const cli::World& world, const cli::GlobalOptions& options) {
    Opened opened;
    opened.session = std::make_unique<cli::Session>(world, options);
    if (const auto ready = opened.session->prepare(); !ready) return pass_on(ready.error());
    const auto file = opened.session->file();
    if (!file) return pass_on(file.error());
    const auto content = opened.session->open();
    if (!content) return pass_on(content.error());
    opened.content = *content;
    opened.today = opened.session->today();
    opened.notices = (*file)->notices();
    return opened;
}

Selection selection_of(const Opened& opened, std::size_t row) {
    const Garage& garage = opened.content->garage;
    Selection selection{&garage, &opened.content->records, {}, opened.today,
                        &opened.content->attachments};
    for (std::size_t i = 0; i < garage.bikes.size(); ++i) {
        if (row == 0 || i + 1 == row) selection.bikes.push_back(&garage.bikes[i]);
    }
    return selection;
}

} // namespace sumpbook::window
