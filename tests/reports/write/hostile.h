// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace sumpbook::write::testing {

/// What somebody might type into a field to make a page do something.
inline std::vector<std::string> hostile_texts() {
    using namespace std::string_view_literals;
    std::vector<std::string> texts;
    for (const auto text : {"<script>alert(1)</script>"sv,
                            "\" onload=\"alert(1)"sv,
                            "' onfocus='alert(1)"sv,
                            "]]>"sv,
                            "-->"sv,
                            "&lt;b&gt; & &#60;script&#62;"sv,
                            "</style><script>x</script>"sv,
                            "</title><h1>x</h1>"sv,
                            "\xE2\x80\xAEtxt.exe"sv,
                            "\xE2\x81\xA6isolated"sv,
                            "\xD8\x9C arabic mark"sv,
                            "a\0b"sv,
                            "\x1B[31mred"sv,
                            "\xC2\x9B"
                            "31m"sv,
                            "\xE2<script>"sv,
                            "\xFF\xFE"sv,
                            "\xED\xA0\x80"sv,
                            "\xEF\xBF\xBF"sv,
                            "\xC0\xBCscript\xC0\xBE"sv,
                            "javascript:alert(1)"sv,
                            "line\r\nbreak\ttab"sv,
                            ""sv})
        texts.emplace_back(text);
    return texts;
}

} // namespace sumpbook::write::testing
