// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/reports/write/xml_check.h"

#include "model/quantity/utf8.h"

#include <algorithm>
#include <array>
#include <utility>

namespace sumpbook::write::testing {
namespace {

constexpr std::array<std::pair<std::string_view, char>, 6> entities{
    {{"&amp;", '&'}, {"&lt;", '<'}, {"&gt;", '>'}, {"&quot;", '"'}, {"&#39;", '\''}, {"&apos;", '\''}}};

bool is_name(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
}

class Reader {
public:
    explicit Reader(std::string_view text)
        : rest_(text) {}

    Markup read() {
        check_characters();
        if (rest_.starts_with("<!DOCTYPE html>\n")) rest_.remove_prefix(16);
        while (!rest_.empty() && found_.fault.empty())
            step();
        if (!open_.empty()) fault("not closed: " + open_.back());
        return std::move(found_);
    }

private:
    void fault(const std::string& what) {
        if (found_.fault.empty())
            found_.fault = what + " before \"" + std::string(rest_.substr(0, 40)) + "\"";
    }
    void check_characters() {
        for (auto text = rest_; !text.empty();) {
            const auto first = utf8_first(text);
            if (first.code_point == 0xFFFD && first.bytes == 1) return fault("not UTF-8");
            if (first.code_point < 0x20 && first.code_point != '\n') return fault("a control character");
            if (first.code_point == 0xFFFE || first.code_point == 0xFFFF)
                return fault("a character XML forbids");
            text.remove_prefix(first.bytes);
        }
    }
    void step() {
        if (rest_.starts_with("</")) return close();
        if (rest_.starts_with("<")) return open();
        found_.text += character("<");
    }
    /// One character or entity; `forbidden` may not stand there by itself.
    std::string character(std::string_view forbidden) {
        if (rest_[0] == '&') {
            for (const auto& [entity, meant] : entities) {
                if (!rest_.starts_with(entity)) continue;
                rest_.remove_prefix(entity.size());
                return {meant};
            }
            fault("an unknown entity");
        }
        if (forbidden.find(rest_[0]) != std::string_view::npos) fault("a bare character");
        if (rest_.starts_with("]]>")) fault("]]>");
        if (open_.empty() && rest_[0] != '\n') fault("text outside the root");
        const std::string one(1, rest_[0]);
        rest_.remove_prefix(1);
        return one;
    }
    std::string name() {
        std::string found;
        while (!rest_.empty() && is_name(rest_[0])) {
            found += rest_[0];
            rest_.remove_prefix(1);
        }
        if (found.empty()) fault("no name");
        return found;
    }
    bool take(std::string_view text) {
        if (!rest_.starts_with(text)) return false;
        rest_.remove_prefix(text.size());
        return true;
    }
    void open() {
        rest_.remove_prefix(1);
        const auto tag = name();
        if (open_.empty() && !found_.tags.empty()) fault("a second root");
        found_.tags.push_back(tag);
        std::vector<std::string> here;
        while (found_.fault.empty() && take(" "))
            attribute(here);
        if (take("/>")) return;
        if (!take(">")) return fault("a tag that does not end");
        open_.push_back(tag);
    }
    void attribute(std::vector<std::string>& here) {
        const auto key = name();
        if (std::ranges::find(here, key) != here.end()) fault("an attribute twice");
        here.push_back(key);
        found_.names.push_back(key);
        if (!take("=\"")) return fault("an attribute without quotes");
        std::string value;
        open_.emplace_back("attribute");
        while (found_.fault.empty() && !rest_.empty() && rest_[0] != '"')
            value += character("<");
        open_.pop_back();
        if (!take("\"")) return fault("an attribute that does not end");
        if (key == "id") found_.ids.push_back(value);
    }
    void close() {
        rest_.remove_prefix(2);
        const auto tag = name();
        if (!take(">")) return fault("a closing tag that does not end");
        if (open_.empty() || open_.back() != tag) return fault("closed out of turn: " + tag);
        open_.pop_back();
    }

    std::string_view rest_;
    std::vector<std::string> open_;
    Markup found_;
};

} // namespace

Markup read_markup(std::string_view markup) { return Reader(markup).read(); }

} // namespace sumpbook::write::testing
