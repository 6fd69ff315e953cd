// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/garage.h"

#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <string>

namespace sumpbook::import {

/// An entry already there: in the garage (`id`), or on an earlier line of the same file (`line`). Of a
/// version that another one stands for by now `corrected_to` names that; `withdrawn`: it was taken back.
struct Known {
    std::string id;
    std::optional<std::size_t> line;
    std::optional<std::string> corrected_to;
    bool withdrawn = false;
};

/// True where two entries say the same, whatever file, line or recording they come from. A cell that could
/// not be read must hold the same text where both entries doubt it; a doubt of one alone does not count,
/// since doubts come and go: they are settled, and new readings raise new ones.
[[nodiscard]] bool says_the_same(const Entry& a, const Entry& b);

/// True where two entries seem to be about the same event but differ: fills and readings of one date and
/// odometer, samples of one number. Entries that say the same are not meant.
[[nodiscard]] bool seems_the_same(const Entry& a, const Entry& b);

/// The entries that are known of one bike, found by date: those of today, and of all `records` the versions
/// that were corrected or withdrawn since, so that a file which still holds them adds nothing.
class KnownEntries {
public:
    KnownEntries(const Bike& bike, const std::vector<NamedRecord>& records);
    /// Adds an entry of the file, so that later lines are compared with it.
    void add(const Entry& entry, std::size_t line);
    [[nodiscard]] std::optional<Known> same_as(const Entry& entry) const;
    [[nodiscard]] std::optional<Known> similar_to(const Entry& entry) const;

private:
    void add_earlier_versions(const Bike& bike, const std::vector<NamedRecord>& records);

    struct Place {
        Entry entry;
        Known known;
    };
    using Places = std::multimap<std::string, std::shared_ptr<const Place>>;
    Places in_garage_; ///< By what the entry says.
    Places earlier_;   ///< Earlier versions, by what they say.
    Places in_file_;   ///< By what the entry says and what is doubted.
    Places by_event_;  ///< Fills and readings with an odometer, numbered samples.
};

} // namespace sumpbook::import
