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

} // namespace sumpbook::upkeep
