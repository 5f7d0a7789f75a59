# What `cmake --install` and the Debian package (`cpack -G DEB`) put on a machine: the program with
# its manual page and completions, and the library with its headers for find_package(pluckbook).
include(GNUInstallDirs)
include(CMakePackageConfigHelpers)

# ---- the program; its manual and its completions are what it prints of itself -----------------
set(printed ${CMAKE_BINARY_DIR}/printed)
set(pages pluckbook.1 completion.bash completion.zsh completion.fish)
list(TRANSFORM pages PREPEND ${printed}/)
add_custom_command(OUTPUT ${pages}
  COMMAND ${CMAKE_COMMAND} -E make_directory ${printed}
  COMMAND pluckbook manual > ${printed}/pluckbook.1
  COMMAND pluckbook completion bash > ${printed}/completion.bash
  COMMAND pluckbook completion zsh > ${printed}/completion.zsh
  COMMAND pluckbook completion fish > ${printed}/completion.fish
  DEPENDS pluckbook VERBATIM)
add_custom_target(pluckbook_pages ALL DEPENDS ${pages})

install(TARGETS pluckbook COMPONENT program)
install(FILES ${printed}/pluckbook.1 DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT program)
install(FILES ${printed}/completion.bash RENAME pluckbook
  DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions COMPONENT program)
install(FILES ${printed}/completion.zsh RENAME _pluckbook
  DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions COMPONENT program)
install(FILES ${printed}/completion.fish RENAME pluckbook.fish
  DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT program)
install(FILES README.md DESTINATION ${CMAKE_INSTALL_DOCDIR} COMPONENT program)

# ---- the library: find_package(pluckbook), target pluckbook::FLOOR, <pluckbook/FLOOR.h> -------
set(installed pluckbook_flags)
foreach(floor IN LISTS floors)
  file(GLOB headers CONFIGURE_DEPENDS RELATIVE ${CMAKE_SOURCE_DIR}/lib lib/${floor}/*.h)
  list(TRANSFORM headers REPLACE "(.+)" "#include \"\\1\"")
  list(JOIN headers "\n" headers)
  file(CONFIGURE OUTPUT public/${floor}.h
    CONTENT "// All of the floor '@floor@'.\n#pragma once\n\n@headers@\n" @ONLY)
  list(APPEND installed pluckbook_${floor})
  set_target_properties(pluckbook_${floor} PROPERTIES EXPORT_NAME ${floor})
endforeach()
set_target_properties(pluckbook_flags PROPERTIES EXPORT_NAME flags)
install(TARGETS ${installed} EXPORT pluckbook COMPONENT library)
install(DIRECTORY lib/ ${CMAKE_BINARY_DIR}/public/
  DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/pluckbook COMPONENT library
  FILES_MATCHING PATTERN "*.h")
set(config_folder ${CMAKE_INSTALL_LIBDIR}/cmake/pluckbook)
install(EXPORT pluckbook NAMESPACE pluckbook:: DESTINATION ${config_folder} COMPONENT library)
configure_file(lib/pluckbookConfig.cmake.in pluckbookConfig.cmake @ONLY)
write_basic_package_version_file(${CMAKE_BINARY_DIR}/pluckbookConfigVersion.cmake
  COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_BINARY_DIR}/pluckbookConfig.cmake
  ${CMAKE_BINARY_DIR}/pluckbookConfigVersion.cmake
  DESTINATION ${config_folder} COMPONENT library)

# ---- the Debian package: the program alone ----------------------------------------------------
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "the pluckbook maintainers <pluckbook@example.org>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY
  "when the diet of grazing cows falls short, and what to feed")
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME pluckbook)
set(CPACK_COMPONENTS_ALL program)
include(CPack)
