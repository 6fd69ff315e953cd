// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/oil/ladder.h"

namespace sumpbook::oil {

std::string_view slug(Ladder ladder) {
    switch (ladder) {
    case Ladder::within:
        return "within";
    case Ladder::watch:
        return "watch";
    case Ladder::act:
        return "act";
    case Ladder::unrated:
        break;
    }
    return "unrated";
}

std::string_view slug(Word word) {
    switch (word) {
    case Word::within:
        return "within";
    case Word::watch:
        return "watch";
    case Word::act:
        return "act";
    case Word::not_enough_to_say:
        break;
    }
    return "not enough to say";
}

} // namespace sumpbook::oil
