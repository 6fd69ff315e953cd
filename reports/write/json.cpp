// SPDX-License-Identifier: GPL-3.0-or-later
#include "reports/write/json.h"

#include <nlohmann/json.hpp>

namespace sumpbook::write {
namespace {

std::string quoted(const std::string& text) {
    return nlohmann::json(text).dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

class Writer {
public:
    [[nodiscard]] std::string text() && { return std::move(out_); }

    void write(const document::Value& value) { std::visit(*this, value.data()); }

    void operator()(std::monostate /*absent*/) { out_ += "null"; }
    void operator()(bool truth) { out_ += truth ? "true" : "false"; }
    void operator()(std::int64_t number) { out_ += std::to_string(number); }
    void operator()(const Decimal& number) { out_ += number.text(); }
    void operator()(const std::string& text) { out_ += quoted(text); }
    void operator()(const document::Array& items) {
        brackets('[', ']', items, [this](const document::Value& item) { write(item); });
    }
    void operator()(const document::Object& object) {
        brackets('{', '}', object.members(), [this](const auto& member) {
            out_ += quoted(member.first) + ": ";
            write(member.second);
        });
    }

private:
    template <class Range, class One>
    void brackets(char open, char close, const Range& range, One one) {
        out_ += open;
        depth_ += 2;
        bool first = true;
        for (const auto& element : range) {
            if (!first) out_ += ',';
            first = false;
            newline();
            one(element);
        }
        depth_ -= 2;
        if (!first) newline();
        out_ += close;
    }
    void newline() { out_ += '\n' + std::string(depth_, ' '); }

    std::string out_;
    std::size_t depth_ = 0;
};

} // namespace

std::string json(const document::Value& value) {
    Writer writer;
    writer.write(value);
    return std::move(writer).text() + '\n';
}

} // namespace sumpbook::write
