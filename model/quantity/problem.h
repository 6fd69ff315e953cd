// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <tl/expected.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <utility>

namespace sumpbook {

/// Why something could not be done. A closed list: `app` maps each kind to one exit status.
enum class ProblemKind {
    wrong_usage,  ///< The command itself is wrong: an unknown option, a bike that must be named.
    refused,      ///< The input cannot be accepted as typed; nothing was changed.
    unconfirmed,  ///< An answer was needed and not given; nothing was changed.
    damaged,      ///< The file does not verify.
    newer_format, ///< The file was written by a later version; it was left untouched.
    io,           ///< Reading or writing failed.
    locked,       ///< Another process holds the file.
};

/// Where a problem stands. Everything is optional; empty means "not known" or "does not apply".
struct Place {
    std::string file;
    std::optional<std::size_t> line; ///< Counted from 1.
    std::string column;              ///< Heading of a table column or name of a field.
    std::string text;                ///< The offending text exactly as it was typed.
    bool operator==(const Place&) const = default;
};

/// One thing that went wrong, in words for the owner: what is wrong, where, and what would be right.
struct Problem {
    ProblemKind kind = ProblemKind::refused;
    std::string sentence;
    Place place;
    bool operator==(const Problem&) const = default;
};

/// A value or the problem that prevented it.
template <class T>
using Result = tl::expected<T, Problem>;

[[nodiscard]] inline tl::unexpected<Problem> fail(ProblemKind kind, std::string sentence, Place place = {}) {
    return tl::unexpected<Problem>(Problem{kind, std::move(sentence), std::move(place)});
}

/// Input that cannot be accepted, the commonest kind.
[[nodiscard]] inline tl::unexpected<Problem> refuse(std::string sentence, Place place = {}) {
    return fail(ProblemKind::refused, std::move(sentence), std::move(place));
}

[[nodiscard]] inline tl::unexpected<Problem> pass_on(Problem problem) {
    return tl::unexpected<Problem>(std::move(problem));
}

} // namespace sumpbook
