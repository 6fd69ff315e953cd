# SPDX-License-Identifier: GPL-3.0-or-later
# cmake -DCOMPILER=... -DSNIPPET=... -DINCLUDES=... -P check.cmake
# Fails unless SNIPPET compiles as it is, and with -DFORBIDDEN is refused with the words its line
# "// Refused by: ..." gives as a regular expression.
set(flags -std=c++20 -Wall -Wextra -Werror -fsyntax-only)
foreach(folder ${INCLUDES})
  if(IS_DIRECTORY "${folder}")
    list(APPEND flags -I${folder})
  endif()
endforeach()

function(compile out_status out_text)
  execute_process(COMMAND ${CMAKE_COMMAND} -E env LC_ALL=C ${COMPILER} ${flags} ${ARGN} ${SNIPPET}
    RESULT_VARIABLE status ERROR_VARIABLE text OUTPUT_VARIABLE ignored)
  set(${out_status} "${status}" PARENT_SCOPE)
  set(${out_text} "${text}" PARENT_SCOPE)
endfunction()

file(STRINGS ${SNIPPET} refused_by REGEX "^// Refused by: ")
string(REPLACE "// Refused by: " "" refused_by "${refused_by}")
if(refused_by STREQUAL "")
  message(FATAL_ERROR "${SNIPPET} does not say what refuses it")
endif()

compile(status text)
if(NOT status STREQUAL "0")
  message(FATAL_ERROR "The twin that must compile does not:\n${text}")
endif()

compile(status text -DFORBIDDEN)
if(status STREQUAL "0")
  message(FATAL_ERROR "What must not compile does")
endif()
if(NOT text MATCHES "${refused_by}")
  message(FATAL_ERROR "Refused for another reason than \"${refused_by}\":\n${text}")
endif()
