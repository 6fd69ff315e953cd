// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/store/record_fields.h"
#include "tests/model/store/example_records.h"

#include <random>

namespace sumpbook::store {

/// An archive that, instead of reading fields, makes them up: every described field of every kind, within
/// its range.
class RecordMaker {
public:
    using is_saving = boost::mpl::false_;
    using is_loading = boost::mpl::true_;
    static constexpr bool saving = false;

    explicit RecordMaker(std::uint64_t seed)
        : random_(seed) {}

    Record record() {
        Record record;
        make(record);
        if (std::holds_alternative<Withdrawal>(record.content) && record.replaces.empty())
            record.replaces.emplace_back();
        std::ranges::sort(record.replaces);
        record.replaces.erase(std::ranges::unique(record.replaces).begin(), record.replaces.end());
        return record;
    }

    template <class T>
    RecordMaker& operator&(T& value) {
        make(value);
        return *this;
    }
    template <class T>
    RecordMaker& operator&(FieldOf<T> field) {
        return *this & field.value;
    }
    template <class T>
    RecordMaker& operator&(Mixed<T> field) {
        return *this & field.value;
    }
    RecordMaker& operator&(Doubts doubts) {
        make(doubts.value);
        for (auto& doubt : doubts.value)
            doubt.part = static_cast<Part>(below(3));
        std::ranges::stable_sort(doubts.value, {}, &Doubt::part); // as they come back
        return *this;
    }

private:
    std::uint64_t below(std::uint64_t limit) { return random_() % limit; }

    template <WholeNumber T>
    void make(T& number) {
        number = static_cast<T>(below(2) == 0 ? below(4) : random_());
    }
    void make(bool& yes) { yes = below(2) == 1; }
    template <class Enum>
    requires std::is_enum_v<Enum>
    void make(Enum& value) {
        value = static_cast<Enum>(below(static_cast<std::uint64_t>(last_of<Enum>) + 1));
    }
    void make(std::string& text) {
        const std::vector<std::string> pieces{
            "a", "Z9", " ", "\u00e9", "\u2603", std::string(1, '\0'), "\U0001F600"};
        text.clear();
        for (auto left = below(4); left > 0; --left)
            text += pieces[below(pieces.size())];
    }
    void make(Decimal& number) {
        const auto coefficient =
            static_cast<std::int64_t>(below(below(2) == 0 ? 100 : 1'000'000'000'000'000'000));
        number = Decimal(below(2) == 0 ? coefficient : -coefficient, static_cast<int>(below(16)));
    }
    void make(Currency& currency) {
        const auto all = all_currencies();
        const auto which = below(all.size() + 1);
        currency = which == all.size() ? Currency{} : all[which];
    }
    void make(Date& date) { date = plus_days(day(1900, 1, 1), static_cast<int>(below(73'414))); }
    template <std::size_t N>
    void make(std::array<std::uint8_t, N>& bytes) {
        for (auto& byte : bytes)
            byte = static_cast<std::uint8_t>(below(3));
    }
    template <class T>
    void make(std::optional<T>& value) {
        value.reset();
        if (below(2) == 1) make(value.emplace());
    }
    template <class T>
    void make(std::vector<T>& list) {
        list.clear();
        for (auto left = below(3); left > 0; --left)
            make(list.emplace_back());
    }
    template <class T>
    void make(std::map<std::string, T>& table) {
        table.clear();
        for (auto left = below(3); left > 0; --left) {
            std::string key;
            make(key);
            make(table[key]);
        }
    }
    template <class... T>
    void make(std::variant<T...>& value) {
        pick(value, below(sizeof...(T)), std::index_sequence_for<T...>{});
    }
    template <class Variant, std::size_t... I>
    void pick(Variant& value, std::size_t index, std::index_sequence<I...> /*all*/) {
        ((I == index ? make(value.template emplace<I>()) : void()), ...);
    }
    void make(Money& money) {
        make(money.minor);
        money.minor %= most_minor + 1;
        make(money.currency);
    }
    template <class Unit>
    void make(Written<Unit>& written) {
        make(written.number);
        make(written.unit);
        // A million is allowed in every unit but gallons and the like.
        const bool too_many = written.number > Decimal(200'000) || written.number < Decimal(-200'000);
        if (too_many) written.number = Decimal(written.number.coefficient(), Decimal::max_scale);
    }
    template <class T>
    requires std::is_class_v<T>
    void make(T& object) { boost::serialization::serialize_adl(*this, object, 0); }

    std::mt19937_64 random_;
};

} // namespace sumpbook::store
