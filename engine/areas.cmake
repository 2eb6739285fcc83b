# SPDX-License-Identifier: Apache-2.0
# How every part of the engine is built: one static library an area, the same flags everywhere.

add_library(hingepin_flags INTERFACE)
target_include_directories(hingepin_flags INTERFACE ${PROJECT_SOURCE_DIR})
# The folder of the build must not show in the result, and a fused multiply-add must not change it.
target_compile_options(
  hingepin_flags
  INTERFACE -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion -Wnon-virtual-dtor
            -ffile-prefix-map=${PROJECT_SOURCE_DIR}=. -ffp-contract=off
            $<$<BOOL:${HINGEPIN_WARNINGS_AS_ERRORS}>:-Werror>)
if(HINGEPIN_SANITIZE)
  # The sanitizers' own instructions make g++ 12 see uninitialised values in the standard library's headers; the
  # other builds keep that warning.
  target_compile_options(
    hingepin_flags INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer
                             -Wno-maybe-uninitialized)
  target_link_options(hingepin_flags INTERFACE -fsanitize=address,undefined)
endif()

# hingepin_area(NAME SOURCES file... LINKS target...) makes the library hingepin_NAME.
function(hingepin_area NAME)
  cmake_parse_arguments(AREA "" "" "SOURCES;LINKS" ${ARGN})
  add_library(hingepin_${NAME} STATIC ${AREA_SOURCES})
  target_link_libraries(hingepin_${NAME} PUBLIC hingepin_flags ${AREA_LINKS})
endfunction()

# hingepin_test(NAME [OPTIMIZED] SOURCES file... LINKS target...) makes one GoogleTest program and registers its tests.
function(hingepin_test NAME)
  cmake_parse_arguments(TEST "OPTIMIZED" "" "SOURCES;LINKS" ${ARGN})
  add_executable(${NAME} ${TEST_SOURCES})
  if(HINGEPIN_SANITIZE AND NOT TEST_OPTIMIZED)
    # Sanitized tests take twice as long to compile with optimisation, and only those that calculate run faster for it.
    target_compile_options(${NAME} PRIVATE -O0)
  endif()
  target_link_libraries(${NAME} PRIVATE hingepin_flags ${TEST_LINKS} GTest::gmock GTest::gtest_main)
  target_compile_definitions(
    ${NAME} PRIVATE HINGEPIN_SOURCE_DIR="${PROJECT_SOURCE_DIR}"
                    HINGEPIN_REFERENCE_DIR="${PROJECT_SOURCE_DIR}/tests/reference")
  gtest_discover_tests(${NAME} DISCOVERY_MODE PRE_TEST PROPERTIES TIMEOUT 300)
endfunction()
