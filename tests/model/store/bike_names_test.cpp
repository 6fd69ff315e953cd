// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/store/bike_names.h"

#include "tests/catch.h"
#include "tests/model/store/example_records.h"

using namespace sumpbook;
using namespace sumpbook::store;

namespace {

Record details(std::int64_t recorded, const std::string& name) {
    BikeDetails details;
    details.name = name;
    return {{recorded}, {}, details};
}

RecordName name(std::uint8_t number) {
    RecordName name;
    name.frame_hash.fill(number);
    return name;
}

} // namespace

TEST_CASE("A bike is called what its newest details say, in whatever order files are read", "[bike names]") {
    for (const bool newest_first : {false, true}) {
        BikeNames names;
        names.note(subject_of(1), name(1), details(newest_first ? 20 : 10, newest_first ? "new" : "old"));
        names.note(subject_of(1), name(2), details(newest_first ? 10 : 20, newest_first ? "old" : "new"));
        CHECK(names.of(subject_of(1)) == "new");
    }
}

TEST_CASE("Of two names of one second the smaller hash counts", "[bike names]") {
    for (const bool small_first : {false, true}) {
        BikeNames names;
        names.note(subject_of(1), name(small_first ? 1 : 2), details(10, small_first ? "small" : "large"));
        names.note(subject_of(1), name(small_first ? 2 : 1), details(10, small_first ? "large" : "small"));
        CHECK(names.of(subject_of(1)) == "small");
    }
}

TEST_CASE("Without details there is no name", "[bike names]") {
    BikeNames names;
    names.note({{name(1), "k7-1", subject_of(1), fuel_record(1)}});
    CHECK(names.of(subject_of(1)).empty());
}
