// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/part_archive.h"

namespace sumpbook::store {

/// What the open part of one record says about the parts that follow it: which alternative, how many
/// elements, whether it is there, in the order of its fields.
class Shape {
public:
    void forget() { numbers_.clear(); }
    void add(std::size_t number) { numbers_.push_back(number); }
    /// Back to the first number, for the next part.
    void rewind() { next_ = 0; }
    [[nodiscard]] std::size_t next() { return numbers_[next_++]; }
    /// Which alternative the record's content is; it is the first field that has a shape.
    [[nodiscard]] std::size_t content() const { return numbers_.empty() ? 0 : numbers_.front(); }

private:
    std::vector<std::size_t> numbers_;
    std::size_t next_ = 0;
};

/// The object that all values of a type are read into, in this thread. Not inlined: the compiler would warn,
/// wrongly, that what a value before left in it was never set.
template <class T>
[[nodiscard, gnu::noinline]] T& any() {
    thread_local T object;
    return object;
}

/// Walks over the fields of one part as PartIn does and refuses what PartIn refuses, but keeps nothing: every
/// field is read into the one object of its type, again and again. Several times as fast as making records.
template <Part part>
class PartCheck {
public:
    using is_saving = boost::mpl::false_;
    using is_loading = boost::mpl::true_;

    PartCheck(InArchive& in, Shape& shape)
        : in_(in)
        , shape_(shape) {}

    template <class T>
    PartCheck& operator&(T& value) {
        if constexpr (part == Part::open) in_ >> value;
        return *this;
    }
    template <class T>
    PartCheck& operator&(FieldOf<T> field) {
        if (part == field.part) in_ >> field.value;
        return *this;
    }
    template <class T>
    PartCheck& operator&(Mixed<T> field) {
        if (in_.ok()) walk(field.value);
        return *this;
    }
    PartCheck& operator&(Doubts /*doubts*/) {
        const std::size_t count = in_.load_length(max_list_elements);
        for (std::size_t i = 0; i < count && in_.ok(); ++i)
            in_ >> any<Doubt>();
        return *this;
    }

private:
    /// What the open part says here, read from it or remembered; `read` is given the archive.
    template <class Read>
    std::size_t shape(const Read& read) {
        if constexpr (part != Part::open) return shape_.next();
        const std::size_t number = read();
        shape_.add(number);
        return in_.ok() ? number : 0;
    }

    template <class T>
    void walk(std::optional<T>& /*value*/) {
        const bool present = shape([this] {
                                 bool yes = false;
                                 in_ >> yes;
                                 return std::size_t{yes};
                             }) != 0;
        if (present) walk(any<T>());
    }
    template <class T>
    void walk(std::vector<T>& /*list*/) {
        const std::size_t count = shape([this] { return in_.load_length(max_list_elements); });
        for (std::size_t i = 0; i < count && in_.ok(); ++i)
            walk(any<T>());
    }
    template <class... T>
    void walk(std::variant<T...>& /*value*/) {
        const std::size_t index = shape([this] {
            std::uint8_t number = 0;
            in_ >> number;
            if (number >= sizeof...(T)) in_.set_fault("a kind is not known");
            return std::size_t{number};
        });
        std::size_t alternative = 0;
        if (in_.ok()) ((alternative++ == index ? walk(any<T>()) : void()), ...);
    }
    template <class T>
    requires std::is_class_v<T>
    void walk(T& object) { boost::serialization::serialize_adl(*this, object, 0); }

    InArchive& in_;
    Shape& shape_;
};

} // namespace sumpbook::store
