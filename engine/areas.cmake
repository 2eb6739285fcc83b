# SPDX-License-Identifier: Apache-2.0
# How every part of the engine is built: one static library an area, the same flags everywhere.

add_library(hingepin_flags INTERFACE)
target_include_directories(hingepin_flags INTERFACE $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}> $<INSTALL_INTERFACE:include/hingepin>)
target_compile_features(hingepin_flags INTERFACE cxx_std_23)
# The folder of the build must not show in the result, and a fused multiply-add must not change it.
set(OWN_OPTIONS -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion -Wnon-virtual-dtor
                -ffile-prefix-map=${PROJECT_SOURCE_DIR}=. -ffp-contract=off
                $<$<BOOL:${HINGEPIN_WARNINGS_AS_ERRORS}>:-Werror>)
# Those are for our own sources; who builds on the installed engine chooses for themself.
target_compile_options(hingepin_flags INTERFACE "$<BUILD_INTERFACE:${OWN_OPTIONS}>")
if(HINGEPIN_SANITIZE)
  # The sanitizers' own instructions make g++ 12 see uninitialised values in the standard library's headers; the
  # other builds keep that warning. In the tests' own code a null or short pointer is left to the address sanitizer, which
  # finds it at the access: to check each use as well was a third of their compile time and most of what they load.
  define_property(TARGET PROPERTY HINGEPIN_TEST_CODE INITIALIZE_FROM_VARIABLE HINGEPIN_TEST_CODE)
  target_compile_options(
    hingepin_flags INTERFACE -fsanitize=address,undefined
                             $<$<BOOL:$<TARGET_PROPERTY:HINGEPIN_TEST_CODE>>:-fno-sanitize=null,alignment,object-size>
                             -fno-sanitize-recover=all -fno-omit-frame-pointer -Wno-maybe-uninitialized)
  target_link_options(hingepin_flags INTERFACE -fsanitize=address,undefined)
endif()

# What others build on: find_package(hingepin) gives hingepin::<area>, with headers as they are included here.
include(CMakePackageConfigHelpers)
install(TARGETS hingepin_flags EXPORT hingepin COMPONENT engine EXCLUDE_FROM_ALL)
install(EXPORT hingepin NAMESPACE hingepin:: FILE hingepin-targets.cmake DESTINATION lib/cmake/hingepin COMPONENT engine EXCLUDE_FROM_ALL)
configure_package_config_file(${CMAKE_CURRENT_LIST_DIR}/hingepin-config.cmake.in ${PROJECT_BINARY_DIR}/hingepin-config.cmake
                              INSTALL_DESTINATION lib/cmake/hingepin)
write_basic_package_version_file(${PROJECT_BINARY_DIR}/hingepin-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/hingepin-config.cmake ${PROJECT_BINARY_DIR}/hingepin-config-version.cmake
        DESTINATION lib/cmake/hingepin COMPONENT engine EXCLUDE_FROM_ALL)

# hingepin_compile(TARGET engine|test OPTIMIZED): how a target's sources are compiled in the sanitized build. A source takes twice
# as long with -O1 as without most of it: only what calculates gains by it, and tests themselves by nothing. What most sources
# include is compiled once for each set of options (HINGEPIN_PRECOMPILED), a sixth of the whole; not for those who compile again
# and again, since one changed header then spoils all of it.
set(HINGEPIN_HEADERS_engine <algorithm> <array> <cmath> <cstdint> <expected> <filesystem> <functional> <map> <memory> <optional> <ranges> <set> <span>
                            <string> <string_view> <utility> <variant> <vector> <fmt/format.h>)
