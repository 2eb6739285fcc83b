# SPDX-License-Identifier: Apache-2.0
# What ctest reads before it begins: each suite of a GoogleTest program becomes one test, "<program>.<suite>". A process for
# each case would start the sanitized programs a thousand times, which takes as long as a third of the cases themselves.

# suites(PROGRAM MOST_S COST [EMULATOR...])
function(suites PROGRAM MOST_S COST)
  get_filename_component(NAME "${PROGRAM}" NAME)
  if(NOT EXISTS "${PROGRAM}")
    add_test(${NAME}.IsNotBuilt "${PROGRAM}")
    return()
  endif()
  execute_process(COMMAND ${ARGN} "${PROGRAM}" --gtest_list_tests OUTPUT_VARIABLE LISTED RESULT_VARIABLE STATUS)
  if(NOT STATUS EQUAL 0)
    message(FATAL_ERROR "${PROGRAM} --gtest_list_tests: ${STATUS}")
  endif()
  string(REGEX MATCHALL "(^|\n)[^ \n][^ \n]*\\.(\n|  #)" SUITES "${LISTED}")
  foreach(SUITE IN LISTS SUITES)
    string(REGEX REPLACE "^\n|\\.(\n|  #)$" "" SUITE "${SUITE}")
    add_test("${NAME}.${SUITE}" ${ARGN} "${PROGRAM}" "--gtest_filter=${SUITE}.*")
    set_tests_properties("${NAME}.${SUITE}" PROPERTIES TIMEOUT ${MOST_S} COST ${COST})
  endforeach()
endfunction()
