// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/entry.h"

#include <algorithm>
#include <utility>

namespace sumpbook {
namespace {

template <std::size_t... I>
EntryBody body_at(std::size_t index, std::index_sequence<I...> /*all*/) {
    EntryBody body;
    ((I == index ? void(body = std::variant_alternative_t<I, EntryBody>{}) : void()), ...);
    return body;
}

} // namespace

const std::vector<std::string_view>& entry_kind_slugs() {
    static const std::vector<std::string_view> slugs{
        "reading", "fuel",  "oil-change", "top-up", "work",  "fit",  "modification", "measure",
        "sample",  "fault", "recall",     "cost",   "layup", "note", "attach"};
    return slugs;
}

std::string_view kind_slug(const EntryBody& body) { return entry_kind_slugs().at(body.index()); }

std::optional<EntryBody> body_of_kind(std::string_view slug) {
    const auto& all = entry_kind_slugs();
    const auto found = std::ranges::find(all, slug);
    if (found == all.end()) return std::nullopt;
    return body_at(static_cast<std::size_t>(found - all.begin()),
                   std::make_index_sequence<std::variant_size_v<EntryBody>>{});
}

} // namespace sumpbook
