# SPDX-License-Identifier: GPL-3.0-or-later
# cmake -DPROGRAM=... -P no_qt.cmake
# Fails when PROGRAM, or a library it loads, loads a Qt library.
execute_process(COMMAND ldd ${PROGRAM} OUTPUT_VARIABLE libraries ERROR_VARIABLE trouble RESULT_VARIABLE status)
if(NOT status STREQUAL "0" OR NOT libraries MATCHES "libstdc\\+\\+")
  message(FATAL_ERROR "The libraries of ${PROGRAM} could not be read: ${trouble}${libraries}")
endif()
if(libraries MATCHES "libQt[^\n]*")
  message(FATAL_ERROR "${PROGRAM} loads ${CMAKE_MATCH_0}")
endif()
message(STATUS "${libraries}")
