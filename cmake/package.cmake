# What is installed: libraries, headers, schemas, and the files by which CMake and pkg-config find them.
include(CMakePackageConfigHelpers)
set(config_dir ${CMAKE_INSTALL_LIBDIR}/cmake/latchwork)

install(TARGETS latchwork EXPORT latchwork_targets FILE_SET HEADERS
  LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
if(TARGET latchwork_c)
  install(TARGETS latchwork_c EXPORT latchwork_targets FILE_SET HEADERS
    LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
  # Paths in the .pc file are told from its own place, so that the whole tree can be moved.
  file(RELATIVE_PATH latchwork_up_from_pc /prefix/${CMAKE_INSTALL_LIBDIR}/pkgconfig /prefix)
  string(REGEX REPLACE "/$" "" latchwork_up_from_pc "${latchwork_up_from_pc}")
  configure_file(${CMAKE_CURRENT_LIST_DIR}/latchwork_c.pc.in ${PROJECT_BINARY_DIR}/latchwork_c.pc @ONLY)
  install(FILES ${PROJECT_BINARY_DIR}/latchwork_c.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig)
endif()
install(EXPORT latchwork_targets FILE latchwork-targets.cmake NAMESPACE latchwork:: DESTINATION ${config_dir})

get_target_property(latchwork_type latchwork TYPE)
configure_package_config_file(${CMAKE_CURRENT_LIST_DIR}/latchwork-config.cmake.in
  ${PROJECT_BINARY_DIR}/latchwork-config.cmake INSTALL_DESTINATION ${config_dir})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/latchwork-config-version.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/latchwork-config.cmake ${PROJECT_BINARY_DIR}/latchwork-config-version.cmake
  DESTINATION ${config_dir})

file(GLOB latchwork_schemas CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/file/schema/*.schema.json)
install(FILES ${latchwork_schemas} DESTINATION ${CMAKE_INSTALL_DATADIR}/latchwork/schema)
