# Debian packages, by `cmake --build build --target package`: the program, and the library with all
# that building on it takes. As a shared library it would take a third one, with another name for
# each minor version.
set(CPACK_GENERATOR DEB)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_ALL program development)
set(CPACK_STRIP_FILES ON)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_PRE_BUILD_SCRIPTS ${CMAKE_CURRENT_LIST_DIR}/as_debian_has_it.cmake)
set(CPACK_PACKAGE_CONTACT "The fingerturn authors <authors@fingerturn.example>")
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)

set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME fingerturn)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION sound)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SHLIBDEPS ON)
set(CPACK_COMPONENT_PROGRAM_DESCRIPTION
"Reads a passage with its finger numbers, typed or from a score in MusicXML,
and says for every note which way the forearm turns, whether the note before
has prepared the turn or the forearm must swing back first, and where the
fingers pass one another.")

set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libfingerturn-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_COMPONENT_DEVELOPMENT_DESCRIPTION
"The C++ library of fingerturn, with what CMake and pkg-config ask for.")
# The packages in which pkg-config has found what the library is linked with.
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS pkg-config)
foreach(module ${FINGERTURN_LINKED_MODULES})
  pkg_get_variable(folder ${module} pcfiledir)
  execute_process(COMMAND dpkg-query --search ${folder}/${module}.pc
    OUTPUT_VARIABLE package ERROR_QUIET)
  string(REGEX REPLACE ":.*" "" package "${package}")
  string(APPEND CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS ", ${package}")
endforeach()

# Debian's own files, which only the packages have.
file(READ ${PROJECT_SOURCE_DIR}/LICENSE ours)
file(READ ${PROJECT_SOURCE_DIR}/src/write/page/glyphs/LICENSE-of-outlines.txt outlines)
file(WRITE ${CMAKE_CURRENT_BINARY_DIR}/copyright
  "${ours}\nThe outlines of the musical signs on pages:\n\n${outlines}")
file(TIMESTAMP ${PROJECT_SOURCE_DIR}/docs/changelog.md released "%a, %d %b %Y %H:%M:%S +0000" UTC)
configure_file(changelog.in changelog.Debian @ONLY)
foreach(component PROGRAM DEVELOPMENT)
  set(documents ${CMAKE_INSTALL_DATAROOTDIR}/doc/${CPACK_DEBIAN_${component}_PACKAGE_NAME})
  string(TOLOWER ${component} component)
  install(FILES ${CMAKE_CURRENT_BINARY_DIR}/copyright ${CMAKE_CURRENT_BINARY_DIR}/changelog.Debian
    DESTINATION ${documents} COMPONENT ${component} EXCLUDE_FROM_ALL)
  install(FILES ${PROJECT_SOURCE_DIR}/docs/changelog.md RENAME changelog
    DESTINATION ${documents} COMPONENT ${component} EXCLUDE_FROM_ALL)
endforeach()
include(CPack)
