# SPDX-License-Identifier: GPL-3.0-or-later
# What can be checked of the packaging without the kits of the phones, and a real installation into a folder.
find_package(Python3 REQUIRED COMPONENTS Interpreter)
set(INSTALLED ${CMAKE_CURRENT_BINARY_DIR}/installed)
add_test(NAME packaging.ForgetInstalled COMMAND ${CMAKE_COMMAND} -E rm -rf ${INSTALLED})
add_test(NAME packaging.Install COMMAND ${CMAKE_COMMAND} --install ${CMAKE_BINARY_DIR} --prefix ${INSTALLED})
add_test(NAME packaging_test COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_LIST_DIR}/packaging_test.py)
set_tests_properties(packaging.ForgetInstalled PROPERTIES FIXTURES_SETUP packaging_clean)
set_tests_properties(packaging.Install PROPERTIES FIXTURES_REQUIRED packaging_clean FIXTURES_SETUP packaging_installed)
set_tests_properties(packaging_test PROPERTIES FIXTURES_REQUIRED packaging_installed ENVIRONMENT HINGEPIN_INSTALLED=${INSTALLED})
