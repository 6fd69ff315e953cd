// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/document/value.h"

namespace sumpbook::document {

Object::Object() = default;
Object::Object(const Object&) = default;
Object::Object(Object&&) noexcept = default;
Object& Object::operator=(const Object&) = default;
Object& Object::operator=(Object&&) noexcept = default;
Object::~Object() = default;

Object& Object::add(std::string_view name, Value value) {
    members_.emplace_back(std::string(name), std::move(value));
    return *this;
}

Object result() {
    Object object;
    object.add("schema", 1);
    return object;
}

Object list_of(Array items) {
    Object object = result();
    object.add("items", std::move(items));
    return object;
}

} // namespace sumpbook::document
