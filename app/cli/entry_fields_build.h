// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "app/cli/entry_fields.h"
#include "model/garage/slugs.h"

#include <optional>
#include <type_traits>
#include <utility>

namespace sumpbook::cli {

// Building blocks of the table of fields: a field is an option, a member of Entry or of one kind's body,
// and the reader that turns a text into the member's value.

/// Where a member lives: the entry itself or its body.
template <class Owner>
Owner& owner_in(Entry& entry) {
    if constexpr (std::is_same_v<Owner, Entry>) {
        return entry;
    } else {
        return std::get<Owner>(entry.body);
    }
}

template <class T>
struct HeldIn {
    static constexpr bool list = false;
};
template <class T>
struct HeldIn<std::vector<T>> {
    static constexpr bool list = true;
};

/// Read: Result<T>(const std::string& option, const std::string& text, const EntryTypedAs&).
template <class Owner, class Member, class Read>
EntryField field(std::string option, std::string type, std::string help, Member Owner::*member, Read read) {
    EntryField made{std::move(option), std::move(type), std::move(help), HeldIn<Member>::list, false, {}, {}};
    const std::string name = made.option;
    made.set = [name, member, read](Entry& entry, const std::vector<std::string>& texts,
                                    const EntryTypedAs& as) -> Result<void> {
        Member& place = owner_in<Owner>(entry).*member;
        if constexpr (HeldIn<Member>::list) place.clear();
        for (const auto& text : texts) {
            auto value = read(name, text, as);
            if (!value) return pass_on(std::move(value.error()));
            if constexpr (HeldIn<Member>::list) {
                place.push_back(std::move(*value));
            } else {
                place = std::move(*value);
            }
        }
        return {};
    };
    made.clear = [member](Entry& entry) { owner_in<Owner>(entry).*member = Owner{}.*member; };
    return made;
}

/// Text as it was typed; an empty one is refused, since absent is said by leaving the option out.
[[nodiscard]] Result<std::string> read_words(const std::string& option, const std::string& text,
                                             const EntryTypedAs& as);
[[nodiscard]] Result<bool> read_yes_no(const std::string& option, const std::string& text,
                                       const EntryTypedAs& as);
[[nodiscard]] Result<Date> read_any_day(const std::string& option, const std::string& text,
                                        const EntryTypedAs& as);
[[nodiscard]] Result<std::uint32_t> read_count(const std::string& option, const std::string& text,
                                               const EntryTypedAs& as);
/// "24" up to 1200.
[[nodiscard]] Result<std::uint32_t> read_months(const std::string& option, const std::string& text,
                                                const EntryTypedAs& as);
/// A place between the level marks: 0 at the lower, 1 at the upper one, a little outside allowed; also
/// "min", "max", "half".
[[nodiscard]] Result<Decimal> read_level(const std::string& option, const std::string& text,
                                         const EntryTypedAs& as);

template <class Enum>
Result<Enum> read_word(const std::string& option, const std::string& text, const EntryTypedAs& /*as*/) {
    auto word = from_slug<Enum>(text);
    if (!word) return pass_on(placed(std::move(word.error()), option, text));
    return word;
}

/// A yes/no field that may stand without a value and then means yes.
template <class Owner, class Member>
EntryField yes_no(std::string option, std::string help, Member Owner::*member) {
    EntryField made = field(std::move(option), "[yes|no]", std::move(help), member, &read_yes_no);
    made.bare = true;
    return made;
}

/// The own fields of a kind, without those that every entry has.
[[nodiscard]] std::vector<EntryField> own_fields(std::string_view kind);

} // namespace sumpbook::cli
