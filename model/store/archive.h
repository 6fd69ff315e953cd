// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/ids.h"
#include "model/quantity/dates.h"
#include "model/quantity/distance.h"
#include "model/quantity/money.h"
#include "model/store/hash.h"

#include <boost/mpl/bool.hpp>
#include <boost/serialization/serialization.hpp>

#include <concepts>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace sumpbook::store {

// Two small classes that meet the Archive concept of Boost.Serialization (saving and loading archives, as
// its documentation defines them) without its base classes: records are described once, in `serialize`
// functions, and everything Boost would add by itself (pointers, object tracking, class versions, unchecked
// enums, floating point) is not there to go wrong. One value has exactly one encoding.

/// Longest text, in bytes of UTF-8.
inline constexpr std::size_t max_string_bytes = 64 * 1024;
/// Most elements of one list or table.
inline constexpr std::size_t max_list_elements = 64 * 1024;

/// Highest number an enumeration of garage files has; an archive refuses to read higher ones. Specialised
/// beside the descriptions of the records; an enumeration without it does not compile.
template <class Enum>
inline constexpr int last_of = -1;
template <>
inline constexpr int last_of<DistanceUnit> = 1;
template <>
inline constexpr int last_of<VolumeUnit> = 4;
template <>
inline constexpr int last_of<ConsumptionUnit> = 3;
template <>
inline constexpr int last_of<TemperatureUnit> = 1;
template <>
inline constexpr int last_of<TorqueUnit> = 3;

template <class T>
concept WholeNumber =
    std::same_as<T, std::uint8_t> || std::same_as<T, std::uint16_t> || std::same_as<T, std::uint32_t> ||
    std::same_as<T, std::uint64_t> || std::same_as<T, std::int32_t> || std::same_as<T, std::int64_t>;

/// Why bytes could not be read, for a sentence: "a text is longer than the bytes left".
using ArchiveFault = const char*;

/// True for well-formed UTF-8 as RFC 3629 defines it: no overlong forms, no surrogates, up to U+10FFFF.
[[nodiscard]] bool is_utf8(std::string_view text);

/// Writes values to the end of a byte vector. A value that no archive would read back (a text that is not
/// UTF-8 or is too long, a list that is too long) sets `fault`.
class OutArchive {
public:
    using is_saving = boost::mpl::true_;
    using is_loading = boost::mpl::false_;
    static constexpr bool saving = true;

    explicit OutArchive(Bytes& out)
        : out_(out) {}
    [[nodiscard]] ArchiveFault fault() const { return fault_; }
    void set_fault(ArchiveFault fault) { fault_ = fault; }

    template <class T>
    OutArchive& operator<<(const T& value) {
        save(value);
        return *this;
    }
    template <class T>
    OutArchive& operator&(const T& value) {
        return *this << value;
    }

    // The rest of the concept. Nothing here has pointers to register or a library version to carry.
    template <class T>
    void register_type(const T* /*unused*/ = nullptr) {}
    [[nodiscard]] static unsigned get_library_version() { return 0; }
    void save_binary(const void* address, std::size_t size);

