// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/garage/slugs.h"

#include <algorithm>
#include <array>
#include <string>

namespace sumpbook {
namespace {

template <class Enum>
struct Words; // one array a type, in the order of the enumerators

#define SUMPBOOK_WORDS(Enum, ...)                                                                            \
    template <>                                                                                              \
    struct Words<Enum> {                                                                                     \
        static constexpr std::array list = std::to_array<std::string_view>({__VA_ARGS__});                   \
    };

SUMPBOOK_WORDS(Cooling, "air", "oil", "liquid")
SUMPBOOK_WORDS(FuelType, "petrol", "leaded-petrol", "petrol-with-lead-substitute", "diesel")
SUMPBOOK_WORDS(BlockMaterial, "aluminium", "iron")
SUMPBOOK_WORDS(Bore, "chrome-plated", "other")
SUMPBOOK_WORDS(GearboxOil, "shared", "separate")
SUMPBOOK_WORDS(Evidence, "invoice", "stamp", "seen", "told", "none")
SUMPBOOK_WORDS(DoneBy, "self", "workshop")
SUMPBOOK_WORDS(CheckOutcome, "pass", "adjusted", "failed")
SUMPBOOK_WORDS(LabFlag, "within", "watch", "act")
SUMPBOOK_WORDS(OilUse, "used", "virgin")
SUMPBOOK_WORDS(TopUpSide, "before", "after")
SUMPBOOK_WORDS(FaultStatus, "stored", "pending", "permanent")
SUMPBOOK_WORDS(RecallType, "recall", "bulletin")
SUMPBOOK_WORDS(Applies, "yes", "no", "unknown")
SUMPBOOK_WORDS(CountedFrom, "last-done", "grid")
SUMPBOOK_WORDS(PlanKind, "upkeep", "safety", "statutory", "renewal")
#undef SUMPBOOK_WORDS

bool same_word(std::string_view a, std::string_view b) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    return std::ranges::equal(a, b, {}, lower, lower);
}

} // namespace

template <class Enum>
Result<Enum> from_slug(std::string_view text) {
    std::string known;
    for (std::size_t i = 0; i < Words<Enum>::list.size(); ++i) {
        if (same_word(text, Words<Enum>::list[i])) return static_cast<Enum>(i);
        known += (i == 0 ? "" : ", ") + std::string(Words<Enum>::list[i]);
    }
    return refuse("\"" + std::string(text) + "\" is not one of: " + known + ".",
                  {.file = {}, .line = {}, .column = {}, .text = std::string(text)});
}

template <class Enum>
std::vector<std::string_view> slugs() {
    return {Words<Enum>::list.begin(), Words<Enum>::list.end()};
}

#define SUMPBOOK_SLUGS(Enum)                                                                                 \
    std::string_view slug(Enum value) { return Words<Enum>::list.at(static_cast<std::size_t>(value)); }      \
    template Result<Enum> from_slug<Enum>(std::string_view);                                                 \
    template std::vector<std::string_view> slugs<Enum>();

SUMPBOOK_SLUGS(Cooling)
SUMPBOOK_SLUGS(FuelType)
SUMPBOOK_SLUGS(BlockMaterial)
SUMPBOOK_SLUGS(Bore)
SUMPBOOK_SLUGS(GearboxOil)
SUMPBOOK_SLUGS(Evidence)
SUMPBOOK_SLUGS(DoneBy)
SUMPBOOK_SLUGS(CheckOutcome)
SUMPBOOK_SLUGS(LabFlag)
SUMPBOOK_SLUGS(OilUse)
SUMPBOOK_SLUGS(TopUpSide)
SUMPBOOK_SLUGS(FaultStatus)
SUMPBOOK_SLUGS(RecallType)
SUMPBOOK_SLUGS(Applies)
SUMPBOOK_SLUGS(CountedFrom)
SUMPBOOK_SLUGS(PlanKind)
#undef SUMPBOOK_SLUGS

} // namespace sumpbook
