// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/archive.h"

#include "model/garage/entry_parts.h"

#include <algorithm>

namespace sumpbook::store {

// A record is described once, with the part of each field named beside it:
//   ar & open_field & money(price) & personal(note) & mixed(list_of_structs_with_fields_of_several_parts)
// The archives below walk that description once for each part and pass over the fields of the others.
// Counts, kinds and "is there" of a mixed field stand in the open part; the other parts follow its shape,
// so they can be read only after it.

template <class T>
struct FieldOf {
    Part part;
    T& value;
};
template <class T>
[[nodiscard]] FieldOf<T> money(T& value) {
    return {Part::money, value};
}
template <class T>
[[nodiscard]] FieldOf<T> personal(T& value) {
    return {Part::personal, value};
}

template <class T>
struct Mixed {
    T& value;
};
template <class T>
[[nodiscard]] Mixed<T> mixed(T& value) {
    return {value};
}

/// Doubts are written in the part of the field they doubt.
struct Doubts {
    std::vector<Doubt>& value;
};

template <class Archive>
void serialize(Archive& ar, Doubt& doubt, unsigned /*version*/) {
    auto& [file, line, column, text, expected, part] = doubt;
    ar& file& line& column& text& expected; // the part is the one it stands in
}

/// Writes the fields of one part.
class PartOut {
public:
    using is_saving = boost::mpl::true_;
    using is_loading = boost::mpl::false_;

    PartOut(Part part, OutArchive& out)
        : part_(part)
        , out_(out) {}

    template <class T>
    PartOut& operator&(const T& value) {
        if (part_ == Part::open) out_ << value;
        return *this;
    }
    template <class T>
    PartOut& operator&(FieldOf<T> field) {
        if (part_ == field.part) out_ << field.value;
        return *this;
    }
    template <class T>
    PartOut& operator&(Mixed<T> field) {
        walk(field.value);
        return *this;
    }
    PartOut& operator&(Doubts doubts) {
        const auto here = [this](const Doubt& doubt) { return doubt.part == part_; };
        out_.save_count(static_cast<std::size_t>(std::ranges::count_if(doubts.value, here)));
        for (const auto& doubt : doubts.value) {
            if (here(doubt)) out_ << doubt;
        }
        return *this;
    }

private:
    template <class T>
    void walk(std::optional<T>& value) {
        if (part_ == Part::open) out_ << value.has_value();
        if (value) walk(*value);
    }
    template <class T>
    void walk(std::vector<T>& list) {
        if (part_ == Part::open) out_.save_count(list.size());
        for (auto& element : list)
            walk(element);
    }
    template <class... T>
    void walk(std::variant<T...>& value) {
        if (part_ == Part::open) out_ << static_cast<std::uint8_t>(value.index());
        std::visit([this](auto& held) { walk(held); }, value);
    }
    template <class T>
    requires std::is_class_v<T>
    void walk(T& object) { boost::serialization::serialize_adl(*this, object, 0); }

    Part part_;
    OutArchive& out_;
};

/// Reads the fields of one part; for money and personal into records whose open part was read before.
class PartIn {
public:
    using is_saving = boost::mpl::false_;
    using is_loading = boost::mpl::true_;

    PartIn(Part part, InArchive& in)
        : part_(part)
        , in_(in) {}

    template <class T>
    PartIn& operator&(T& value) {
        if (part_ == Part::open) in_ >> value;
        return *this;
    }
    template <class T>
    PartIn& operator&(FieldOf<T> field) {
        if (part_ == field.part) in_ >> field.value;
        return *this;
    }
    template <class T>
    PartIn& operator&(Mixed<T> field) {
        walk(field.value);
        return *this;
    }
    PartIn& operator&(Doubts doubts) {
        const std::size_t count = in_.load_length(max_list_elements);
        for (std::size_t i = 0; i < count && in_.ok(); ++i) {
            Doubt doubt{.file = {}, .line = 0, .column = {}, .text = {}, .expected = {}, .part = part_};
            in_ >> doubt;
            doubts.value.push_back(std::move(doubt));
        }
        return *this;
    }

private:
    template <class T>
    void walk(std::optional<T>& value) {
        if (part_ == Part::open) {
            bool present = false;
            in_ >> present;
            if (present) value.emplace();
        }
        if (value) walk(*value);
    }
    template <class T>
    void walk(std::vector<T>& list) {
        if (part_ != Part::open) {
            for (auto& element : list)
                walk(element);
            return;
        }
        const std::size_t count = in_.load_length(max_list_elements);
        list.reserve(count);
        for (std::size_t i = 0; i < count && in_.ok(); ++i)
            walk(list.emplace_back());
    }
    template <class... T>
    void walk(std::variant<T...>& value) {
        if (part_ == Part::open) {
            std::uint8_t index = 0;
            in_ >> index;
            if (index >= sizeof...(T)) return in_.set_fault("a kind is not known");
            emplace(value, index, std::index_sequence_for<T...>{});
        }
        std::visit([this](auto& held) { walk(held); }, value);
    }
    template <class Variant, std::size_t... I>
    static void emplace(Variant& value, std::size_t index, std::index_sequence<I...> /*all*/) {
        ((I == index ? void(value.template emplace<I>()) : void()), ...);
    }
    template <class T>
    requires std::is_class_v<T>
    void walk(T& object) { boost::serialization::serialize_adl(*this, object, 0); }

    Part part_;
    InArchive& in_;
};

} // namespace sumpbook::store