    /// A count or length: 7 bits a byte, lowest first, the top bit set on all but the last.
    void save_length(std::size_t length);
    /// The length of a list or table.
    void save_count(std::size_t count);

private:
    template <WholeNumber T>
    void save(T number) {
        put_number(out_, number);
    }
    void save(bool yes) { out_.push_back(yes ? 1 : 0); }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void save(Enum value) {
        static_assert(last_of<Enum> >= 0, "an enumeration of garage files states its last number");
        save(static_cast<std::uint8_t>(value));
    }
    void save(const std::string& text);
    void save(const Decimal& number);
    void save(const Currency& currency);
    void save(const Date& date);
    template <std::size_t N>
    void save(const std::array<std::uint8_t, N>& bytes) {
        put_bytes(out_, bytes);
    }
    template <class T>
    void save(const std::optional<T>& value) {
        save(value.has_value());
        if (value) save(*value);
    }
    template <class T>
    void save(const std::vector<T>& list) {
        save_count(list.size());
        for (const auto& element : list)
            save(element);
    }
    template <class T>
    void save(const std::map<std::string, T>& table) {
        save_count(table.size());
        for (const auto& [key, value] : table) {
            save(key);
            save(value);
        }
    }
    template <class... T>
    void save(const std::variant<T...>& value) {
        save(static_cast<std::uint8_t>(value.index()));
        std::visit([this](const auto& held) { save(held); }, value);
    }
    template <class T>
    requires std::is_class_v<T>
    void save(const T& object) {
        boost::serialization::serialize_adl(*this, const_cast<T&>(object),
                                            0); // NOLINT: Boost saves through T&
    }

    Bytes& out_;
    ArchiveFault fault_ = nullptr;
};

/// Reads values from bytes it does not trust. The first fault stays; after it every value reads as its
/// default and nothing is allocated any more.
class InArchive {
public:
    using is_saving = boost::mpl::false_;
    using is_loading = boost::mpl::true_;
    static constexpr bool saving = false;

    explicit InArchive(ByteView in)
        : in_(in) {}
    [[nodiscard]] ArchiveFault fault() const { return fault_; }
    [[nodiscard]] bool ok() const { return fault_ == nullptr; }
    [[nodiscard]] std::size_t at() const { return at_; }
    [[nodiscard]] std::size_t left() const { return in_.size() - at_; }
    /// Sets a fault when bytes are left over.
    void finish();
    void set_fault(ArchiveFault fault) {
        if (ok()) fault_ = fault;
    }

    template <class T>
    InArchive& operator>>(T& value) {
        if (ok()) load(value);
        return *this;
    }
    template <class T>
    InArchive& operator&(T& value) {
        return *this >> value;
    }

    template <class T>
    void register_type(const T* /*unused*/ = nullptr) {}
    [[nodiscard]] static unsigned get_library_version() { return 0; }
    void load_binary(void* address, std::size_t size);

    /// A count or length in its shortest form, at most `limit` and at most the bytes left.
    [[nodiscard]] std::size_t load_length(std::size_t limit);

private:
    template <WholeNumber T>
    void load(T& number) {
        if (take(sizeof(T))) number = get_number<T>(in_, at_ - sizeof(T));
    }
    void load(bool& yes) {
        std::uint8_t byte = 0;
        load(byte);
        if (byte > 1) set_fault("a yes-or-no is neither 0 nor 1");
        yes = byte == 1;
    }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void load(Enum& value) {
        static_assert(last_of<Enum> >= 0, "an enumeration of garage files states its last number");
        std::uint8_t number = 0;
        load(number);
        if (number > last_of<Enum>) return set_fault("a number stands for no known word");
        value = static_cast<Enum>(number);
    }
    void load(std::string& text);
    void load(Decimal& number);
    void load(Currency& currency);
    void load(Date& date);
    template <std::size_t N>
    void load(std::array<std::uint8_t, N>& bytes) {
        if (take(N)) bytes = get_array<N>(in_, at_ - N);
    }
    template <class T>
    void load(std::optional<T>& value) {
        bool present = false;
        load(present);
        value.reset();
        if (present && ok()) load(value.emplace());
    }
    template <class T>
    void load(std::vector<T>& list) {
        list.clear();
        const std::size_t count = load_length(max_list_elements);
        list.reserve(count); // every element takes at least one of the bytes left
        for (std::size_t i = 0; i < count && ok(); ++i)
            load(list.emplace_back());
    }
    template <class T>
    void load(std::map<std::string, T>& table) {
        table.clear();
        const std::size_t count = load_length(max_list_elements);
        for (std::size_t i = 0; i < count && ok(); ++i) {
            std::string key;
            load(key);
            if (!table.empty() && key <= table.rbegin()->first) return set_fault("a table is not in order");
            load(table[key]);
        }
    }
    template <class... T>
    void load(std::variant<T...>& value) {
        std::uint8_t index = 0;
        load(index);
        if (index >= sizeof...(T)) return set_fault("a kind is not known");
        load_alternative(value, index, std::index_sequence_for<T...>{});
    }
    template <class Variant, std::size_t... I>
    void load_alternative(Variant& value, std::size_t index, std::index_sequence<I...> /*all*/) {
        ((I == index ? load(value.template emplace<I>()) : void()), ...);
    }
    template <class T>
    requires std::is_class_v<T>
    void load(T& object) { boost::serialization::serialize_adl(*this, object, 0); }
    /// Steps over `size` bytes if they are there.
    [[nodiscard]] bool take(std::size_t size) {
        if (!ok()) return false;
        if (size > left()) {
            set_fault("it ends too early");
            return false;
        }
        at_ += size;
        return true;
    }

