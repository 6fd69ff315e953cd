// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/garage/record.h"

#include <map>
#include <string>

namespace sumpbook::store {

/// What bikes are called, in any number of files: the name that the details recorded last give.
class BikeNames {
public:
    void note(const SubjectId& subject, const RecordName& name, const Record& record);
    void note(const std::vector<NamedRecord>& records);
    /// Empty where no details are known, as for the garage itself.
    [[nodiscard]] std::string of(const SubjectId& subject) const;

private:
    struct Named {
        RecordedTime recorded;
        RecordName by;
        std::string name;
    };
    std::map<SubjectId, Named> names_;
};

} // namespace sumpbook::store
