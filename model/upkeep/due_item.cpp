// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/upkeep/due_item.h"

namespace sumpbook::upkeep {

std::string_view slug(DueKind kind) {
    switch (kind) {
    case DueKind::upkeep:
        return "upkeep";
    case DueKind::safety:
        return "safety";
    case DueKind::statutory:
        return "statutory";
    case DueKind::renewal:
        return "renewal";
    case DueKind::recall:
        return "recall";
    case DueKind::cost:
        return "cost";
    case DueKind::component:
        break;
    }
    return "component";
}

DueKind due_kind(PlanKind kind) {
    switch (kind) {
    case PlanKind::upkeep:
        return DueKind::upkeep;
    case PlanKind::safety:
        return DueKind::safety;
    case PlanKind::statutory:
        return DueKind::statutory;
    case PlanKind::renewal:
        break;
    }
    return DueKind::renewal;
}

std::string_view slug(ReasonInput input) {
    switch (input) {
    case ReasonInput::date_limit:
        return "date-limit";
    case ReasonInput::hours_limit:
        return "hours-limit";
    case ReasonInput::since_last:
        return "since-last";
    case ReasonInput::riding:
        return "riding";
    case ReasonInput::season:
        return "season";
    case ReasonInput::layups:
        return "lay-ups";
    case ReasonInput::reading_age:
        break;
    }
    return "reading-age";
}

} // namespace sumpbook::upkeep