    ByteView in_;
    std::size_t at_ = 0;
    ArchiveFault fault_ = nullptr;
    struct {
        std::array<std::uint8_t, 3> code{'X', 'X', 'X'};
        Currency currency;
    } last_; ///< Most amounts of a garage are in one currency.
};

// Value types of model/quantity that are plain structs. Amounts, distances and volumes past what is accepted
// from outside are neither written nor read: sums rely on it.
template <class Archive>
void serialize(Archive& ar, Money& money, unsigned /*version*/) {
    ar& money.minor& money.currency;
    if (!is_allowed(money)) ar.set_fault("an amount of money is too large");
}
/// Most numbers are so small that they are within the limits in every unit, without computing anything.
[[nodiscard]] constexpr bool is_small(const Decimal& number, std::int64_t limit) {
    return number.coefficient() >= -limit && number.coefficient() <= limit;
}
template <class Archive, class Unit>
void serialize(Archive& ar, Written<Unit>& written, unsigned /*version*/) {
    ar& written.number& written.unit;
    if constexpr (std::is_same_v<Unit, DistanceUnit>) {
        if (!is_small(written.number, 1'000'000) && !distance_of(written))
            ar.set_fault("a distance is over 10 000 000 km");
    } else if constexpr (std::is_same_v<Unit, VolumeUnit>) {
        if (!is_small(written.number, 100'000) && !volume_of(written))
            ar.set_fault("a volume is over 1 000 000 L");
    }
}
template <class Archive>
void serialize(Archive& ar, UnitPrice& price, unsigned /*version*/) {
    ar& price.amount& price.currency& price.per;
}
template <class Archive>
void serialize(Archive& ar, RecordedTime& time, unsigned /*version*/) {
    ar& time.seconds_since_1970;
}
template <class Archive>
void serialize(Archive& ar, SubjectId& id, unsigned /*version*/) {
    ar& id.bytes;
}
template <class Archive>
void serialize(Archive& ar, ChainId& id, unsigned /*version*/) {
    ar& id.bytes;
}
template <class Archive>
void serialize(Archive& ar, RecordName& name, unsigned /*version*/) {
    ar& name.frame_hash& name.index;
}

/// The whole of `bytes` as one value.
template <class T>
[[nodiscard]] tl::expected<T, ArchiveFault> decode(ByteView bytes) {
    T value{};
    InArchive in(bytes);
    in >> value;
    in.finish();
    if (!in.ok()) return tl::unexpected<ArchiveFault>(in.fault());
    return value;
}

template <class T>
[[nodiscard]] tl::expected<Bytes, ArchiveFault> encode(const T& value) {
    Bytes bytes;
    OutArchive out(bytes);
    out << value;
    if (out.fault() != nullptr) return tl::unexpected<ArchiveFault>(out.fault());
    return bytes;
}

} // namespace sumpbook::store
