// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/typed.h"
#include "model/garage/garage.h"

#include <CLI/CLI.hpp>

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::cli {

/// How typed text of an entry is to be read, with the words that this bike and garage know.
struct EntryTypedAs : TypedAs {
    std::vector<std::string> plan_slugs; ///< Of the bike's plan, and those of a starter plan.
    std::vector<std::string> categories;
};

[[nodiscard]] EntryTypedAs entry_typed_as(const Garage& garage, const Bike& bike, const TypedAs& marks);

/// One thing that can be said about an entry on the command line.
struct EntryField {
    std::string option; ///< "--volume"
    std::string type;   ///< What may be typed: "12.3 L".
    std::string help;
    bool repeats = false; ///< A list: each time the option is given adds to it.
    bool bare = false;    ///< May stand alone and then means yes.
    /// Reads all texts typed for the option and puts them into the entry.
    std::function<Result<void>(Entry&, const std::vector<std::string>&, const EntryTypedAs&)> set;
    /// Makes the field absent again.
    std::function<void(Entry&)> clear;
};

/// The fields of a kind: its own first, then those that every entry has.
[[nodiscard]] const std::vector<EntryField>& entry_fields(std::string_view kind);

/// The texts typed for the fields, by option; several for one that repeats.
using TypedEntry = std::map<std::string, std::vector<std::string>>;

/// Adds fields as options of `command`; what is typed ends up in `typed`, under the option's name only
/// where it was given. An option that is there already is left alone. All three words for what was paid are
/// taken; those of other kinds stand in no help.
void add_entry_options(CLI::App& command, const std::vector<EntryField>& fields, TypedEntry& typed);

/// What was typed with the word for what was paid that the kind uses: --total, --amount or --paid, whichever
/// of the three was typed.
[[nodiscard]] TypedEntry with_own_word_for_paid(TypedEntry typed, std::string_view kind);

/// Sets what was typed and leaves the rest; the first refusal ends it. An option that is of another kind
/// is wrong usage.
[[nodiscard]] Result<void> set_entry_fields(Entry& entry, const TypedEntry& typed, const EntryTypedAs& as);

/// Makes fields absent, by their names without the dashes; wrong usage for a name of another kind.
[[nodiscard]] Result<void> clear_entry_fields(Entry& entry, const std::vector<std::string>& names);

/// Wrong usage where something is absent that an entry of its kind must say.
[[nodiscard]] Result<void> check_complete(const Entry& entry);

} // namespace sumpbook::cli
