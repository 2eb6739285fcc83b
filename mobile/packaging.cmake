# SPDX-License-Identifier: GPL-3.0-or-later
# What each platform needs to package the app; mobile/README.md says what of it was ever built.
set(APP_ID org.hingepin.app)

if(ANDROID)
  math(EXPR VERSION_CODE "${PROJECT_VERSION_MAJOR} * 10000 + ${PROJECT_VERSION_MINOR} * 100 + ${PROJECT_VERSION_PATCH}")
  set_target_properties(
    hingepin-app
    PROPERTIES QT_ANDROID_PACKAGE_SOURCE_DIR ${CMAKE_CURRENT_SOURCE_DIR}/android
               QT_ANDROID_MIN_SDK_VERSION 28
               QT_ANDROID_VERSION_NAME ${PROJECT_VERSION}
               QT_ANDROID_VERSION_CODE ${VERSION_CODE})
elseif(IOS)
  set(QT_NO_SET_DEFAULT_IOS_LAUNCH_SCREEN ON) # Info.plist describes ours
  set(IOS_RESOURCES ios/Assets.xcassets ios/PrivacyInfo.xcprivacy)
  target_sources(hingepin-app PRIVATE ios/backup.cpp ${IOS_RESOURCES})
  set_source_files_properties(${IOS_RESOURCES} PROPERTIES MACOSX_PACKAGE_LOCATION Resources)
  foreach(LANGUAGE en es fr de pt-BR ar)
    set(STRINGS ios/${LANGUAGE}.lproj/InfoPlist.strings)
    target_sources(hingepin-app PRIVATE ${STRINGS})
    set_source_files_properties(${STRINGS} PROPERTIES MACOSX_PACKAGE_LOCATION Resources/${LANGUAGE}.lproj)
  endforeach()
  target_link_libraries(hingepin-app PRIVATE "-framework CoreFoundation")
  set_target_properties(
    hingepin-app
    PROPERTIES MACOSX_BUNDLE TRUE
               MACOSX_BUNDLE_INFO_PLIST ${CMAKE_CURRENT_SOURCE_DIR}/ios/Info.plist
               MACOSX_BUNDLE_SHORT_VERSION_STRING ${PROJECT_VERSION}
               MACOSX_BUNDLE_BUNDLE_VERSION ${PROJECT_VERSION}
               XCODE_ATTRIBUTE_PRODUCT_BUNDLE_IDENTIFIER ${APP_ID}
               XCODE_ATTRIBUTE_ASSETCATALOG_COMPILER_APPICON_NAME AppIcon
               XCODE_ATTRIBUTE_CODE_SIGN_ENTITLEMENTS ${CMAKE_CURRENT_SOURCE_DIR}/ios/hingepin.entitlements
               XCODE_ATTRIBUTE_TARGETED_DEVICE_FAMILY "1,2")
elseif(UNIX AND NOT APPLE)
  # The icon as PNG, drawn again after a change: cmake --build <folder> --target icons
  qt_add_executable(hingepin-icons EXCLUDE_FROM_ALL icons/render.cpp)
  target_link_libraries(hingepin-icons PRIVATE hingepin_flags Qt6::Gui Qt6::Svg)
  add_custom_target(icons COMMAND hingepin-icons icons/${APP_ID}.svg . WORKING_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR} VERBATIM)

  include(GNUInstallDirs)
  install(TARGETS hingepin-app RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
  install(FILES linux/${APP_ID}.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
  install(FILES linux/${APP_ID}.metainfo.xml DESTINATION ${CMAKE_INSTALL_DATADIR}/metainfo)
  set(ICON_FOLDER ${CMAKE_INSTALL_DATADIR}/icons/hicolor)
  install(FILES icons/${APP_ID}.svg DESTINATION ${ICON_FOLDER}/scalable/apps)
  foreach(SIZE 48x48 128x128 256x256)
    install(FILES linux/icons/${SIZE}/${APP_ID}.png DESTINATION ${ICON_FOLDER}/${SIZE}/apps)
  endforeach()
endif()