set(HINGEPIN_HEADERS_test ${HINGEPIN_HEADERS_engine} <fstream> <random> <regex> <sstream> <gmock/gmock.h> <gtest/gtest.h> <nlohmann/json.hpp>)
function(hingepin_compile TARGET KIND OPTIMIZED)
  if(NOT HINGEPIN_SANITIZE)
    return()
  endif()
  set(OPTIONS)
  set(LINKS fmt::fmt)
  set(HEADERS ${HINGEPIN_HEADERS_${KIND}})
  if(OPTIMIZED)
    set(OPTIONS -O1)
    list(APPEND LINKS Eigen3::Eigen)
    list(APPEND HEADERS <Eigen/Dense>)
  elseif(KIND STREQUAL test)
    set(OPTIONS -O0 --param asan-instrumentation-with-call-threshold=0)
  endif()
  if(KIND STREQUAL test)
    list(APPEND LINKS GTest::gmock nlohmann_json::nlohmann_json)
  endif()
  target_compile_options(${TARGET} PRIVATE ${OPTIONS})
  if(HINGEPIN_PRECOMPILED)
    set(FIRST hingepin_headers_${KIND}_${OPTIMIZED})
    if(NOT TARGET ${FIRST})
      file(CONFIGURE OUTPUT ${PROJECT_BINARY_DIR}/headers.cpp CONTENT "")
      add_library(${FIRST} OBJECT ${PROJECT_BINARY_DIR}/headers.cpp)
      target_link_libraries(${FIRST} PRIVATE hingepin_flags ${LINKS})
      target_compile_options(${FIRST} PRIVATE ${OPTIONS})
      target_precompile_headers(${FIRST} PRIVATE ${HEADERS})
    endif()
    target_link_libraries(${TARGET} PRIVATE ${LINKS})
    target_precompile_headers(${TARGET} REUSE_FROM ${FIRST})
  endif()
endfunction()

# hingepin_area(NAME [INTERNAL] [OPTIMIZED] SOURCES file... LINKS target...) makes the library hingepin_NAME, and installs it if
# not internal.
function(hingepin_area NAME)
  cmake_parse_arguments(AREA "INTERNAL;OPTIMIZED" "" "SOURCES;LINKS" ${ARGN})
  add_library(hingepin_${NAME} STATIC ${AREA_SOURCES})
  target_link_libraries(hingepin_${NAME} PUBLIC hingepin_flags ${AREA_LINKS})
  hingepin_compile(hingepin_${NAME} engine ${AREA_OPTIMIZED})
  if(AREA_INTERNAL)
    return()
  endif()
  set_target_properties(hingepin_${NAME} PROPERTIES EXPORT_NAME ${NAME})
  install(TARGETS hingepin_${NAME} EXPORT hingepin ARCHIVE DESTINATION lib COMPONENT engine EXCLUDE_FROM_ALL)
  install(DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR}/ DESTINATION include/hingepin/engine/${NAME} COMPONENT engine EXCLUDE_FROM_ALL
          FILES_MATCHING PATTERN "*.h")
endfunction()

# hingepin_test(NAME [OPTIMIZED] [LONG] [TOGETHER TEST] SOURCES file... LINKS target...) makes one GoogleTest program and registers
# its suites, each a process of its own; or all as one test, where they share what takes long to make. LONG begins first.
function(hingepin_test NAME)
  cmake_parse_arguments(TEST "OPTIMIZED;LONG" "TOGETHER" "SOURCES;LINKS" ${ARGN})
  add_executable(${NAME} ${TEST_SOURCES})
  target_link_libraries(${NAME} PRIVATE hingepin_flags ${TEST_LINKS} GTest::gmock GTest::gtest_main)
  hingepin_compile(${NAME} test ${TEST_OPTIMIZED})
  target_compile_definitions(
    ${NAME} PRIVATE HINGEPIN_SOURCE_DIR="${PROJECT_SOURCE_DIR}"
                    HINGEPIN_REFERENCE_DIR="${PROJECT_SOURCE_DIR}/tests/reference")
  set(MOST_S 600)
  if(CMAKE_CROSSCOMPILING)
    math(EXPR MOST_S "10 * ${MOST_S}")  # in an emulated processor
  endif()
  # What takes longest begins first, after those who drive the app.
  set(COST 0)
  if(TEST_TOGETHER)
    add_test(NAME ${TEST_TOGETHER} COMMAND ${NAME})
    set_tests_properties(${TEST_TOGETHER} PROPERTIES TIMEOUT ${MOST_S} COST 500)
    return()
  elseif(TEST_LONG)
    set(COST 400)
  endif()
  set(LISTED ${CMAKE_CURRENT_BINARY_DIR}/${NAME}_suites.cmake)
  set(EMULATOR "")
  foreach(PART IN LISTS CMAKE_CROSSCOMPILING_EMULATOR)
    string(APPEND EMULATOR " [[${PART}]]")
  endforeach()
  file(GENERATE OUTPUT ${LISTED}
       CONTENT "include([[${PROJECT_SOURCE_DIR}/tests/suites.cmake]])\nsuites([[$<TARGET_FILE:${NAME}>]] ${MOST_S} ${COST}${EMULATOR})\n")
  set_property(DIRECTORY APPEND PROPERTY TEST_INCLUDE_FILES ${LISTED})
endfunction()
