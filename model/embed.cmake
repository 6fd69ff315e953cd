# SPDX-License-Identifier: GPL-3.0-or-later
# Turns the data file IN into OUT.h and OUT.cpp with one function, sumpbook::data::SYMBOL().
file(READ ${IN} text)
set(pieces "")
string(LENGTH "${text}" length)
# Pieces of 8 000 characters: compilers limit the length of one literal.
set(at 0)
while(at LESS length)
  string(SUBSTRING "${text}" ${at} 8000 piece)
  string(APPEND pieces "R\"embedded(${piece})embedded\"\n")
  math(EXPR at "${at} + 8000")
endwhile()
file(WRITE ${OUT}.h
"#pragma once
#include <string_view>
namespace sumpbook::data {
std::string_view ${SYMBOL}();
}
")
file(WRITE ${OUT}.cpp
"#include \"${OUT}.h\"
namespace sumpbook::data {
std::string_view ${SYMBOL}() {
    static constexpr char text[] =
${pieces};
    return {text, sizeof(text) - 1};
}
}
")
