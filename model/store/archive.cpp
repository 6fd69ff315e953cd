// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/archive.h"

#include "model/quantity/utf8.h"

#include <algorithm>

namespace sumpbook::store {
namespace {

constexpr std::int64_t coefficient_limit = 1'000'000'000'000'000'000; // 18 digits
constexpr ArchiveFault too_long = "a text is longer than 64 KiB";
constexpr ArchiveFault not_utf8 = "a text is not UTF-8";

// Days since 1970-01-01 of the first and last day a Date may be.
constexpr std::int32_t days_of(const Date& date) {
    return static_cast<std::int32_t>(std::chrono::sys_days(date).time_since_epoch().count());
}
constexpr std::int32_t first_day = days_of(std::chrono::year{1900} / std::chrono::January / 1);
constexpr std::int32_t last_day = days_of(std::chrono::year{2100} / std::chrono::December / 31);
constexpr ArchiveFault no_day = "a date is not a day of 1900 to 2100";

} // namespace

bool is_utf8(std::string_view text) {
    // Most texts are ASCII from beginning to end.
    text.remove_prefix(static_cast<std::size_t>(
        std::ranges::find_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0x80U) != 0; }) -
        text.begin()));
    while (!text.empty()) {
        const auto first = utf8_first(text);
        if (first.bytes == 1 && first.code_point == U'\uFFFD') return false;
        text.remove_prefix(first.bytes);
    }
    return true;
}

void OutArchive::save_binary(const void* address, std::size_t size) {
    put_bytes(out_, {static_cast<const std::uint8_t*>(address), size});
}

void OutArchive::save_length(std::size_t length) {
    for (; length >= 0x80; length >>= 7U)
        out_.push_back(static_cast<std::uint8_t>(length | 0x80));
    out_.push_back(static_cast<std::uint8_t>(length));
}

void OutArchive::save_count(std::size_t count) {
    if (count > max_list_elements) fault_ = "a list has more than 65,536 elements";
    save_length(count);
}

void OutArchive::save(const std::string& text) {
    if (text.size() > max_string_bytes) fault_ = too_long;
    if (!is_utf8(text)) fault_ = not_utf8;
    save_length(text.size());
    put_bytes(out_, as_bytes(text));
}

void OutArchive::save(const Decimal& number) {
    put_number(out_, number.coefficient());
    put_number(out_, static_cast<std::uint8_t>(number.scale()));
}

void OutArchive::save(const Currency& currency) { put_bytes(out_, as_bytes(currency.code())); }

void OutArchive::save(const Date& date) {
    const auto days = days_of(date);
    if (!date.ok() || days < first_day || days > last_day) fault_ = no_day;
    put_number(out_, days);
}

void InArchive::finish() {
    if (left() != 0) set_fault("bytes are left over");
}

void InArchive::load_binary(void* address, std::size_t size) {
    if (take(size))
        std::copy_n(in_.begin() + static_cast<std::ptrdiff_t>(at_ - size), size,
                    static_cast<std::uint8_t*>(address));
}

std::size_t InArchive::load_length(std::size_t limit) {
    std::size_t length = 0;
    for (unsigned shift = 0; take(1); shift += 7) {
        const std::size_t byte = in_[at_ - 1];
        if (shift > 21 || (byte == 0 && shift > 0)) {
            set_fault("a length is not written in its shortest form");
            return 0;
        }
        length |= (byte & 0x7FU) << shift;
        if (byte < 0x80) break;
    }
    if (length > limit) set_fault("a length is over its limit");
    if (length > left()) set_fault("a length is over the bytes left");
    return ok() ? length : 0;
}

void InArchive::load(std::string& text) {
    const std::size_t length = load_length(max_string_bytes);
    if (!take(length)) return;
    text.assign(reinterpret_cast<const char*>(in_.data()) + at_ - length, length); // NOLINT: bytes of a text
    if (!is_utf8(text)) set_fault(not_utf8);
}

void InArchive::load(Decimal& number) {
    std::int64_t coefficient = 0;
    std::uint8_t scale = 0;
    load(coefficient);
    load(scale);
    if (!ok()) return;
    if (coefficient <= -coefficient_limit || coefficient >= coefficient_limit || scale > Decimal::max_scale) {
        return set_fault("a number has too many digits");
    }
    number = Decimal(coefficient, scale);
}

void InArchive::load(Currency& currency) {
    std::array<std::uint8_t, 3> code{};
    load(code);
    if (!ok()) return;
    if (code != last_.code) {
        const std::string text(code.begin(), code.end());
        const auto known = Currency::from_code(text);
        if (known && known->code() == text) {
            last_ = {code, *known};
        } else if (text == Currency{}.code()) {
            last_ = {};
        } else {
            return set_fault("a currency is not known");
        }
    }
    currency = last_.currency;
}

void InArchive::load(Date& date) {
    std::int32_t days = 0;
    load(days);
    if (!ok()) return;
    if (days < first_day || days > last_day) return set_fault(no_day);
    date = std::chrono::sys_days(std::chrono::days(days));
}

} // namespace sumpbook::store
